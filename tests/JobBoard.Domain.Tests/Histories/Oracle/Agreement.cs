using JobBoard.Domain.Rules;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>Whether the program and the oracle name the same kinds of waiting-on for a start: all of them, and no others.</summary>
public static class Agreement
{
    /// <summary>Told beside what the start waits on; whether it is told when it must be is judged at acceptance.</summary>
    private const string Stale = "changed-since-you-looked";

    /// <summary>Whether a command is looked at at all is decided before what it waits on.</summary>
    private static readonly string[] AtTheDoor = ["position", "input"];

    public static string? Between(List<Wait> waits, IReadOnlyCollection<WaitingOn> reasons)
    {
        var theirs = reasons.Select(r => r.Rule).Where(r => r != Stale).ToHashSet();
        if (AtTheDoor.Any(theirs.Contains)) return null;
        var sure = waits.Where(w => w.Sure).Select(w => w.Kind).ToHashSet();
        var missing = sure.Except(theirs).ToList();
        var beyond = theirs.Except(waits.Select(w => w.Kind)).ToList();
        return missing.Count + beyond.Count == 0 ? null : $"a start waits on [{Said(waits.Select(w => w.Kind + " " + w.About))}], refused with [{Said(reasons.Select(r => r.Rule + " " + r.About))}]";
    }

    private static string Said(IEnumerable<string> words) => string.Join(", ", words);
}
