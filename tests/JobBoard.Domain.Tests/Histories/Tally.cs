using System.Collections.Concurrent;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>What happened over a run, counted: safe to use from several histories at once.</summary>
public sealed class Tally
{
    private readonly ConcurrentDictionary<string, int> _accepted = new();
    private readonly ConcurrentDictionary<string, int> _refused = new();
    private readonly ConcurrentDictionary<string, int> _waits = new();
    private int _histories;

    public int Histories => _histories;

    /// <summary>Accepted commands, the shop's setting-up not counted.</summary>
    public int AllAccepted => _accepted.Values.Sum();

    public double MeanLength => (double)AllAccepted / Math.Max(1, _histories);

    public void History() => Interlocked.Increment(ref _histories);

    public void Accepted(string command) => _accepted.AddOrUpdate(command, 1, (_, n) => n + 1);

    public void Refused(string command, IEnumerable<string> rules)
    {
        _refused.AddOrUpdate(command, 1, (_, n) => n + 1);
        foreach (var rule in rules.Distinct()) _waits.AddOrUpdate(rule, 1, (_, n) => n + 1);
    }

    /// <summary>The smallest count among these commands (accepted) and waits.</summary>
    public int Fewest(IEnumerable<string> commands, IEnumerable<string> rules) =>
        commands.Select(c => _accepted.GetValueOrDefault(c)).Concat(rules.Select(r => _waits.GetValueOrDefault(r))).Min();

    /// <summary>What happened fewer times than it should.</summary>
    public IEnumerable<string> Seldom(IEnumerable<string> commands, IEnumerable<string> rules, int least) =>
        commands.Select(c => (Name: c, Times: _accepted.GetValueOrDefault(c))).Concat(rules.Select(r => (Name: r, Times: _waits.GetValueOrDefault(r))))
            .Where(c => c.Times < least).Select(c => $"{c.Name}: {c.Times}");

    /// <summary>The counts as lines of text.</summary>
    public IEnumerable<string> Lines()
    {
        yield return $"{_histories} histories, {AllAccepted} accepted commands, {MeanLength:0.0} a history, {_refused.Values.Sum()} refused";
        foreach (var (command, count) in _accepted.OrderBy(c => c.Key, StringComparer.Ordinal))
            yield return $"  {command}: {count} accepted, {_refused.GetValueOrDefault(command)} refused";
        foreach (var (rule, count) in _waits.OrderBy(c => c.Key, StringComparer.Ordinal))
            yield return $"  waiting on {rule}: {count}";
    }
}
