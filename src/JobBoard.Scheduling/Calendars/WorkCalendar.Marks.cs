namespace JobBoard.Scheduling;

/// <content>Points of working time (see <see cref="OpenTable"/>) and the growth of the table behind them.</content>
public sealed partial class WorkCalendar
{
    private static readonly DateOnly FirstDate = new(1900, 1, 1);
    private static readonly DateOnly LastDate = new(2500, 1, 1);

    /// <summary>The table as it stands, to be asked directly for what it covers; null before the first question and if nothing closes.</summary>
    internal OpenTable? Table => table;

    internal long InstantOf(long mark)
    {
        if (clock is null)
            return mark >> 1;
        var known = table;
        return (known is not null && known.CoversMark(mark) ? known : GrowToMark(mark)).InstantOf(mark);
    }

    internal long FirstMark(long instant)
    {
        if (clock is null)
            return instant << 1;
        var known = table;
        return (known is not null && known.Covers(instant) ? known : GrowTo(instant)).FirstMark(instant);
    }

    internal long LastMark(long instant)
    {
        if (clock is null)
            return (instant << 1) + 1;
        var known = table;
        return (known is not null && known.Covers(instant) ? known : GrowTo(instant)).LastMark(instant);
    }

    private OpenTable GrowTo(long instant)
    {
        lock (growing)
        {
            table ??= FirstTable(instant);
            while (!table.Covers(instant))
                table = Grown(table, backward: !table.BeginsBefore(instant), forward: !table.EndsAfter(instant));
            return table;
        }
    }

    private OpenTable GrowToMark(long mark)
    {
        lock (growing)
        {
            table ??= FirstTable(0);
            while (!table.CoversMark(mark))
                table = Grown(table, backward: !table.BeginsBeforeMark(mark), forward: !table.EndsAfterMark(mark));
            return table;
        }
    }

    private OpenTable FirstTable(long instant)
    {
        origin = instant;
        var date = clock!.DateOf(instant);
        return Build(date.AddDays(-FirstDaysBefore), date.AddDays(FirstDaysAfter));
    }

    private OpenTable Grown(OpenTable old, bool backward, bool forward)
    {
        var days = old.To.DayNumber - old.From.DayNumber;
        var from = backward ? Earlier(old.From, days) : old.From;
        var to = forward ? Later(old.To, days) : old.To;
        if (from == old.From && to == old.To)
            throw new OverflowException($"The dates run out of the years {FirstDate.Year} to {LastDate.Year}: shorten the work or the lags.");
        return Build(from, to);
    }

    private static DateOnly Earlier(DateOnly date, int days) =>
        date.DayNumber - days < FirstDate.DayNumber ? FirstDate : date.AddDays(-days);

    private static DateOnly Later(DateOnly date, int days) =>
        date.DayNumber + days > LastDate.DayNumber ? LastDate : date.AddDays(days);

    private OpenTable Build(DateOnly from, DateOnly to)
    {
        var spans = new List<(long Open, long Close)>();
        var steady = clock!.SteadyOffsets(from, to);
        for (var date = from; date <= to; date = date.AddDays(1))
        {
            var offset = steady[date.DayNumber - from.DayNumber];
            foreach (var span in SpansOf(date))
                spans.Add(offset is { } known ? At(date, span, known) : (clock.Opening(date, span.From), clock.Closing(date, span.To)));
        }

        return new OpenTable(Joined(spans), origin, from, to);
    }

    private static (long Open, long Close) At(DateOnly date, OpenSpan span, TimeSpan offset) =>
        (LocalClock.At(date, span.From, offset), LocalClock.At(date, span.To, offset));

    private OpenSpan[] SpansOf(DateOnly date)
    {
        if (extra.TryGetValue(date, out var own))
            return own;
        return closed.Contains(date) ? [] : week[(int)date.DayOfWeek];
    }

    private static List<(long Open, long Close)> Joined(List<(long Open, long Close)> spans)
    {
        spans.RemoveAll(s => s.Close <= s.Open);
        spans.Sort();
        var joined = new List<(long Open, long Close)>(spans.Count);
        foreach (var span in spans)
        {
            if (joined.Count > 0 && span.Open <= joined[^1].Close)
                joined[^1] = (joined[^1].Open, Math.Max(joined[^1].Close, span.Close));
            else
                joined.Add(span);
        }

        return joined;
    }
}
