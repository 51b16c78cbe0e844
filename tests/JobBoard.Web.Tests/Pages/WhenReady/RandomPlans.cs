using System.Collections.Immutable;
using CsCheck;
using JobBoard.Web.Pages.Cars.WhenReady.Drawing;

namespace JobBoard.Web.Tests.Pages.WhenReady;

/// <summary>Random plans with their dates: links of several kinds, hold points, folded stages, work in hand, parts waited for.</summary>
internal static class RandomPlans
{
    private const int Day = 510;

    private static readonly string[] Words =
        ["Engine", "in", "Crossmember", "off", "wet", "test", "and", "coupé", "Accumulator", "to", "bulkhead", "pick-up", "Ž", "×4", "2,000", "seen"];

    public static Gen<ReadyPlan> Of(int least, int most) => Gen.Int[least, most].SelectMany(n => Gen.Select(
        Task.Array[n], Link.Array[n / 2, 2 * n], Gen.Double[0, 1], Gen.Int[1, 40]).Select((tasks, links, now, reach) => Dated(tasks, links, now, reach)));

    private sealed record Raw(string Name, int Length, int Wait, bool Note, bool Held);

    private static Gen<Raw> Task => Gen.Select(
        Gen.OneOf([.. Words.Select(Gen.Const)]).Array[1, 5], Gen.Frequency((1, Gen.Const(0)), (8, Gen.Int[10, 240]), (1, Gen.Int[240, 1500])),
        Gen.Frequency((15, Gen.Const(0)), (1, Gen.Int[1, 2000])), Gen.Int[0, 7], Gen.Int[0, 9])
        .Select((words, length, wait, note, held) => new Raw(string.Join(' ', words), length, wait, note == 0, held == 0));

    private static Gen<(int To, int Back, int Kind)> Link => Gen.Select(Gen.Int[1, 10_000], Gen.Int[1, 10_000], Gen.Int[0, 19]);

    private static ReadyPlan Dated(Raw[] tasks, (int To, int Back, int Kind)[] raw, double nowAt, int reach)
    {
        var n = tasks.Length;
        var links = raw.Select(l => (To: 1 + (l.To % (n - 1)), l.Back, l.Kind)).Select(l => (l.To, From: Math.Max(0, l.To - 1 - (l.Back % reach)), l.Kind)).Distinct().ToArray();
        var (start, finish, binds) = (new long[n], new long[n], new int[n]);
        for (var i = 0; i < n; i++)
        {
            (start[i], binds[i]) = (tasks[i].Wait, -1);
            foreach (var (_, from, kind) in links.Where(l => l.To == i))
            {
                var bound = kind == 0 ? start[from] : kind == 1 ? Math.Max(0, finish[from] - 60) : kind == 2 ? finish[from] + 90 : finish[from];
                if (bound >= start[i]) (start[i], binds[i]) = (bound, from);
            }

            finish[i] = start[i] + tasks[i].Length;
        }

        var last = Enumerable.Range(0, n).MaxBy(i => finish[i]);
        var line = new List<int>();
        for (var i = last; i >= 0; i = binds[i]) line.Add(i);
        var now = (long)(nowAt * finish[last]);
        return new()
        {
            Steps = [.. tasks.Select((t, i) => Step(t, i, start[i], finish[i], now, finish[last]))],
            Links = [.. links.Select(l => new ReadyLink(Id(l.To), Id(l.From)))],
            Line = [.. Enumerable.Reverse(line).Select(Id)],
            Now = Mark(now),
            NowWords = "14:07",
            EndWords = ["Ready Thu 3 Dec 16:45", "at the earliest"],
            Days = [.. Enumerable.Range(0, (int)(finish[last] / Day) + 1).Select(d => new ReadyDay(Mark(d * Day), $"Mon {d}"))],
            Given = nowAt < 0.5 ? new(Mark(finish[last] + 300), "date given") : null,
        };
    }

    private static ReadyStep Step(Raw task, int i, long start, long finish, long now, long end) => new(Id(i), task.Name, Mark(start), Mark(finish))
    {
        InHand = start < now && now < finish,
        Note = task.Note ? "hold point" : null,
        Held = task.Held,
        Slack = finish < end && i % 3 != 0 ? $"slack {i} h" : null,
    };

    private static long Mark(long minutes) => 2 * minutes;

    private static string Id(int i) => "t" + i;
}
