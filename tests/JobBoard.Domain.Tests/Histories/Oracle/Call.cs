using JobBoard.Domain.Entries;
using JobBoard.Domain.Holds;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>An answer in the call before a key check.</summary>
public sealed class AnswerPicture(bool go)
{
    public bool Go => go;

    public bool Lapsed { get; set; }
}

/// <summary>How the picture reads the call, and when what was answered no longer counts.</summary>
public sealed partial class Picture
{
    /// <summary>Whether everybody in the shop has answered go, and nothing behind it changed.</summary>
    public bool IsCalled(CarPicture car, string hold) =>
        People.Values.Where(p => p is { In: true, Left: false }).All(p => car.Answers.TryGetValue((hold, p.Id), out var said) && said is { Go: true, Lapsed: false });

    private void ReadCall(Fact fact)
    {
        switch (fact)
        {
            case CallAnswered said:
                Cars[said.Car].Answers[(said.Hold, said.Person)] = new(said.Go);
                break;
            case StartFailed failed:
                Cars[failed.Car].Holds[failed.Hold].Released = null;
                foreach (var key in Cars[failed.Car].Answers.Keys.Where(k => k.Hold == failed.Hold).ToList()) Cars[failed.Car].Answers.Remove(key);
                break;
            case ShopItemChanged:
                foreach (var car in Cars.Values) Hush(car, _ => true);
                break;
            case StopRaised stop:
                foreach (var car in Cars.Values.Where(c => stop.Scope == StopScope.Shop || stop.Car == c.Id || (stop.Scope == StopScope.Place && stop.Place == c.Place))) Hush(car, _ => true);
                break;
            case ItemChanged or PlanChanged or PlanRevised or CarMoved:
                Hush(Cars[((CarFact)fact).Car], _ => true);
                break;
            default:
                if (About(fact) is var (id, node)) Hush(Cars[id], hold => Cars[id].Before(hold).Contains(node));
                break;
        }
    }

    /// <summary>The node whose work or evidence this changes.</summary>
    private static (string Car, string Node)? About(Fact fact) => fact switch
    {
        EstimateRevised or LeftAcknowledged or CrewJoined or CrewLeft => null,
        TaskFact work => (work.Car, work.Task),
        EvidenceLapsed lapsed => (lapsed.Car, lapsed.Id.Split('/')[0]),
        EvidenceTakenAgain again => (again.Car, again.Node),
        HoldReleased released => (released.Car, released.Hold),
        _ => null,
    };

    private static void Hush(CarPicture car, Func<string, bool> over)
    {
        foreach (var (key, said) in car.Answers)
            if (over(key.Hold)) said.Lapsed = true;
    }
}
