using System.Collections.Concurrent;
using System.Diagnostics;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Rules;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>
/// The proof that the rules hold: made-up histories, judged by an oracle on a code path of its own. 2,000 by default;
/// <c>JOBBOARD_HISTORIES</c> asks for another number.
/// </summary>
public sealed class HistoriesTests(ITestOutputHelper output)
{
    private const int Seed = 20260601;

    private const int MostWithoutARule = 1200;

    /// <summary>
    /// Rules nothing is ever said to wait on: two add facts and refuse nothing, and what is not done before a hold point
    /// is named by the rules of links, lags and holds themselves.
    /// </summary>
    private static readonly string[] NeverWaitedOn = [RuleBook.Ids.ClashStop, RuleBook.Ids.Lapse, RuleBook.Ids.ReleaseOrder];

    public static TheoryData<string> Rules => [.. RuleBook.All.Select(r => r.Id)];

    [Fact]
    public void Rules_hold_over_random_histories()
    {
        var count = int.TryParse(Environment.GetEnvironmentVariable("JOBBOARD_HISTORIES"), out var asked) ? asked : 2000;
        var tally = new Tally();
        var clock = Stopwatch.StartNew();
        var failures = Run(count, RuleBook.Full, tally);
        output.WriteLine($"{clock.Elapsed.TotalSeconds:0} s");
        foreach (var line in tally.Lines()) output.WriteLine(line);
        Assert.True(failures.IsEmpty, failures.OrderBy(f => f.Key).Select(f => f.Value).FirstOrDefault());
        Assert.Equal(count, tally.Histories);
        Assert.True(tally.MeanLength >= 40, $"{tally.MeanLength} accepted commands a history");
        Assert.True(count < 2000 || tally.Fewest(Commands(), Waits()) >= 100, string.Join(Environment.NewLine, tally.Seldom(Commands(), Waits(), 100)));
    }

    /// <summary>
    /// What was let happen without the rule counts first. A rule that others nearly always cover in a plan without faults
    /// (items in work, which links keep apart unless work is done again) is noticed by the lists of refusals, which are then too short.
    /// </summary>
    [Theory]
    [MemberData(nameof(Rules))]
    public void Run_fails_when_a_rule_is_off(string rule)
    {
        var without = RuleBook.Full.Without(rule);
        var failures = Run(MostWithoutARule, without, new Tally(), refusalsToo: false);
        if (failures.IsEmpty) failures = Run(MostWithoutARule, without, new Tally());
        Assert.False(failures.IsEmpty, $"Nothing was noticed in {MostWithoutARule:N0} histories without '{rule}'.");
        output.WriteLine(failures.First().Value.Split(Environment.NewLine)[0]);
    }

    private static IEnumerable<string> Commands() =>
        typeof(Command).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Command)) && !t.IsAbstract).Select(t => t.Name);

    private static IEnumerable<string> Waits() => RuleBook.All.Select(r => r.Id).Except(NeverWaitedOn);

    /// <summary>Runs histories until one fails.</summary>
    private static ConcurrentDictionary<int, string> Run(int count, RuleBook rules, Tally tally, bool refusalsToo = true)
    {
        var failures = new ConcurrentDictionary<int, string>();
        Parallel.For(0, count, (number, loop) =>
        {
            if (loop.ShouldExitCurrentIteration) return;
            if (new History(Seed, number, rules, tally, refusalsToo).Run() is not { } failure) return;
            failures[number] = failure;
            loop.Stop();
        });
        return failures;
    }
}
