using JobBoard.Domain.Work;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>What is not as it should be at a moment, and the cars and tasks (<c>car/task</c>) it is about.</summary>
public sealed record Trouble(string Key, string[] About);

/// <summary>Dangers that met, and work in hand that lost what it rests on.</summary>
public static class Unrest
{
    public static Dictionary<string, Trouble> In(Picture shop, DateTimeOffset now)
    {
        var all = new Dictionary<string, Trouble>();
        var dangers = new Dangers(shop);
        var standing = dangers.All();
        foreach (var trouble in Meetings(dangers, standing).Concat(Lost(shop, standing, now))) all[trouble.Key] = trouble;
        return all;
    }

    private static IEnumerable<Trouble> Meetings(Dangers dangers, List<Danger> standing)
    {
        foreach (var (rule, one, other) in dangers.Clashes(standing, standing))
            yield return new($"{rule.Id}: {string.Join(" and ", new[] { Subject(one), Subject(other) }.Order(StringComparer.Ordinal))}", [.. new[] { one, other }.Where(d => d.Car is not null).Select(d => d.Task is null ? d.Car! : d.Car + "/" + d.Task)]);
    }

    private static string Subject(Danger danger) => $"{danger.Car ?? "shop"} {danger.Item ?? danger.Task} {danger.Condition}";

    private static IEnumerable<Trouble> Lost(Picture shop, List<Danger> standing, DateTimeOffset now)
    {
        foreach (var (car, task) in shop.InHand)
        {
            var about = car.Id + "/" + task.Id;
            foreach (var wait in new Waits(shop, car, task.Id, now).Lost()) yield return new($"{about} lost {wait.Kind} {wait.About}", [about]);
            if (car.Task(task.Id).NowAndThen || !standing.Any(d => d.Car == car.Id && d.Task == task.Id && d.Hazard is not null)) continue;
            foreach (var need in new Crews(shop, now).Open(car.Task(task.Id), task.Crew)) yield return new($"{about} lost its {need.Duty}", [about]);
        }
    }
}
