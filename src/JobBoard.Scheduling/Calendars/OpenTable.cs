namespace JobBoard.Scheduling;

/// <summary>
/// The stretches of opening between two dates, as instants and as working seconds, with a table that finds the stretch of
/// either in about one step. Never changed once made.
/// </summary>
/// <remarks>
/// A <em>mark</em> is a point of working time: twice the working seconds since the calendar's origin, plus one when it lies
/// after the closed hours at that point (the opening) and not before them (the closing). Inside a stretch both marks name the
/// same instant. Marks are in the order of their instants, so that taking the later of two is taking the greater number.
/// </remarks>
internal sealed class OpenTable
{
    private const int InstantBits = 11;
    private const int WorkBits = 10;

    private readonly long[] open;
    private readonly long[] close;
    private readonly long[] shift;
    private readonly long[] work;
    private readonly int[] byInstant;
    private readonly int[] byWork;

    /// <param name="spans">Stretches in order, apart from one another, none empty.</param>
    /// <param name="origin">The instant at which working time is 0.</param>
    /// <param name="from">First date covered.</param>
    /// <param name="to">Last date covered.</param>
    public OpenTable(List<(long Open, long Close)> spans, long origin, DateOnly from, DateOnly to)
    {
        (From, To) = (from, to);
        open = [.. spans.Select(s => s.Open)];
        close = [.. spans.Select(s => s.Close)];
        work = WorkAt(spans, origin);
        shift = [.. open.Zip(work, (o, w) => o - w)];
        byInstant = Rank(open, open.Length == 0 ? 0 : close[^1], InstantBits);
        byWork = Rank(work.AsSpan(0, open.Length), work[^1], WorkBits);
    }

    public DateOnly From { get; }

    public DateOnly To { get; }

    /// <summary>Whether the instant lies well inside, so that its answer cannot change as the table grows.</summary>
    public bool Covers(long instant) => BeginsBefore(instant) && EndsAfter(instant);

    public bool BeginsBefore(long instant) => open.Length > 0 && open[0] < instant;

    public bool EndsAfter(long instant) => open.Length > 0 && instant < close[^1];

    /// <summary>As <see cref="Covers"/>, for a mark.</summary>
    public bool CoversMark(long mark) => BeginsBeforeMark(mark) && EndsAfterMark(mark);

    public bool BeginsBeforeMark(long mark) => open.Length > 0 && work[0] < (mark - 1) >> 1;

    public bool EndsAfterMark(long mark) => open.Length > 0 && mark >> 1 < work[^1];

    /// <summary>The instant a mark stands for.</summary>
    public long InstantOf(long mark) => shift[OfWork((mark - 1) >> 1)] + (mark >> 1);

    /// <summary>The first mark that is not before the instant.</summary>
    public long FirstMark(long instant)
    {
        var i = OfInstant(instant - 1);
        var end = close[i];
        return instant <= end ? (instant - shift[i]) << 1 : ((end - shift[i]) << 1) + 1;
    }

    /// <summary>The last mark that is not after the instant.</summary>
    public long LastMark(long instant)
    {
        var i = OfInstant(instant);
        var end = close[i];
        return instant < end ? ((instant - shift[i]) << 1) + 1 : (end - shift[i]) << 1;
    }

    /// <summary>The last stretch that opens at or before the instant.</summary>
    private int OfInstant(long instant)
    {
        var i = byInstant[(int)((instant - open[0]) >> InstantBits)];
        while (i + 1 < open.Length && open[i + 1] <= instant)
            i++;
        return i;
    }

    /// <summary>The stretch in which the working second lies.</summary>
    private int OfWork(long second)
    {
        var i = byWork[(int)((second - work[0]) >> WorkBits)];
        while (work[i + 1] <= second)
            i++;
        return i;
    }

    private static long[] WorkAt(List<(long Open, long Close)> spans, long origin)
    {
        var before = 0L;
        foreach (var (start, end) in spans)
            before += Math.Clamp(origin - start, 0, end - start);
        var at = new long[spans.Count + 1];
        at[0] = -before;
        for (var i = 0; i < spans.Count; i++)
            at[i + 1] = at[i] + spans[i].Close - spans[i].Open;
        return at;
    }

    private static int[] Rank(ReadOnlySpan<long> starts, long end, int bits)
    {
        if (starts.Length == 0)
            return [];
        var rank = new int[((end - starts[0]) >> bits) + 1];
        var at = 0;
        for (var bucket = 0; bucket < rank.Length; bucket++)
        {
            while (at + 1 < starts.Length && starts[at + 1] <= starts[0] + ((long)bucket << bits))
                at++;
            rank[bucket] = at;
        }

        return rank;
    }
}
