using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Cars.WhenReady.Drawing;

/// <summary>
/// Places a plan as a line and ribs: no line crosses another, no label covers another or a line, and nothing leaves the
/// picture, whatever the plan. Pure: the same plan gives the same picture.
/// </summary>
public sealed class ReadyLayout
{
    private readonly ReadyPlan _plan;
    private readonly RibTree _tree;
    private readonly Tracks _tracks;
    private readonly Placement _placed;
    private readonly Heights _heights;

    private ReadyLayout(ReadyPlan plan)
    {
        _plan = plan;
        _tree = RibTree.Of(plan);
        var moments = new Moments(_tree, plan);
        _tracks = new Tracks(_tree, moments);
        _placed = new Placement(plan, _tree, moments, _tracks);
        _heights = new Heights(_tree, _tracks, _placed);
        HasStart = moments.HasStart;
    }

    private Func<int, bool> HasStart { get; }

    /// <summary>Places a plan; nothing where it has no steps.</summary>
    public static ReadyDrawing? Of(ReadyPlan plan) => plan.Steps.IsEmpty ? null : new ReadyLayout(plan).Draw();

    private ReadyDrawing Draw() => new()
    {
        Width = Math.Ceiling(_placed.Width),
        Height = _heights.Axis + 26 + (_placed.Given is null ? 0 : 20),
        LineY = _heights.LineY,
        Line = (_placed.Starts[_tree.Line[0]], _placed.End),
        AxisY = _heights.Axis,
        Steps = [.. Enumerable.Range(0, _tree.Nodes.Length).Select(Step)],
        Ribs = [.. Enumerable.Range(0, _tree.Ribs.Length).Select(Rib)],
        Waits = [.. _tree.Line.Skip(1).Where(HasStart).Select(n => new DrawnBar(_placed.Ends[_tree.Before(n)], _placed.Starts[n], _heights.LineY)).Where(b => b.To > b.From)],
        Days = [.. _plan.Days.Select((d, i) => Day(d, _placed.Days[i], 17))],
        Given = _placed.Given is { } given ? Day(_plan.Given!, given, 37) : null,
        Now = Now(),
        End = [.. _plan.EndWords.Select(EndLine)],
    };

    private DrawnDay Day(ReadyDay day, double x, double under) =>
        new(x, new(day.Words, x + 4, _heights.Axis + under, Letters.Width(day.Words, DrawnStyle.Note), DrawnStyle.Note));

    private DrawnText Now()
    {
        var width = Letters.Width(_plan.NowWords, DrawnStyle.LineName);
        return new(_plan.NowWords, _placed.Now - (width / 2), _heights.LineY - Heights.LineRoom - 15, width, DrawnStyle.LineName);
    }

    private DrawnText EndLine(string words, int line)
    {
        var style = line == 0 ? DrawnStyle.LineName : DrawnStyle.Note;
        var first = _heights.LineY + 5 - ((_plan.EndWords.Length - 1) * Letters.LineHeight / 2);
        return new(words, _placed.End + 12, first + (line * Letters.LineHeight), Letters.Width(words, style), style);
    }

    private DrawnStep Step(int step)
    {
        var (x, y, radius) = (_placed.Bolts[step], _heights.Row(_tracks.OfNode[step]), _placed.Radius(step));
        var label = _placed.Labels[step];
        var (room, under) = (_tree.IsOnLine(step) ? Heights.LineRoom : 14.0, _placed.Under[step]);
        var first = under ? y + room + 12 : y - room - ((label.Length - 1) * Letters.LineHeight) - 4;
        var slack = _placed.SlackLeft[step] is { } left && _plan.Steps[step].Slack is { } words
            ? new DrawnText(words, left, y + 4.5, Letters.Width(words, DrawnStyle.Note), DrawnStyle.Note)
            : null;
        return new(_plan.Steps[step].Id, x, y, radius, _tree.IsOnLine(step), [.. label.Select((l, i) => Centred(l.Words, l.Style, x, first + (i * Letters.LineHeight)))], slack)
        {
            Held = _plan.Steps[step].Held,
        };
    }

    private static DrawnText Centred(string words, DrawnStyle style, double x, double baseline)
    {
        var width = Letters.Width(words, style);
        return new(words, x - (width / 2), baseline, width, style);
    }

    private DrawnRib Rib(int rib)
    {
        var (steps, track, y) = (_tree.Ribs[rib].Steps, _tracks.Of[rib], _heights.Row(_tracks.Of[rib]));
        var (work, gaps) = (new List<DrawnBar>(), new List<DrawnBar>());
        foreach (var step in steps)
        {
            var from = HasStart(step) ? _placed.Starts[step] : _placed.Ends[_tree.Before(step)];
            if (HasStart(step) && _tree.Before(step) is >= 0 and var before) gaps.Add(new(_placed.Ends[before], from, y));
            work.Add(new(from, _placed.Ends[step], y));
        }

        var joins = _tree.Ribs[rib].Joins;
        var last = steps[^1];
        var gapFrom = _placed.SlackLeft[last] is { } left ? left + Letters.Width(_plan.Steps[last].Slack!, DrawnStyle.Note) + 4 : _placed.Ends[last];
        var joint = new DrawnJoint(gapFrom, y, _placed.Joints[rib], _heights.Row(joins == RibTree.End ? 0 : _tracks.OfNode[joins]));
        return new(_plan.Steps[steps[0]].Id, joins == RibTree.End ? null : _plan.Steps[joins].Id, track, [.. work], [.. gaps], joint);
    }
}
