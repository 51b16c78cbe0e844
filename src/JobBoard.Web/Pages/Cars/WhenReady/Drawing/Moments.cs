namespace JobBoard.Web.Pages.Cars.WhenReady.Drawing;

/// <summary>What happens at a moment, in the order in which it is placed.</summary>
internal enum MomentKind
{
    Day,
    Start,
    Joint,
    Bolt,
    Now,
    Finish,
    Given,
    End,
}

/// <summary>Something that is placed from left to right.</summary>
/// <param name="Kind">What.</param>
/// <param name="Time">When.</param>
/// <param name="Layer">Of what happens at the same time on rows that hang together: which comes after which.</param>
/// <param name="Subject">A step, a day or a joined step.</param>
internal sealed record Moment(MomentKind Kind, long Time, int Layer, int Subject)
{
    /// <summary>Ribs that join here on one way.</summary>
    public List<int> Ribs { get; } = [];
}

/// <summary>
/// Everything that happens, put in one order: by time, and at the same time so that a rib joins before the bolt of what it
/// joins and after its own. The place in this order stands for time wherever rows are chosen.
/// </summary>
internal sealed class Moments
{
    private readonly RibTree _tree;
    private readonly ReadyPlan _plan;
    private readonly int[] _bolt;
    private readonly Dictionary<(int Joins, long At), int> _jointLayer = [];
    private readonly ILookup<int, int> _ribsInto;

    public Moments(RibTree tree, ReadyPlan plan)
    {
        (_tree, _plan) = (tree, plan);
        _bolt = [.. Enumerable.Repeat(-1, tree.Nodes.Length)];
        _ribsInto = Enumerable.Range(0, tree.Ribs.Length).ToLookup(r => tree.Ribs[r].Joins);
        foreach (var step in tree.Line) Bolt(step);
        foreach (var rib in tree.Ribs) Bolt(rib.Last);
        InOrder = [.. All().OrderBy(m => m.Time).ThenBy(m => m.Layer).ThenBy(m => m.Kind).ThenBy(m => m.Subject)];
        Starts = new int[tree.Nodes.Length];
        Joints = new int[tree.Ribs.Length];
        for (var i = 0; i < InOrder.Length; i++) Number(InOrder[i], i);
    }

    public Moment[] InOrder { get; }

    /// <summary>Where in the order each rib's first step starts, by step.</summary>
    public int[] Starts { get; }

    /// <summary>Where in the order each rib joins.</summary>
    public int[] Joints { get; }

    /// <summary>Whether a step in hand goes on after now, so that its end has to be placed too.</summary>
    public bool HasFinish(int node) => _tree.Nodes[node] is { InHand: true } n && n.Finish > n.At && !_tree.IsOnLine(node);

    /// <summary>Whether nothing is worked on its row for a while before a step, or it is the first there.</summary>
    public bool HasStart(int node) => _tree.Before(node) is var before && (before < 0 || _tree.Nodes[node].Start > _tree.Nodes[before].Finish);

    private void Number(Moment moment, int at)
    {
        if (moment.Kind == MomentKind.Start) Starts[moment.Subject] = at;
        foreach (var rib in moment.Ribs) Joints[rib] = at;
    }

    private IEnumerable<Moment> All()
    {
        for (var i = 0; i < _plan.Days.Length; i++) yield return new(MomentKind.Day, _plan.Days[i].At, -1, i);
        foreach (var node in _tree.Nodes)
        {
            if (HasStart(node.Number)) yield return new(MomentKind.Start, node.Start, 0, node.Number);
            if (HasFinish(node.Number)) yield return new(MomentKind.Finish, node.Finish, 0, node.Number);
            yield return new(MomentKind.Bolt, node.At, _bolt[node.Number], node.Number);
        }

        foreach (var joint in Joins()) yield return joint;
        yield return new(MomentKind.Now, _plan.Now, NowLayer(), 0);
        if (_plan.Given is { } given) yield return new(MomentKind.Given, given.At, 0, 0);
        yield return new(MomentKind.End, _tree.Nodes.Max(n => n.Finish), int.MaxValue, 0);
    }

    // With the bolt in hand on the line; else with those in hand beside it, and after whatever bolts of the line stand at now.
    private int NowLayer()
    {
        if (_tree.InHandNow is { } inHand) return _bolt[inHand];
        return _tree.Nodes.Where(n => n.At == _plan.Now && (n.InHand || _tree.IsOnLine(n.Number)))
            .Select(n => _bolt[n.Number] + (_tree.IsOnLine(n.Number) ? 1 : 0)).DefaultIfEmpty(0).Max();
    }

    private IEnumerable<Moment> Joins()
    {
        foreach (var group in Enumerable.Range(0, _tree.Ribs.Length).GroupBy(r => (_tree.Ribs[r].Joins, At: _tree.JoinsAt(_tree.Ribs[r]))))
        {
            var layer = group.Key.Joins == RibTree.End ? int.MaxValue - 1 : _jointLayer[group.Key];
            var moment = new Moment(MomentKind.Joint, group.Key.At, layer, group.Key.Joins);
            moment.Ribs.AddRange(group);
            yield return moment;
        }
    }

    // Depth first over the tree, whose steps are few enough for the stack: a row is walked from its first step.
    private int Bolt(int node)
    {
        if (_bolt[node] >= 0) return _bolt[node];
        var row = new Stack<int>();
        for (var n = node; n >= 0 && _bolt[n] < 0; n = _tree.Before(n)) row.Push(n);
        while (row.TryPop(out var next)) _bolt[next] = LayerOf(next);
        return _bolt[node];
    }

    private int LayerOf(int step)
    {
        var node = _tree.Nodes[step];
        var layer = 0;
        if (HasStart(step) && node.Start == node.At) layer = 1;
        layer = Math.Max(layer, AfterTheOneBefore(step, node.At));
        foreach (var joint in _ribsInto[step].GroupBy(r => _tree.JoinsAt(_tree.Ribs[r])))
        {
            var own = JointLayer(step, joint.Key, joint);
            _jointLayer[(step, joint.Key)] = own;
            if (joint.Key == node.At) layer = Math.Max(layer, own + 1);
        }

        return layer;
    }

    private int JointLayer(int step, long at, IEnumerable<int> ribs)
    {
        var layer = HasStart(step) && _tree.Nodes[step].Start == at ? 1 : 0;
        layer = Math.Max(layer, AfterTheOneBefore(step, at));
        foreach (var last in ribs.Select(r => _tree.Ribs[r].Last))
        {
            var bolt = Bolt(last);
            if (_tree.Nodes[last].At == at) layer = Math.Max(layer, bolt + 1);
            else if (_tree.Nodes[last].Finish == at) layer = Math.Max(layer, 1);
        }

        return layer;
    }

    private int AfterTheOneBefore(int step, long at)
    {
        if (_tree.Before(step) is not (>= 0 and var before)) return 0;
        if (_tree.Nodes[before].At == at) return _bolt[before] + 1;
        return HasFinish(before) && _tree.Nodes[before].Finish == at ? 1 : 0;
    }
}
