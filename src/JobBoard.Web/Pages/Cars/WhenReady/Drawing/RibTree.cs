using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Cars.WhenReady.Drawing;

/// <summary>
/// The plan as a line and ribs: every step beside the line goes on to the one step that waits on it most closely, so that each
/// joins where its slack ends. What else waits on it is told when the step is opened, and in the table.
/// </summary>
internal sealed class RibTree
{
    /// <summary>The end of the line, as what a rib joins.</summary>
    public const int End = -1;

    private readonly ReadyPlan _plan;
    private readonly bool[] _onLine;
    private readonly int[] _before;

    private RibTree(ReadyPlan plan)
    {
        _plan = plan;
        var numbers = plan.Steps.Select((s, i) => (s.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        Line = [.. (plan.Line.IsEmpty ? Last() : plan.Line).Where(numbers.ContainsKey).Select(id => numbers[id])];
        Nodes = [.. plan.Steps.Select((s, i) => new RibNode(i, Math.Min(s.Start, At(s)), Math.Max(s.Finish, At(s)), At(s), s.InHand))];
        ClampLine();
        _onLine = new bool[Nodes.Length];
        foreach (var step in Line) _onLine[step] = true;
        _before = [.. Enumerable.Repeat(-1, Nodes.Length)];
        for (var i = 1; i < Line.Length; i++) _before[Line[i]] = Line[i - 1];
        var parents = Parents(numbers);
        Ribs = MakeRibs(parents);
    }

    public ImmutableArray<RibNode> Nodes { get; private set; }

    public ImmutableArray<int> Line { get; }

    public ImmutableArray<Rib> Ribs { get; }

    /// <summary>The step on the line whose bolt stands at now, or nothing.</summary>
    public int? InHandNow => Line.Where(n => Nodes[n].InHand && Nodes[n].At == _plan.Now).Select(n => (int?)n).FirstOrDefault();

    public static RibTree Of(ReadyPlan plan) => new(plan);

    public bool IsOnLine(int node) => _onLine[node];

    /// <summary>The step before on the same row, or -1.</summary>
    public int Before(int node) => _before[node];

    /// <summary>When a rib joins: when its work is done and the other step starts; at the end of the line when all is done.</summary>
    public long JoinsAt(Rib rib) => rib.Joins == End ? Nodes.Max(n => n.Finish) : Math.Max(Nodes[rib.Last].Finish, Nodes[rib.Joins].Start);

    private long At(ReadyStep step) => step.InHand ? _plan.Now : step.Finish;

    private IEnumerable<string> Last() => _plan.Steps.OrderByDescending(s => s.Finish).Select(s => s.Id).Take(1);

    // Start-to-start chains may step back in time; on the line each bolt comes after the one before it.
    private void ClampLine()
    {
        var nodes = Nodes.ToBuilder();
        for (var i = 1; i < Line.Length; i++)
        {
            var (node, at) = (nodes[Line[i]], nodes[Line[i - 1]].At);
            if (node.At < at) nodes[Line[i]] = node with { At = at, Finish = Math.Max(at, node.Finish) };
        }

        Nodes = nodes.MoveToImmutable();
    }

    private int[] Parents(Dictionary<string, int> numbers)
    {
        var parents = Enumerable.Repeat(End, Nodes.Length).ToArray();
        var gaps = Enumerable.Repeat((long.MaxValue, 0, 0L, 0), Nodes.Length).ToArray();
        foreach (var link in _plan.Links)
        {
            if (!numbers.TryGetValue(link.After, out var from) || !numbers.TryGetValue(link.Task, out var to) || _onLine[from] || from == to) continue;
            var (earlier, later) = (Nodes[from], Nodes[to]);
            if (earlier.Finish > later.At || earlier.At > later.At) continue;
            var gap = (Math.Max(0, later.Start - earlier.Finish), _onLine[to] ? 0 : 1, later.At, to);
            if (gap.CompareTo(gaps[from]) < 0) (gaps[from], parents[from]) = (gap, to);
        }

        return parents;
    }

    private ImmutableArray<Rib> MakeRibs(int[] parents)
    {
        var children = Enumerable.Range(0, Nodes.Length).Where(n => !_onLine[n] && parents[n] != End).ToLookup(n => parents[n]);
        var size = new int[Nodes.Length];
        foreach (var node in Enumerable.Range(0, Nodes.Length).Where(n => !_onLine[n]).OrderBy(n => Depth(n, parents)).Reverse())
            size[node] = 1 + children[node].Sum(c => size[c]);
        foreach (var node in Enumerable.Range(0, Nodes.Length).Where(n => !_onLine[n] && children[n].Any()))
            _before[node] = children[node].MinBy(c => (Math.Max(0, Nodes[node].Start - Nodes[c].Finish), -size[c], c));
        var goesOn = _before.Where((b, n) => b >= 0 && !_onLine[n]).ToHashSet();
        return [.. Enumerable.Range(0, Nodes.Length).Where(n => !_onLine[n] && !goesOn.Contains(n)).Select(n => new Rib(Back(n), parents[n]))];
    }

    private int Depth(int node, int[] parents)
    {
        var depth = 0;
        for (var n = node; n != End && !_onLine[n]; n = parents[n]) depth++;
        return depth;
    }

    private ImmutableArray<int> Back(int last)
    {
        var steps = new List<int>();
        for (var n = last; n >= 0; n = _before[n]) steps.Add(n);
        steps.Reverse();
        return [.. steps];
    }
}

/// <summary>A step with the times it is drawn at.</summary>
internal sealed record RibNode(int Number, long Start, long Finish, long At, bool InHand);

/// <summary>A rib.</summary>
/// <param name="Steps">Its steps, first to last.</param>
/// <param name="Joins">The step whose start it joins, or <see cref="RibTree.End"/>.</param>
internal sealed record Rib(ImmutableArray<int> Steps, int Joins)
{
    public int First => Steps[0];

    public int Last => Steps[^1];
}
