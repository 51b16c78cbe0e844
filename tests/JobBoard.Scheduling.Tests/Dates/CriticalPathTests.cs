using static JobBoard.Scheduling.Tests.ShopPlan;

namespace JobBoard.Scheduling.Tests;

/// <summary>Dates from now on the shop's hours: what is signed off, in hand, held by a part, or has a date given.</summary>
public class CriticalPathTests
{
    [Fact]
    public void Task_after_a_full_day_starts_next_morning()
    {
        var (_, dates) = Plan([8, 1], new Link(1, 0));

        Assert.Equal(At("2026-03-02T16:00+01:00"), dates[0].EarlyFinish);
        Assert.Equal(At("2026-03-03T08:00+01:00"), dates[1].EarlyStart);
        Assert.Equal(At("2026-03-02T16:00+01:00"), dates[0].LateFinish);
        Assert.Equal(9 * Hour, Shop.WorkingBetween(Monday, dates.End!.Value));
    }

    [Fact]
    public void Elapsed_lag_runs_over_the_weekend_and_working_lag_does_not()
    {
        var friday = At("2026-03-06T08:00+01:00");

        var (_, elapsed) = Plan([8, 1], friday, new Link(1, 0, Lag: 24 * Hour, Clock: LagClock.Elapsed));
        var (_, working) = Plan([8, 1], friday, new Link(1, 0, Lag: 24 * Hour));

        Assert.Equal(At("2026-03-09T08:00+01:00"), elapsed[1].EarlyStart);
        Assert.Equal(At("2026-03-12T08:00+01:00"), working[1].EarlyStart);
    }

    [Fact]
    public void Night_within_an_elapsed_lag_gives_slack_before_it()
    {
        var (_, dates) = Plan([6, 1], new Link(1, 0, Lag: 12 * Hour, Clock: LagClock.Elapsed));

        Assert.Equal(At("2026-03-03T08:00+01:00"), dates[1].EarlyStart);
        Assert.Equal(2 * Hour, dates[0].TotalFloat);
        Assert.Equal([new ChainStep(0, -1), new ChainStep(1, 0)], dates.Chain());
    }

    [Fact]
    public void Two_elapsed_lags_through_a_hold_point_count_from_shop_hours()
    {
        var friday = At("2026-03-06T08:00+01:00");

        var (_, dates) = Plan(
            [8, 0, 1], friday, new Link(1, 0, Lag: 20 * Hour, Clock: LagClock.Elapsed), new Link(2, 1, Lag: 30 * Hour, Clock: LagClock.Elapsed));

        Assert.Equal(At("2026-03-09T08:00+01:00"), dates[1].EarlyFinish);
        Assert.Equal(At("2026-03-10T14:00+01:00"), dates[2].EarlyStart);
    }

    [Fact]
    public void Hold_point_after_a_full_day_is_reached_at_closing()
    {
        var (_, dates) = Plan([8, 0, 1], new Link(1, 0), new Link(2, 1));

        Assert.Equal(At("2026-03-02T16:00+01:00"), dates[1].EarlyFinish);
        Assert.Equal(At("2026-03-03T08:00+01:00"), dates[2].EarlyStart);
    }

    [Fact]
    public void Lead_lets_the_next_task_begin_before_the_end()
    {
        var (_, dates) = Plan([6, 3], new Link(1, 0, Lag: -2 * Hour));

        Assert.Equal(At("2026-03-02T12:00+01:00"), dates[1].EarlyStart);
        Assert.Equal((0L, 0L), (dates[0].TotalFloat, dates[0].FreeFloat));
    }

    [Fact]
    public void Signed_off_task_keeps_its_times_and_its_lag_still_runs()
    {
        var (times, _) = Plan([4, 2], new Link(1, 0, Lag: 24 * Hour, Clock: LagClock.Elapsed));
        times.SetSignedOff(0, At("2026-02-28T10:00+01:00"), At("2026-03-01T11:00+01:00"));

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Equal(At("2026-03-01T11:00+01:00"), dates[0].EarlyFinish);
        Assert.Null(dates[0].TotalFloat);
        Assert.Equal(At("2026-03-02T11:00+01:00"), dates[1].EarlyStart);
        Assert.Equal([0, 1], dates.Chain().Select(step => step.Task));
    }

    [Fact]
    public void Everything_signed_off_ends_with_the_last_finish()
    {
        var (times, _) = Plan([4]);
        times.SetSignedOff(0, At("2026-02-28T10:00+01:00"), At("2026-03-01T11:00+01:00"));

        Assert.Equal(At("2026-03-01T11:00+01:00"), CriticalPath.Compute(times, Shop, Monday).End);
    }

    [Fact]
    public void Task_in_hand_counts_what_is_left_from_now()
    {
        var (times, _) = Plan([5, 1], new Link(1, 0));
        times.SetInHand(0, At("2026-02-27T15:00+01:00"), 3 * Hour);

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Equal((At("2026-02-27T15:00+01:00"), At("2026-03-02T11:00+01:00")), (dates[0].EarlyStart, dates[0].EarlyFinish));
        Assert.Equal(0, dates[0].TotalFloat);
        Assert.Equal(At("2026-03-02T11:00+01:00"), dates[1].EarlyStart);
    }

    [Fact]
    public void Task_begun_out_of_turn_frees_what_it_should_have_waited_on()
    {
        var (times, _) = Plan([2, 6], new Link(1, 0));
        times.SetInHand(1, Monday - Hour, 6 * Hour);

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Equal(At("2026-03-02T14:00+01:00"), dates[1].EarlyFinish);
        Assert.Equal(4 * Hour, dates[0].TotalFloat);
    }

    [Fact]
    public void Part_expected_later_holds_the_start_and_begins_the_chain()
    {
        var (times, _) = Plan([8, 2, 1], new Link(2, 0), new Link(2, 1));
        times.SetNotBefore(1, At("2026-03-04T10:00+01:00"));

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Equal(At("2026-03-04T10:00+01:00"), dates[1].EarlyStart);
        Assert.Equal([1, 2], dates.Chain().Select(step => step.Task));
        Assert.Equal(12 * Hour, dates[0].TotalFloat);
    }

    [Fact]
    public void Date_given_too_early_makes_float_negative()
    {
        var (times, _) = Plan([8, 8], new Link(1, 0));
        times.DateGiven = At("2026-03-03T12:00+01:00");

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Equal((-4 * Hour, -4 * Hour), (dates[0].TotalFloat, dates[1].TotalFloat));
        Assert.True(dates[1].MissesDateGiven);
        Assert.True(dates[0].SetsTheDate);
    }

    [Fact]
    public void Date_given_with_room_leaves_float_as_it_was()
    {
        var (times, _) = Plan([8, 4, 1], new Link(2, 0), new Link(2, 1));
        times.DateGiven = At("2026-04-03T12:00+02:00");

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Equal((0L, 4 * Hour), (dates[0].TotalFloat, dates[1].TotalFloat));
        Assert.False(dates[2].MissesDateGiven);
    }

    [Fact]
    public void Date_given_for_one_task_binds_what_it_waits_on()
    {
        var (times, _) = Plan([4, 4, 20], new Link(1, 0));
        times.SetDateGiven(1, At("2026-03-02T15:00+01:00"));

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Equal((-1 * Hour, -1 * Hour, 0L), (dates[0].TotalFloat, dates[1].TotalFloat, dates[2].TotalFloat));
    }

    [Fact]
    public void Date_given_at_night_is_missed_by_a_milestone_next_morning()
    {
        var (times, _) = Plan([8, 0], new Link(1, 0, Lag: 10 * Hour, Clock: LagClock.Elapsed));
        times.SetDateGiven(1, At("2026-03-02T20:00+01:00"));

        var dates = CriticalPath.Compute(times, Shop, Monday);

        Assert.Equal(At("2026-03-03T08:00+01:00"), dates[1].EarlyFinish);
        Assert.Equal(0, dates[1].TotalFloat);
        Assert.True(dates[1].MissesDateGiven);
    }

    [Fact]
    public void Work_beyond_all_dates_is_refused()
    {
        var (times, _) = Plan([1, 1]);
        times.SetWork(0, Network.LongestTime);

        Assert.Throws<OverflowException>(() => CriticalPath.Compute(times, Shop, Monday));
        Assert.Throws<ArgumentOutOfRangeException>(() => times.SetWork(1, Network.LongestTime + 1));
    }

    [Fact]
    public void Network_without_tasks_ends_now() =>
        Assert.Equal(Monday, CriticalPath.Compute(new TaskTimes(Network.Build(0, [])), Shop, Monday).End);

    [Fact]
    public void Dates_written_over_are_those_of_a_fresh_computation()
    {
        var (times, dates) = Plan([2, 2], new Link(1, 0));
        times.SetNotKnown(0, 1);
        CriticalPath.Compute(times, Shop, Monday, dates);
        var again = new TaskTimes(times.Network);
        again.SetWork(1, 5 * Hour);

        CriticalPath.Compute(again, Shop, Monday, dates);

        Assert.Equal(At("2026-03-02T13:00+01:00"), dates.End);
        Assert.Null(dates[0].RestsOn);
    }
}
