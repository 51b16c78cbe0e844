using CsCheck;
using JobBoard.Web.Pages.Cars.WhenReady.Drawing;

namespace JobBoard.Web.Tests.Pages.WhenReady;

/// <summary>The picture of When ready by its geometry, over random plans of 20 to 200 tasks.</summary>
public class PlacementTests(ITestOutputHelper output)
{
    private const int Plans = 500;

    private static readonly string[] Nothing = [];

    [Fact]
    public void No_label_covers_anything_or_leaves_the_picture() => Everywhere(drawing => Labels(drawing).Concat(Outside(drawing)));

    [Fact]
    public void No_bolt_covers_another_or_a_way_across() => Everywhere(Bolts);

    [Fact]
    public void No_line_crosses_or_lies_on_another() => Everywhere(Crossings);

    [Fact]
    public void Small_plans_are_drawn_without_a_crossing_too() =>
        RandomPlans.Of(2, 8).Sample(plan => Assert.Equal(Nothing, Crossings(ReadyLayout.Of(plan)!)), iter: 2000);

    [Fact]
    public void Later_is_never_further_left() => RandomPlans.Of(20, 200).Sample(
        plan =>
        {
            var at = plan.Steps.ToDictionary(s => s.Id, s => s.InHand ? plan.Now : s.Finish);
            var steps = ReadyLayout.Of(plan)!.Steps.Where(s => !s.OnLine).OrderBy(s => at[s.Id]).ThenBy(s => s.X).ToArray();
            for (var i = 1; i < steps.Length; i++) Assert.True(at[steps[i].Id] == at[steps[i - 1].Id] || steps[i].X >= steps[i - 1].X);
        },
        iter: 200);

    [Fact]
    public void Each_step_stands_once_and_joins_what_comes_after_it() => RandomPlans.Of(20, 200).Sample(
        plan =>
        {
            var drawing = ReadyLayout.Of(plan)!;
            var x = drawing.Steps.ToDictionary(s => s.Id, s => s.X);
            var after = plan.Links.Select(l => (l.After, l.Task)).ToHashSet();
            Assert.Equal(plan.Steps.Select(s => s.Id), drawing.Steps.Select(s => s.Id));
            foreach (var rib in drawing.Ribs)
            {
                var last = drawing.Steps.Where(s => s.Y == rib.Joint.FromY && s.X <= rib.Joint.X).MaxBy(s => s.X)!;
                Assert.True(rib.Joint.X > last.X && rib.Joint.From <= rib.Joint.X);
                if (rib.Joins is null) Assert.True(rib.Joint.X <= drawing.Line.To);
                else Assert.True(after.Contains((last.Id, rib.Joins)) && rib.Joint.X < x[rib.Joins], rib.First);
            }
        },
        iter: 200);

    [Fact]
    public void The_same_plan_gives_the_same_picture()
    {
        var plan = RandomPlans.Of(60, 60).Single();

        Assert.Equal(ReadyLayout.Of(plan)!.Steps.Select(s => (s.X, s.Y)), ReadyLayout.Of(plan)!.Steps.Select(s => (s.X, s.Y)));
    }

    [Fact]
    public void A_plan_without_steps_has_no_picture() => Assert.Null(ReadyLayout.Of(new() { Steps = [], Links = [], Now = 0 }));

    [Fact]
    public void How_large_pictures_get()
    {
        foreach (var n in new[] { 20, 60, 200, 500 })
        {
            var sizes = RandomPlans.Of(n, n).Array[5].Single().Select(p => ReadyLayout.Of(p)!).Select(d => $"{d.Width:0}x{d.Height:0}");
            output.WriteLine($"{n} steps: {string.Join(", ", sizes)}");
        }
    }

    private static void Everywhere(Func<ReadyDrawing, IEnumerable<string>> faults) =>
        RandomPlans.Of(20, 200).Sample(plan => Assert.Equal(Nothing, faults(ReadyLayout.Of(plan)!)), iter: Plans);

    private static IEnumerable<string> Labels(ReadyDrawing drawing)
    {
        var texts = drawing.Texts.ToArray();
        var lines = Bars(drawing).Select(b => (b.What, Box: new DrawnBox(b.Bar.From, b.Bar.Y - 1.5, b.Bar.To - b.Bar.From, 3)))
            .Concat(drawing.Ribs.Select(r => (What: "across " + r.First, Box: Across(r))))
            .Concat(drawing.Steps.Select(s => (What: "bolt " + s.Id, s.Box)))
            .Append((What: "now", Box: new DrawnBox(drawing.Now.X + (drawing.Now.Width / 2) - 7, drawing.LineY - 31, 14, 12)))
            .Append((What: "axis", Box: new DrawnBox(0, drawing.AxisY - 1, drawing.Width, 2))).ToArray();
        for (var i = 0; i < texts.Length; i++)
        {
            foreach (var other in texts.Skip(i + 1).Where(t => t.Box.Overlaps(texts[i].Box))) yield return $"{texts[i].Words} covers {other.Words}";
            foreach (var (what, _) in lines.Where(l => l.Box.Overlaps(texts[i].Box))) yield return $"{texts[i].Words} covers {what}";
        }
    }

    private static IEnumerable<string> Outside(ReadyDrawing drawing) => drawing.Texts.Select(t => t.Box).Concat(drawing.Steps.Select(s => s.Box)).Concat(drawing.Ribs.Select(Across))
        .Where(b => b.X < 0 || b.Y < 0 || b.Right > drawing.Width || b.Bottom > drawing.Height).Select(b => $"{b} is outside");

    private static IEnumerable<string> Bolts(ReadyDrawing drawing)
    {
        var across = drawing.Ribs.Select(r => (r.First, Box: Across(r))).ToArray();
        for (var i = 0; i < drawing.Steps.Length; i++)
        {
            var step = drawing.Steps[i];
            foreach (var other in drawing.Steps.Skip(i + 1).Where(o => o.Box.Overlaps(step.Box))) yield return $"{step.Id} covers {other.Id}";
            foreach (var (rib, _) in across.Where(a => a.Box.Overlaps(step.Box))) yield return $"{step.Id} covers the way across of {rib}";
        }
    }

    private static IEnumerable<string> Crossings(ReadyDrawing drawing)
    {
        var bars = Bars(drawing).ToArray();
        foreach (var rib in drawing.Ribs)
        {
            var (top, bottom) = (Math.Min(rib.Joint.FromY, rib.Joint.ToY), Math.Max(rib.Joint.FromY, rib.Joint.ToY));
            foreach (var (what, bar) in bars.Where(b => top < b.Bar.Y && b.Bar.Y < bottom && b.Bar.From < rib.Joint.X && rib.Joint.X < b.Bar.To)) yield return $"{rib.First} crosses {what}";
            foreach (var other in drawing.Ribs.Where(o => o != rib && o.Joint.X == rib.Joint.X && (o.Joins, o.Joint.ToY) != (rib.Joins, rib.Joint.ToY) && Across(o).Overlaps(Across(rib)))) yield return $"{rib.First} lies on {other.First}";
        }

        foreach (var row in bars.GroupBy(b => b.Bar.Y))
        {
            var inOrder = row.OrderBy(b => b.Bar.From).ThenBy(b => b.Bar.To).ToArray();
            for (var i = 1; i < inOrder.Length; i++)
                if (inOrder[i].Bar.From < inOrder[i - 1].Bar.To) yield return $"{inOrder[i].What} lies on {inOrder[i - 1].What}";
        }
    }

    private static IEnumerable<(string What, DrawnBar Bar)> Bars(ReadyDrawing drawing) => drawing.Ribs
        .SelectMany(r => r.Work.Concat(r.Gaps).Append(new(r.Joint.From, r.Joint.X, r.Joint.FromY)).Select(b => (r.First, b)))
        .Append(("the line", new(drawing.Line.From, drawing.Line.To, drawing.LineY)));

    private static DrawnBox Across(DrawnRib rib) =>
        new(rib.Joint.X - 1, Math.Min(rib.Joint.FromY, rib.Joint.ToY), 2, Math.Abs(rib.Joint.FromY - rib.Joint.ToY));
}
