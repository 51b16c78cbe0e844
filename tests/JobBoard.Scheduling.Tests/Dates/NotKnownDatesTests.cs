using static JobBoard.Scheduling.Tests.ShopPlan;

namespace JobBoard.Scheduling.Tests;

/// <summary>What rests on something that nobody can date has no dates, and says on what it rests.</summary>
public class NotKnownDatesTests
{
    [Fact]
    public void What_rests_on_something_not_known_has_no_dates()
    {
        var (times, _) = Plan([2, 2, 2, 2], new Link(1, 0), new Link(2, 1), new Link(3, 0));
        times.SetNotKnown(1, reason: 70);

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Equal((70, 70), (dates[1].RestsOn, dates[2].RestsOn));
        Assert.Null(dates[2].EarlyStart);
        Assert.Null(dates[2].TotalFloat);
        Assert.Equal(At("2026-03-02T12:00+01:00"), dates[3].EarlyFinish);
        Assert.Null(dates.End);
        Assert.Empty(dates.Chain());
    }

    [Fact]
    public void Late_dates_are_not_known_while_the_end_is_not()
    {
        var (times, _) = Plan([2, 2, 2], new Link(1, 0), new Link(2, 0));
        times.SetNotKnown(1, reason: 3);

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Null(dates[2].LateFinish);
        Assert.Null(dates[2].TotalFloat);
        Assert.Null(dates[2].FreeFloat);
        Assert.Equal(0, dates[0].FreeFloat);
    }

    [Fact]
    public void Date_given_says_by_when_a_part_not_known_is_needed()
    {
        var (times, _) = Plan([2, 2], new Link(1, 0));
        times.SetNotKnown(0, reason: 3);
        times.DateGiven = At("2026-03-06T12:00+01:00");

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Equal(At("2026-03-06T08:00+01:00"), dates[0].LateStart);
        Assert.Null(dates[0].EarlyStart);
    }

    [Fact]
    public void Everything_a_task_rests_on_is_named()
    {
        var (times, _) = Plan([1, 1, 1, 1], new Link(2, 0), new Link(2, 1, Kind: LinkKind.FinishFinish), new Link(3, 2));
        times.SetNotKnown(0, reason: 9);
        times.SetNotKnown(1, reason: 4);

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Equal(4, dates[3].RestsOn);
        Assert.Equal([4, 9], dates.RestsOn(3));
        Assert.Equal([9], dates.RestsOn(0));
    }

    [Fact]
    public void Start_that_has_happened_passes_nothing_unknown_on()
    {
        var (times, _) = Plan([1, 3, 1], new Link(1, 0), new Link(2, 1, LinkKind.StartStart));
        times.SetNotKnown(0, reason: 9);
        times.SetInHand(1, Monday - Hour, 3 * Hour);

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Null(dates[1].RestsOn);
        Assert.Equal(At("2026-03-02T11:00+01:00"), dates[1].EarlyFinish);
        Assert.Null(dates[2].RestsOn);
    }
}
