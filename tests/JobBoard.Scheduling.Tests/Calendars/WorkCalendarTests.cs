using CsCheck;

namespace JobBoard.Scheduling.Tests;

public class WorkCalendarTests
{
    private static readonly DayOfWeek[] Weekdays =
        [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday];

    private static readonly DateOnly Saturday = new(2026, 3, 7);
    private static readonly WorkCalendar Shop = Weekly("Europe/Berlin", "08:00-12:00 13:00-17:00");

    [Fact]
    public void Work_pauses_over_midday_and_night()
    {
        Assert.Equal(At("2026-03-02T13:30+01:00"), Shop.AddWorking(At("2026-03-02T11:00+01:00"), TimeSpan.FromHours(1.5)));
        Assert.Equal(At("2026-03-03T09:00+01:00"), Shop.AddWorking(At("2026-03-02T16:00+01:00"), TimeSpan.FromHours(2)));
    }

    [Fact]
    public void Work_that_fills_the_day_ends_at_closing()
    {
        Assert.Equal(At("2026-03-06T17:00+01:00"), Shop.AddWorking(At("2026-03-06T08:00+01:00"), TimeSpan.FromHours(8)));
        Assert.Equal(At("2026-03-09T08:00+01:00"), Shop.NextOpen(At("2026-03-06T17:00+01:00")));
    }

    [Fact]
    public void Backward_work_begins_at_the_latest_opening()
    {
        Assert.Equal(At("2026-03-06T16:00+01:00"), Shop.AddWorking(At("2026-03-09T09:00+01:00"), TimeSpan.FromHours(-2)));
        Assert.Equal(At("2026-03-06T08:00+01:00"), Shop.AddWorking(At("2026-03-06T17:00+01:00"), TimeSpan.FromHours(-8)));
    }

    [Fact]
    public void Nothing_to_add_leaves_the_instant_in_closed_hours() =>
        Assert.Equal(At("2026-03-07T03:00+01:00"), Shop.AddWorking(At("2026-03-07T03:00+01:00"), TimeSpan.Zero));

    [Fact]
    public void Open_from_the_opening_until_the_closing()
    {
        Assert.True(Shop.IsOpen(At("2026-03-02T08:00+01:00")));
        Assert.True(Shop.IsOpen(At("2026-03-02T11:59+01:00")));
        Assert.False(Shop.IsOpen(At("2026-03-02T12:00+01:00")));
        Assert.False(Shop.IsOpen(At("2026-03-07T09:00+01:00")));
        Assert.Equal(At("2026-03-06T17:00+01:00"), Shop.PreviousClose(At("2026-03-09T08:00+01:00").AddSeconds(-1)));
    }

    [Fact]
    public void Closed_and_extra_dates_take_the_place_of_the_week()
    {
        var shop = Weekly("Europe/Berlin", "08:00-12:00", closed: [new DateOnly(2026, 3, 6)], extra: [new DateOpening(Saturday, Span("09:00-10:00"))]);

        Assert.Equal(TimeSpan.FromHours(1), shop.WorkingBetween(At("2026-03-05T12:00+01:00"), At("2026-03-09T08:00+01:00")));
        Assert.Equal(At("2026-03-09T09:00+01:00"), shop.AddWorking(At("2026-03-06T08:00+01:00"), TimeSpan.FromHours(2)));
    }

    [Fact]
    public void Extra_date_has_only_its_own_hours()
    {
        var shop = Weekly("Europe/Berlin", "08:00-12:00", extra: [new DateOpening(new DateOnly(2026, 3, 5), Span("14:00-15:00"))]);

        Assert.Equal(At("2026-03-05T14:00+01:00"), shop.NextOpen(At("2026-03-05T08:00+01:00")));
        Assert.Equal(At("2026-03-06T08:00+01:00"), shop.NextOpen(At("2026-03-05T15:00+01:00")));
    }

    [Fact]
    public void Night_shift_belongs_to_the_date_it_began_on()
    {
        var shop = Weekly("Europe/Berlin", "22:00-30:00", closed: [new DateOnly(2026, 3, 3)]);

        Assert.True(shop.IsOpen(At("2026-03-03T05:00+01:00")));
        Assert.False(shop.IsOpen(At("2026-03-04T05:00+01:00")));
        Assert.Equal(TimeSpan.FromHours(8), shop.WorkingBetween(At("2026-03-02T12:00+01:00"), At("2026-03-03T12:00+01:00")));
    }

    /// <summary>House rule: an opening inside a skipped hour moves forward. 29 March 2026, 2:00 becomes 3:00 (tz database, EU rule).</summary>
    [Fact]
    public void Opening_in_the_hour_skipped_in_Berlin_moves_forward()
    {
        var shop = Daily("Europe/Berlin", "02:30-06:00");

        Assert.Equal(At("2026-03-29T03:00+02:00"), shop.NextOpen(At("2026-03-28T12:00+01:00")));
        Assert.Equal(TimeSpan.FromHours(3), shop.WorkingBetween(At("2026-03-28T12:00+01:00"), At("2026-03-29T12:00+02:00")));
    }

    [Fact]
    public void Closing_in_the_hour_skipped_in_Berlin_moves_forward()
    {
        var shop = Daily("Europe/Berlin", "01:00-02:30");

        Assert.Equal(At("2026-03-29T03:00+02:00"), shop.PreviousClose(At("2026-03-29T12:00+02:00")));
        Assert.Equal(TimeSpan.FromHours(1), shop.WorkingBetween(At("2026-03-28T12:00+01:00"), At("2026-03-29T12:00+02:00")));
    }

    [Fact]
    public void Opening_wholly_inside_the_skipped_hour_does_not_take_place()
    {
        var shop = Daily("Europe/Berlin", "02:15-02:45");

        Assert.Equal(At("2026-03-30T02:15+02:00"), shop.NextOpen(At("2026-03-28T12:00+01:00")));
    }

    /// <summary>House rule: an opening takes the earlier instant of an ambiguous hour. 25 October 2026, 3:00 becomes 2:00.</summary>
    [Fact]
    public void Opening_in_the_hour_repeated_in_Berlin_is_the_earlier()
    {
        var shop = Daily("Europe/Berlin", "02:30-06:00");

        Assert.Equal(At("2026-10-25T02:30+02:00"), shop.NextOpen(At("2026-10-24T12:00+02:00")));
        Assert.Equal(TimeSpan.FromHours(4.5), shop.WorkingBetween(At("2026-10-24T12:00+02:00"), At("2026-10-25T12:00+01:00")));
    }

    [Fact]
    public void Closing_in_the_hour_repeated_in_Berlin_is_the_later()
    {
        var shop = Daily("Europe/Berlin", "01:00-02:30");

        Assert.Equal(At("2026-10-25T02:30+01:00"), shop.PreviousClose(At("2026-10-25T12:00+01:00")));
        Assert.Equal(TimeSpan.FromHours(2.5), shop.WorkingBetween(At("2026-10-24T12:00+02:00"), At("2026-10-25T12:00+01:00")));
    }

    /// <summary>8 March 2026, 2:00 becomes 3:00; 1 November 2026, 2:00 becomes 1:00 (tz database, US rule).</summary>
    [Fact]
    public void Skipped_and_repeated_hour_in_New_York()
    {
        var early = Daily("America/New_York", "02:30-06:00");
        var night = Daily("America/New_York", "01:30-06:00");
        var late = Daily("America/New_York", "00:30-01:30");

        Assert.Equal(At("2026-03-08T03:00-04:00"), early.NextOpen(At("2026-03-07T12:00-05:00")));
        Assert.Equal(At("2026-11-01T01:30-04:00"), night.NextOpen(At("2026-10-31T12:00-04:00")));
        Assert.Equal(At("2026-11-01T01:30-05:00"), late.PreviousClose(At("2026-11-01T12:00-05:00")));
    }

    [Fact]
    public void Night_shift_over_a_change_of_clocks_is_as_long_as_it_lasts()
    {
        var shop = Daily("Europe/Berlin", "22:00-30:00");

        Assert.Equal(TimeSpan.FromHours(7), shop.WorkingBetween(At("2026-03-28T12:00+01:00"), At("2026-03-29T12:00+02:00")));
        Assert.Equal(TimeSpan.FromHours(9), shop.WorkingBetween(At("2026-10-24T12:00+02:00"), At("2026-10-25T12:00+01:00")));
    }

    [Fact]
    public void Shop_that_never_closes_counts_the_clock()
    {
        var always = Daily("Europe/Berlin", "00:00-24:00");
        var from = At("2026-03-02T08:00+01:00").ToUnixTimeSeconds();

        Assert.Equal(from + 90 * 86400, always.AddWorking(from, 90 * 86400));
        Assert.Equal(from + 90 * 86400, WorkCalendar.NeverCloses.AddWorking(from, 90 * 86400));
    }

    [Fact]
    public void Dates_far_ahead_and_far_back_are_reached()
    {
        var years = Shop.WorkingBetween(At("1990-01-01T00:00+01:00"), At("2090-01-01T00:00+01:00"));
        var days = Enumerable.Range(0, (new DateOnly(2090, 1, 1).DayNumber - new DateOnly(1990, 1, 1).DayNumber))
            .Count(day => Weekdays.Contains(new DateOnly(1990, 1, 1).AddDays(day).DayOfWeek));

        Assert.Equal(TimeSpan.FromHours(8 * days), years);
    }

    [Fact]
    public void Calendar_that_is_closed_for_years_finds_the_next_opening()
    {
        var first = new DateOnly(2026, 1, 1);
        var shop = Weekly("Europe/Berlin", "08:00-12:00", closed: [.. Enumerable.Range(0, 1200).Select(first.AddDays)]);

        Assert.Equal(At("2029-04-16T08:00+02:00"), shop.NextOpen(At("2026-06-01T12:00+02:00")));
        Assert.Equal(At("2025-12-31T12:00+01:00"), shop.PreviousClose(At("2026-06-01T12:00+02:00")));
    }

    [Fact]
    public void Calendar_without_openings_is_refused() =>
        Assert.Throws<ArgumentException>(() => new WorkCalendar(TimeZoneInfo.Utc, []));

    [Fact]
    public void Opening_that_ends_before_it_begins_is_refused() =>
        Assert.Throws<ArgumentException>(() => Daily("Europe/Berlin", "12:00-08:00"));

    [Fact]
    public void Date_both_closed_and_extra_is_refused() => Assert.Throws<ArgumentException>(() =>
        Weekly("Europe/Berlin", "08:00-12:00", closed: [Saturday], extra: [new DateOpening(Saturday, Span("09:00-10:00"))]));

    /// <summary>Random weeks against a table that asks the wall clock of every half minute.</summary>
    [Theory]
    [InlineData("Europe/Berlin", "2026-03-16")]
    [InlineData("Europe/Berlin", "2026-10-12")]
    [InlineData("America/New_York", "2026-02-23")]
    [InlineData("Australia/Lord_Howe", "2026-09-21")]
    public void Answers_are_those_of_the_wall_clock(string zone, string monday)
    {
        var from = DateTimeOffset.Parse(monday + "T00:00Z", null);
        var opening = Gen.Select(Gen.Int[0, 6], Gen.Int[4 * 6, 22 * 6], Gen.Int[1, 8]);
        Gen.Select(opening.Array[1, 6], Gen.Int[20_000, 60_000], Gen.Int[-900, 900]).Sample(
            (week, tick, work) =>
            {
                var slow = new SlowShop(from, 40, Find(zone), local => week.Any(o => IsOpen(o, local)));
                var fast = new WorkCalendar(Find(zone), week.Select(o =>
                    new WeeklyOpening((DayOfWeek)o.Item1, new OpenSpan(TimeSpan.FromMinutes(10 * o.Item2), TimeSpan.FromMinutes(10 * (o.Item2 + o.Item3))))));
                var instant = slow.Instant(tick);

                Assert.Equal(slow.Instant(slow.NextOpen(tick)), fast.NextOpen(instant));
                Assert.Equal((long)slow.Worked(tick, tick + 20_000) * SlowShop.Step, fast.WorkingBetween(instant, slow.Instant(tick + 20_000)));
                if (work > 0 && slow.Worked(tick, slow.Length) >= work)
                    Assert.Equal(slow.Instant(slow.After(tick, work)), fast.AddWorking(instant, work * SlowShop.Step));
                if (work < 0 && slow.Worked(0, tick) >= -work)
                    Assert.Equal(slow.Instant(slow.NextOpen(slow.After(tick, work))), fast.AddWorking(instant, work * SlowShop.Step));
            },
            iter: 10);
    }

    private static bool IsOpen((int Day, int From, int Length) opening, DateTime local)
    {
        var minute = (local.DayOfWeek - (DayOfWeek)opening.Day + 7) % 7 * 1440 + local.Hour * 60 + local.Minute;
        return minute >= 10 * opening.From && minute < 10 * (opening.From + opening.Length);
    }

    private static TimeZoneInfo Find(string zone) => TimeZoneInfo.FindSystemTimeZoneById(zone);

    private static DateTimeOffset At(string text) => DateTimeOffset.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static OpenSpan Span(string text)
    {
        var times = text.Split('-').Select(t => TimeSpan.FromMinutes(60 * int.Parse(t[..2]) + int.Parse(t[3..]))).ToArray();
        return new OpenSpan(times[0], times[1]);
    }

    private static WorkCalendar Daily(string zone, string spans) =>
        new(Find(zone), Enum.GetValues<DayOfWeek>().Select(day => new WeeklyOpening(day, Span(spans))));

    private static WorkCalendar Weekly(string zone, string spans, DateOnly[]? closed = null, DateOpening[]? extra = null) =>
        new(Find(zone), Weekdays.SelectMany(day => spans.Split(' ').Select(span => new WeeklyOpening(day, Span(span)))), closed, extra);
}
