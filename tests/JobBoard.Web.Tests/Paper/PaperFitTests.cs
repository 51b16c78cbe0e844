using System.Collections.Immutable;
using JobBoard.Web.Paper;

namespace JobBoard.Web.Tests.Paper;

/// <summary>What finds no room on a sheet is counted, nothing is lost without a word.</summary>
public class PaperFitTests
{
    [Fact]
    public void Any_lists_fit_and_what_is_left_out_is_counted()
    {
        var dice = new Random();
        for (var i = 0; i < 3000; i++)
        {
            var lists = Enumerable.Range(0, dice.Next(1, 11)).Select(l => new PaperList($"List {l}", Lines(dice))).ToArray();

            var columns = PaperFit.Columns(lists);

            Assert.Equal(2, columns.Length);
            var cut = columns.SelectMany(c => c).ToArray();
            Assert.Equal(lists.Select(l => l.Title), cut.Select(l => l.Title));
            Assert.Equal(lists.Select(l => l.Lines.Length), cut.Select(l => l.Lines.Length + l.More));
            Assert.All(cut.SelectMany(l => l.Lines), line => Assert.InRange(line.Length, 1, PaperFit.MostLetters));
            Assert.All(columns, c => Assert.True(Lines(c) <= PaperFit.ColumnLines));
        }
    }

    [Fact]
    public void Every_list_shows_its_first_lines_before_one_shows_many()
    {
        var long_ = new PaperList("Long", [.. Enumerable.Range(0, 500).Select(i => $"Task {i}")]);

        var columns = PaperFit.Columns([long_, new("Short", ["One", "Two", "Three"])]);

        var cut = columns.SelectMany(c => c).ToArray();
        Assert.Equal(0, cut[1].More);
        Assert.InRange(cut[0].Lines.Length, 20, 40);
        Assert.Equal(500 - cut[0].Lines.Length, cut[0].More);
    }

    private static double Lines(ImmutableArray<PaperList> column) => column.Sum(l => 1.7 + (l.More > 0 ? 1 : 0) + l.Lines.Sum(line => line.Length > 46 ? 2 : 1));

    private static ImmutableArray<string> Lines(Random dice) =>
        [.. Enumerable.Range(0, dice.Next(4) == 0 ? dice.Next(500) : dice.Next(6)).Select(_ => new string('x', dice.Next(1, 200)))];
}
