using JobBoard.Domain.Entries;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Boards;

/// <summary>Folds what is said in the call before a key check, and lets it lapse when anything behind it changes.</summary>
internal static class CallFolding
{
    /// <summary>The car after one of its own facts.</summary>
    public static CarBoard After(CarBoard car, CarFact fact, Entry entry) => fact switch
    {
        CallAnswered f => car with { Call = car.Call.SetItem(CallAnswer.Key(f.Hold, f.Person), new(f.Hold, f.Person, f.Go, f.Why, entry.Actor, entry.OccurredAt)) },
        StartFailed f => car with { Call = car.Call.RemoveRange(car.Call.Where(a => a.Value.Hold == f.Hold).Select(a => a.Key)) },
        _ when !car.Call.IsEmpty && Behind(fact) is { } node => Lapse(car, fact, entry, node),
        _ => car,
    };

    /// <summary>Every car after a fact of the shop.</summary>
    public static ShopState After(ShopState shop, Entry entry)
    {
        foreach (var car in shop.Cars.Values.Where(c => !c.Call.IsEmpty && Reaches(c, entry.Fact)))
            shop = shop with { Cars = shop.Cars.SetItem(car.Id, Lapse(car, entry.Fact, entry, "")) };
        return shop;
    }

    private static bool Reaches(CarBoard car, Fact fact) => fact switch
    {
        ShopItemChanged => true,
        StopRaised { Scope: StopScope.Shop } => true,
        StopRaised { Scope: StopScope.Place } f => f.Place == car.Place,
        StopRaised f => f.Car == car.Id,
        _ => false,
    };

    /// <summary>The node a fact of a car is about; an empty name where it is behind every answer; nothing where it is behind none.</summary>
    private static string? Behind(CarFact fact) => fact switch
    {
        EstimateRevised or LeftAcknowledged or CrewJoined or CrewLeft => null,
        TaskFact f => f.Task,
        EvidenceLapsed f => f.Id.Split('/')[0],
        EvidenceTakenAgain f => f.Node,
        HoldReleased f => f.Hold,
        ItemChanged or PlanChanged or PlanRevised or CarMoved => "",
        _ => null,
    };

    /// <param name="car">The car.</param>
    /// <param name="fact">What changed.</param>
    /// <param name="entry">Its entry.</param>
    /// <param name="node">The node it is about, an empty name for all answers of the car.</param>
    private static CarBoard Lapse(CarBoard car, Fact fact, Entry entry, string node)
    {
        var index = PlanIndex.Of(car.Plan);
        var lapse = new CallLapse(EntryKinds.KindOf(fact), About(fact, node), entry.Actor, entry.OccurredAt);
        var call = car.Call;
        foreach (var (key, answer) in call)
        {
            if (answer.Lapsed is null && (node.Length == 0 || index.IsAfter(answer.Hold, node))) call = call.SetItem(key, answer with { Lapsed = lapse });
        }

        return call == car.Call ? car : car with { Call = call };
    }

    private static string About(Fact fact, string node) => fact switch
    {
        ItemChanged f => f.Item,
        ShopItemChanged f => "shop/" + f.Item,
        StopRaised f => f.Stop,
        _ => node,
    };
}
