using System.Globalization;

namespace JobBoard.Scheduling;

/// <summary>Turns durations and lags of the files into whole numbers to reckon with, and results back into words and units.</summary>
internal abstract class TimeScale(TimeUnit unit)
{
    /// <summary>The unit in which amounts are printed.</summary>
    public TimeUnit Unit { get; } = unit;

    /// <summary>The unit's word as in the files.</summary>
    public string UnitWord { get; } = unit.ToString().ToLowerInvariant();

    /// <summary>The calendar to reckon with.</summary>
    public abstract WorkCalendar Calendar { get; }

    /// <summary>The instant from which everything counts.</summary>
    public abstract long Start { get; }

    /// <summary>A sentence that says what the printed times mean.</summary>
    public abstract string Note { get; }

    /// <summary>A sixth of the amount, as working time.</summary>
    public abstract decimal Work(decimal sixTimes, TimeUnit from);

    /// <summary>The lag on its clock.</summary>
    public abstract decimal Lag(decimal lag, TimeUnit from, LagClock clock);

    /// <summary>Working time in <see cref="Unit"/>.</summary>
    public abstract decimal Amount(long work);

    /// <summary>An instant as printed in a table.</summary>
    public abstract string Instant(long instant);

    /// <summary>The instant that a person typed; nothing if it is not one.</summary>
    public abstract long? Parse(string text);

    /// <summary>Shop time in one unit relative to another, for variances.</summary>
    public abstract decimal Factor(TimeUnit from);

    public static string Plain(decimal number) => Math.Round(number, 4).ToString("0.####", CultureInfo.InvariantCulture);
}

/// <summary>Bare units counted from 0, without a calendar. Exact: one step is a sixth of the last decimal of the smallest unit used.</summary>
internal sealed class UnitScale : TimeScale
{
    private readonly decimal steps;
    private readonly decimal smallest;

    public UnitScale(PlainNetwork network, TimeUnit unit) : base(unit)
    {
        var units = network.Tasks.Select(t => t.Unit).Concat(network.Links.Where(l => l.Lag != 0).Select(l => l.Unit));
        smallest = (decimal)units.Append(unit).Min();
        var amounts = network.Tasks.Select(t => t.SixTimes).Concat(network.Links.Select(l => l.Lag));
        steps = 6;
        for (var decimals = amounts.Max(a => a.Scale); decimals > 0; decimals--)
            steps *= 10;
    }

    public override WorkCalendar Calendar => WorkCalendar.NeverCloses;

    public override long Start => 0;

    public override string Note => $"Times in {UnitWord} from 0, without a calendar: a day is 24 hours, a week 7 days.";

    public override decimal Work(decimal sixTimes, TimeUnit from) => sixTimes * (steps / 6) * (decimal)from / smallest;

    public override decimal Lag(decimal lag, TimeUnit from, LagClock clock) => lag * steps * (decimal)from / smallest;

    public override decimal Amount(long work) => work / steps * smallest / (decimal)Unit;

    public override string Instant(long instant) => Plain(Amount(instant));

    public override long? Parse(string text) =>
        decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
        && Math.Abs(number) < 1_000_000 ? (long)Math.Floor(number * steps * (decimal)Unit / smallest) : null;

    public override decimal Factor(TimeUnit from) => (decimal)from / (decimal)Unit;
}

/// <summary>A shop's hours, to the second; a day and a week of work are as long as the calendar says.</summary>
internal sealed class ShopScale(CalendarFile hours, TimeUnit unit, long start) : TimeScale(unit)
{
    private static readonly string[] Formats = ["yyyy-MM-dd", "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd HH:mm"];

    public override WorkCalendar Calendar { get; } = hours.Calendar!;

    public override long Start { get; } = start;

    public override string Note =>
        $"Times of day in {Calendar.Zone.Id}; floats in {UnitWord} of work ({Plain(hours.Day / 3600m)} hours a day, {Plain(hours.Week / 3600m)} a week).";

    /// <summary>A local time such as 2026-03-02T08:00.</summary>
    public static long? ParseLocal(string text, TimeZoneInfo zone)
    {
        if (!DateTime.TryParseExact(text, Formats, CultureInfo.InvariantCulture, DateTimeStyles.None, out var local))
            return null;
        return new LocalClock(zone).Opening(DateOnly.FromDateTime(local), local.TimeOfDay);
    }

    public override decimal Work(decimal sixTimes, TimeUnit from) => Math.Round(sixTimes / 6 * Seconds(from, LagClock.Working));

    public override decimal Lag(decimal lag, TimeUnit from, LagClock clock) => Math.Round(lag * Seconds(from, clock));

    public override decimal Amount(long work) => work / Seconds(Unit, LagClock.Working);

    public override string Instant(long instant)
    {
        var local = Calendar.Local(instant);
        return local.ToString(local.Second == 0 ? "yyyy-MM-dd HH:mm" : "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);
    }

    public override long? Parse(string text) => ParseLocal(text, Calendar.Zone);

    public override decimal Factor(TimeUnit from) => Seconds(from, LagClock.Working) / Seconds(Unit, LagClock.Working);

    private decimal Seconds(TimeUnit from, LagClock clock) => (from, clock) switch
    {
        (TimeUnit.Days, LagClock.Working) => hours.Day,
        (TimeUnit.Weeks, LagClock.Working) => hours.Week,
        _ => (decimal)from * 60,
    };
}
