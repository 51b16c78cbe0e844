using JobBoard.Domain.Holds;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>What is under a stop.</summary>
public static class StopScopes
{
    /// <summary>Dangers that whoever makes a stop safe has to answer for, by the key the answer names them with.</summary>
    public static Dictionary<string, Danger> DangersIn(Picture shop, StopPicture stop)
    {
        var all = new Dictionary<string, Danger>();
        foreach (var danger in new Dangers(shop).All().Where(d => d.Hazard is not null && In(stop, d))) all[Key(danger)] = danger;
        return all;
    }

    public static string Key(Danger danger) =>
        $"{danger.Car ?? "shop"}|{danger.Hazard}|{(danger.Item is null ? "task " + danger.Task : danger.Item + "=" + danger.Condition)}";

    /// <summary>Tasks in hand under a stop.</summary>
    public static IEnumerable<(CarPicture Car, TaskPicture Task)> WorkIn(Picture shop, StopPicture stop) =>
        shop.InHand.Where(h => stop.Covers(h.Car.Id, h.Task.Id, h.Task.Place ?? h.Car.Place));

    private static bool In(StopPicture stop, Danger danger) => stop.Scope switch
    {
        StopScope.Shop => true,
        StopScope.Place => danger.Place == stop.Place,
        StopScope.Car => danger.Car == stop.Car,
        _ => danger.Car == stop.Car && danger.Task == stop.Task,
    };
}
