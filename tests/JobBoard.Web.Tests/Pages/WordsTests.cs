using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Cars.CarTask;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Tests.Pages;

/// <summary>What the screens say where no state of a shop is needed.</summary>
public class WordsTests
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 2, 12, 0, 0, TimeSpan.FromHours(1));

    [Theory]
    [InlineData(0, "12:00")]
    [InlineData(1, "12:15")]
    [InlineData(15, "12:15")]
    [InlineData(16, "12:30")]
    public void Worked_out_times_go_up_to_the_next_quarter(int minutes, string words) =>
        Assert.Equal(words, PlannedTime.Of(Noon.AddMinutes(minutes), Noon));

    [Theory]
    [InlineData(0, "no slack")]
    [InlineData(90, "1 h 30 of slack")]
    [InlineData(-45, "short by 45 min")]
    public void Slack_is_told_in_words(int minutes, string words) => Assert.Equal(words, PlannedTime.Slack(TimeSpan.FromMinutes(minutes)));

    [Theory]
    [InlineData("Heron coupe", "heron-coupe")]
    [InlineData("Škoda No. 7", "skoda-no-7")]
    [InlineData("  ", "car")]
    [InlineData("Taken", "taken-2")]
    public void Ids_are_made_of_names(string name, string id) => Assert.Equal(id, NewIds.For(name, x => x == "taken", "car"));

    [Fact]
    public void Ids_made_of_long_names_are_short_enough() =>
        Assert.InRange(NewIds.For(new string('x', 300), x => x.Length == 56, "car").Length, 57, 64);

    [Fact]
    public void Links_are_spelled_out()
    {
        Assert.Equal("starts after it is finished", LinkWords.Of(new("b", "a")));
        Assert.Equal("starts after it is finished, as early as 20 min before its end", LinkWords.Of(new("b", "a", Lag: -20)));
        Assert.Equal("is finished after it is started, 2 h by the clock later", LinkWords.Of(new("b", "a", LinkKind.StartFinish, 120, LagClock.Elapsed)));
    }

    [Fact]
    public void The_bolt_and_the_words_follow_the_state()
    {
        var signed = new TaskState { Id = "t", Status = WorkStatus.SignedOff, SignedOff = new("inga", Noon) };
        var lapsed = signed with { SignedOff = new("inga", Noon, new("line/tight", "x", "sol", Noon, ByPlan: false)) };

        Assert.Equal((BoltState.SignedOff, "signed off"), (TaskWords.Mark(signed), TaskWords.State(signed)));
        Assert.Equal((BoltState.OutOfLine, "lapsed: has to be done again"), (TaskWords.Mark(lapsed), TaskWords.State(lapsed)));
        Assert.Equal((BoltState.NotStarted, "for second check"), (TaskWords.Mark(signed with { Status = WorkStatus.ForSecondCheck }), TaskWords.State(signed with { Status = WorkStatus.ForSecondCheck })));
    }

    [Theory]
    [InlineData("car/heron/foreman/car-stage:s06-lift", "s06-lift")]
    [InlineData("person/inga/car-task:heron:mounts", "heron:mounts")]
    [InlineData("person/inga/bay", null)]
    public void A_fragment_may_have_a_subject(string text, string? subject)
    {
        var id = FragmentId.Read(text);

        Assert.Equal(subject, id!.Value.Subject);
        Assert.Equal(text, id.Value.ToString());
    }

    [Theory]
    [InlineData("person/inga/car-task:")]
    [InlineData("person/inga/car-task:A b")]
    public void A_subject_that_makes_no_sense_is_no_fragment(string text) => Assert.Null(FragmentId.Read(text));
}
