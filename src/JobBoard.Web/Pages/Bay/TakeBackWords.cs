using JobBoard.Domain.Boards;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Plans;

namespace JobBoard.Web.Pages.Bay;

/// <summary>What somebody did a moment ago, in words.</summary>
public static class TakeBackWords
{
    /// <summary>Names a fact for the one who caused it.</summary>
    public static string Of(ShopState shop, Fact fact) => fact switch
    {
        TaskStarted f => $"started {Task(shop, f)}",
        TaskSignedOff f => $"signed off {Task(shop, f)}",
        TaskLeftPartDone f => $"left {Task(shop, f)} part-done",
        SecondChecked f => $"checked {Task(shop, f)}",
        TaskUndone f => $"marked {Task(shop, f)} undone",
        ReadingLogged f => $"reading {f.Text} {f.Unit} on {Task(shop, f)}",
        LeftAcknowledged f => $"acknowledged how {Task(shop, f)} was left",
        CrewJoined f => $"joined {Task(shop, f)}",
        ItemChanged f => $"{Item(shop, f)} {f.To}",
        HoldReleased f => $"released {PlanIndex.Of(shop.Cars[f.Car].Plan).Hold(f.Hold)?.Name ?? f.Hold}",
        CallAnswered f => f.Go ? $"{shop.NameOf(f.Person)}: go" : $"{shop.NameOf(f.Person)}: no go, {f.Why}",
        StartFailed f => $"start failed: {f.Why}",
        StopRaised f => $"stop: {f.Why}",
        StopReleased => "released a stop",
        StopHeard => "heard a stop",
        SnagRaised f => $"snag: {f.Words}",
        NoteWritten f => $"note: {f.Words}",
        PersonCameIn => "said in",
        PersonWentOut => "said out",
        _ => EntryKinds.KindOf(fact).Replace('-', ' '),
    };

    private static string Task(ShopState shop, TaskFact f) =>
        shop.Cars.TryGetValue(f.Car, out var car) ? PlanIndex.Of(car.Plan).Task(f.Task)?.Name ?? f.Task : f.Task;

    private static string Item(ShopState shop, ItemChanged f) =>
        shop.Cars.TryGetValue(f.Car, out var car) ? PlanIndex.Of(car.Plan).Item(f.Item)?.Name ?? f.Item : f.Item;
}
