using System.Text.Json;
using JobBoard.Scheduling;

namespace JobBoard.Benchmarks;

/// <summary>
/// Full recomputation of a random network: all four link kinds evenly; half of the links without lag, four in ten with a working
/// lag (a quarter of them leads), one in ten with an elapsed lag of up to two days; tasks of five minutes to eight hours, one in
/// twenty without length; a week of eight-hour days with a midday break. Dates stay marks of working time, turned into
/// instants as they are read; the arrays of the run before are written over, as the yardstick does with its own.
/// </summary>
internal static class CriticalPathVerb
{
    public static int Run(Options options)
    {
        var (tasks, links) = (options.Number("tasks", 10_000), options.Number("links", 30_000));
        Console.Error.WriteLine($"critical-path: making a network of {tasks} tasks and {links} links");
        var random = new Random(20260302);
        var work = Enumerable.Range(0, tasks).Select(_ => random.Next(20) == 0 ? 0 : 300 * random.Next(1, 97)).ToArray();
        var list = Enumerable.Range(0, tasks < 2 ? 0 : links).Select(_ => RandomLink(random, tasks)).ToArray();
        var times = Times(Network.Build(tasks, list), work);
        var calendar = Calendar();
        var now = calendar.NextOpen(new DateTimeOffset(2026, 3, 2, 0, 0, 0, TimeSpan.Zero)).ToUnixTimeSeconds();
        var dates = CriticalPath.Compute(times, calendar, now);
        Console.Error.WriteLine($"critical-path: ends after {(dates.End - now) / 86400.0:F1} days; measuring");

        var plain = new PlainPasses(work, list);
        var (ours, yardstick) = Timing.ByTurns(
            () => CriticalPath.Compute(times, calendar, now, dates), () => plain.Run(), seconds: 3);

        Console.Error.WriteLine($"critical-path: dates {ours}; yardstick {yardstick}");
        Console.WriteLine(JsonSerializer.Serialize(new
        {
            tasks,
            links = list.Length,
            ms = Math.Round(ours.Median, 4),
            yardstick_ms = Math.Round(yardstick.Median, 4),
            ratio = Math.Round(ours.Median / yardstick.Median, 3),
            order_kept = true,
        }));
        return 0;
    }

    private static TaskTimes Times(Network network, int[] work)
    {
        var times = new TaskTimes(network);
        for (var task = 0; task < work.Length; task++)
            times.SetWork(task, work[task]);
        return times;
    }

    private static Link RandomLink(Random random, int tasks)
    {
        var task = random.Next(1, tasks);
        var after = random.Next(task);
        var kind = (LinkKind)random.Next(4);
        return random.Next(10) switch
        {
            < 5 => new Link(task, after, kind),
            < 9 => new Link(task, after, kind, 300 * random.Next(-12, 37)),
            _ => new Link(task, after, kind, 900 * random.Next(1, 193), LagClock.Elapsed),
        };
    }

    private static WorkCalendar Calendar()
    {
        var days = new[] { DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday };
        var spans = new[] { new OpenSpan(TimeSpan.FromHours(8), TimeSpan.FromHours(12)), new OpenSpan(TimeSpan.FromHours(13), TimeSpan.FromHours(17)) };
        return new WorkCalendar(
            TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"),
            days.SelectMany(day => spans.Select(span => new WeeklyOpening(day, span))));
    }
}
