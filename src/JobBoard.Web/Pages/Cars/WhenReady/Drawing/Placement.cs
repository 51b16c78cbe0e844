using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Cars.WhenReady.Drawing;

/// <summary>
/// Places everything from left to right in one pass over the moments. Later is never further left; between two moments lies at
/// least so much as the working time asks for, and as much more as bolts, labels and ways across need to keep clear of one
/// another in every lane.
/// </summary>
internal sealed class Placement
{
    private const double PerHour = 4;
    private const double LabelGap = 12;
    private const double RowGap = 6;

    // Beside the line a label goes under its row only where it would push everything right of it by more than this.
    private const double Alternate = 12;

    private readonly ReadyPlan _plan;
    private readonly RibTree _tree;
    private readonly Moments _moments;
    private readonly Tracks _tracks;
    private readonly Lanes _lanes = new();
    private readonly Dictionary<int, Rib> _lastOf;
    private double _x = Lanes.Margin;
    private double _base = Lanes.Margin;
    private long _time;

    public Placement(ReadyPlan plan, RibTree tree, Moments moments, Tracks tracks)
    {
        (_plan, _tree, _moments, _tracks) = (plan, tree, moments, tracks);
        _lastOf = tree.Ribs.ToDictionary(r => r.Last);
        var steps = tree.Nodes.Length;
        (Bolts, Starts, Ends, SlackLeft) = (new double[steps], new double[steps], new double[steps], new double?[steps]);
        (Labels, Under, Joints) = (new ImmutableArray<(string, DrawnStyle)>[steps], new bool[steps], new double[tree.Ribs.Length]);
        Days = new double[plan.Days.Length];
        _time = moments.InOrder[0].Time;
        Sweep();
    }

    public double[] Bolts { get; }

    public double[] Starts { get; }

    public double[] Ends { get; }

    public double?[] SlackLeft { get; }

    public ImmutableArray<(string Words, DrawnStyle Style)>[] Labels { get; }

    public bool[] Under { get; }

    public double[] Joints { get; }

    public double[] Days { get; }

    public double Now { get; private set; }

    public double End { get; private set; }

    public double? Given { get; private set; }

    public double Width => _lanes.Widest + Lanes.Margin;

    /// <summary>Half the size of a bolt.</summary>
    public double Radius(int step) => (_tree.IsOnLine(step), _tree.Nodes[step].InHand) switch
    {
        (true, true) => 17,
        (true, false) => 14,
        _ => 11,
    };

    private void Sweep()
    {
        var all = _moments.InOrder;
        for (var i = 0; i < all.Length;)
        {
            var to = i + 1;
            if (all[i].Kind is MomentKind.Bolt or MomentKind.Now)
            {
                while (to < all.Length && all[to].Kind is MomentKind.Bolt or MomentKind.Now && (all[to].Time, all[to].Layer) == (all[i].Time, all[i].Layer)) to++;
            }

            Reach(all[i].Time);
            Place(all.AsSpan(i, to - i));
            i = to;
        }
    }

    private void Reach(long time)
    {
        if (time == _time) return;
        _base = _x + ((time - _time) / 120.0 * PerHour);
        _time = time;
    }

    private void Place(ReadOnlySpan<Moment> together)
    {
        var at = Math.Max(_x, _base);
        foreach (var moment in together) at = Math.Max(at, Needs(moment));
        at = Math.Ceiling(at);
        foreach (var moment in together) Put(moment, at);
        _x = at;
    }

    private double Needs(Moment moment) => moment.Kind switch
    {
        MomentKind.Day => _lanes.After(Lane.Axis, LabelGap),
        MomentKind.Start => _lanes.After(Lane.Row(_tracks.OfNode[moment.Subject]), _tree.Before(moment.Subject) < 0 ? 2 * LabelGap : RowGap),
        MomentKind.Joint => JointNeeds(moment),
        MomentKind.Bolt => BoltNeeds(moment.Subject),
        MomentKind.Now => NowNeeds(),
        MomentKind.Finish => _lanes.After(Lane.Row(_tracks.OfNode[moment.Subject]), RowGap),
        MomentKind.Given => _lanes.After(Lane.Given, LabelGap),
        _ => Math.Max(_lanes.After(Lane.Row(0), LabelGap), Math.Max(_lanes.After(Lane.Over(0), 0), _lanes.After(Lane.Under(0), 0))),
    };

    private void Put(Moment moment, double x)
    {
        switch (moment.Kind)
        {
            case MomentKind.Day:
                Days[moment.Subject] = x;
                _lanes.Fill(Lane.Axis, x + 4 + Letters.Width(_plan.Days[moment.Subject].Words, DrawnStyle.Note));
                break;
            case MomentKind.Start:
                Starts[moment.Subject] = x;
                _lanes.Fill(Lane.Row(_tracks.OfNode[moment.Subject]), x);
                break;
            case MomentKind.Joint:
                PutJoint(moment, x);
                break;
            case MomentKind.Bolt:
                PutBolt(moment.Subject, x);
                break;
            case MomentKind.Finish:
                PutFinish(moment.Subject, x);
                break;
            default:
                PutMark(moment.Kind, x);
                break;
        }
    }

    private void PutMark(MomentKind kind, double x)
    {
        switch (kind)
        {
            case MomentKind.Now:
                Now = x;
                _lanes.Fill(Lane.Over(0), x + (NowWidth / 2));
                if (!NowIsAtBolt) _lanes.Fill(Lane.Row(0), x + 2);
                break;
            case MomentKind.Given:
                Given = x;
                _lanes.Fill(Lane.Given, x + 4 + Letters.Width(_plan.Given!.Words, DrawnStyle.Note));
                break;
            default:
                End = x;
                for (var i = 0; i < _plan.EndWords.Length; i++)
                    _lanes.Fill(Lane.Row(0), x + LabelGap + Letters.Width(_plan.EndWords[i], i == 0 ? DrawnStyle.LineName : DrawnStyle.Note));
                break;
        }
    }

    private double NowWidth => Math.Max(16, Letters.Width(_plan.NowWords, DrawnStyle.LineName));

    private bool NowIsAtBolt => _tree.InHandNow is not null;

    private double NowNeeds()
    {
        var over = _lanes.After(Lane.Over(0), LabelGap) + (NowWidth / 2);
        return NowIsAtBolt ? over : Math.Max(over, _lanes.After(Lane.Row(0), 2));
    }

    private double JointNeeds(Moment joint)
    {
        var to = joint.Subject == RibTree.End ? 0 : _tracks.OfNode[joint.Subject];
        var least = _lanes.After(Lane.Row(to), RowGap);
        foreach (var track in joint.Ribs.Select(r => _tracks.Of[r]))
        {
            least = Math.Max(least, _lanes.After(Lane.Row(track), 4 + DrawnJoint.Corner));
            foreach (var lane in Lanes.Between(track, to)) least = Math.Max(least, _lanes.After(lane, RowGap));
        }

        return least;
    }

    private void PutJoint(Moment joint, double x)
    {
        var to = joint.Subject == RibTree.End ? 0 : _tracks.OfNode[joint.Subject];
        foreach (var rib in joint.Ribs)
        {
            Joints[rib] = x;
            _lanes.Fill(Lane.Row(_tracks.Of[rib]), x);
            foreach (var lane in Lanes.Between(_tracks.Of[rib], to)) _lanes.Fill(lane, x);
        }

        _lanes.Fill(Lane.Row(to), x + DrawnJoint.Corner);
    }

    private double BoltNeeds(int step)
    {
        var track = _tracks.OfNode[step];
        var half = LabelOf(step).Max(l => Letters.Width(l.Words, l.Style)) / 2;
        var row = _lanes.After(Lane.Row(track), RowGap) + Radius(step);
        var over = _lanes.After(Lane.Over(track), LabelGap) + half;
        var under = _lanes.After(Lane.Under(track), LabelGap) + half;
        var least = Math.Max(row, Math.Max(_x, _base));
        Under[step] = step == _tree.InHandNow || (under < over && (track == 0 || over > least + Alternate));
        return Math.Max(row, Under[step] ? under : over);
    }

    private void PutBolt(int step, double x)
    {
        var track = _tracks.OfNode[step];
        (Bolts[step], Ends[step]) = (x, x);
        var right = x + Radius(step) + (_plan.Steps[step].Held ? Letters.HeldMark : 0);
        _lanes.Fill(Lane.Row(track), right);
        _lanes.Fill(Under[step] ? Lane.Under(track) : Lane.Over(track), x + (LabelOf(step).Max(l => Letters.Width(l.Words, l.Style)) / 2));
        if (!_moments.HasFinish(step)) PutSlack(step, right);
    }

    private void PutFinish(int step, double x)
    {
        Ends[step] = x;
        _lanes.Fill(Lane.Row(_tracks.OfNode[step]), x);
        PutSlack(step, x);
    }

    private void PutSlack(int step, double after)
    {
        if (!_lastOf.ContainsKey(step) || _plan.Steps[step].Slack is not { } words) return;
        SlackLeft[step] = after + RowGap;
        _lanes.Fill(Lane.Row(_tracks.OfNode[step]), after + RowGap + Letters.Width(words, DrawnStyle.Note));
    }

    private ImmutableArray<(string Words, DrawnStyle Style)> LabelOf(int step)
    {
        if (!Labels[step].IsDefault) return Labels[step];
        var style = _tree.IsOnLine(step) ? DrawnStyle.LineName : DrawnStyle.Name;
        var name = Letters.Name(_plan.Steps[step].Name, style).Select(l => (l, style));
        return Labels[step] = _plan.Steps[step].Note is { } note ? [(Letters.Note(note), DrawnStyle.Note), .. name] : [.. name];
    }
}
