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
    /// <summary>Entries of a rank table per stretch, so that the stretch is mostly found without going on to the next.</summary>
    private const int EntriesPerStretch = 32;

    private readonly Stretch[] stretches;
    private readonly int[] byInstant;
    private readonly int[] byWork;
    private readonly int instantBits;
    private readonly int workBits;
    private readonly long firstInstant;
    private readonly long lastInstant;
    private readonly long firstWork;
    private readonly long lastWork;

    /// <param name="spans">Stretches in order, apart from one another, none empty.</param>
    /// <param name="origin">The instant at which working time is 0.</param>
    /// <param name="from">First date covered.</param>
    /// <param name="to">Last date covered.</param>
    public OpenTable(List<(long Open, long Close)> spans, long origin, DateOnly from, DateOnly to)
    {
        (From, To) = (from, to);
        stretches = Stretches(spans, origin);
        (byInstant, instantBits) = Rank([.. spans.Select(s => s.Open)], spans is [] ? 0 : spans[^1].Close);
        (byWork, workBits) = Rank([.. stretches.SkipLast(1).Select(s => s.Work)], stretches[^1].Work);
        if (spans is [])
            return;
        (firstInstant, lastInstant) = (spans[0].Open, spans[^1].Close);
        (firstWork, lastWork) = (stretches[0].Work, stretches[^1].Work);
    }

    public DateOnly From { get; }

    public DateOnly To { get; }

    /// <summary>Whether the instant lies well inside, so that its answer cannot change as the table grows.</summary>
    public bool Covers(long instant) => BeginsBefore(instant) && EndsAfter(instant);

    public bool BeginsBefore(long instant) => firstInstant < instant;

    public bool EndsAfter(long instant) => instant < lastInstant;

    /// <summary>As <see cref="Covers"/>, for a mark.</summary>
    public bool CoversMark(long mark) => BeginsBeforeMark(mark) && EndsAfterMark(mark);

    public bool BeginsBeforeMark(long mark) => firstWork < (mark - 1) >> 1;

    public bool EndsAfterMark(long mark) => mark >> 1 < lastWork;

    /// <summary>The instant a mark stands for.</summary>
    public long InstantOf(long mark)
    {
        unchecked
        {
            var second = (mark - 1) >> 1;
            var i = byWork[(int)((second - firstWork) >> workBits)];
            while (stretches[i + 1].Work <= second)
                i++;
            return stretches[i].Shift + (mark >> 1);
        }
    }

    /// <summary>The first mark that is not before the instant.</summary>
    public long FirstMark(long instant)
    {
        unchecked
        {
            ref readonly var last = ref LastOpening(instant - 1);
            var left = last.Close - instant;
            return ((instant + (left & (left >> 63)) - last.Shift) << 1) - (left >> 63);
        }
    }

    /// <summary>The last mark that is not after the instant.</summary>
    public long LastMark(long instant)
    {
        unchecked
        {
            ref readonly var last = ref LastOpening(instant);
            var past = instant - last.Close;
            return ((last.Close + (past & (past >> 63)) - last.Shift) << 1) - (past >> 63);
        }
    }

    /// <summary>The last stretch that opens at or before the instant.</summary>
    private ref readonly Stretch LastOpening(long instant)
    {
        var i = byInstant[unchecked((int)((instant - firstInstant) >> instantBits))];
        while (stretches[i + 1].Open <= instant)
            i++;
        return ref stretches[i];
    }

    /// <summary>The stretches, and one after them that never comes.</summary>
    private static Stretch[] Stretches(List<(long Open, long Close)> spans, long origin)
    {
        var work = 0L;
        foreach (var (open, close) in spans)
            work -= Math.Clamp(origin - open, 0, close - open);
        var made = new Stretch[spans.Count + 1];
        for (var i = 0; i < spans.Count; i++)
        {
            made[i] = new Stretch(spans[i].Open, spans[i].Close, spans[i].Open - work, work);
            work += spans[i].Close - spans[i].Open;
        }

        made[^1] = new Stretch(long.MaxValue, long.MaxValue, 0, work);
        return made;
    }

    /// <summary>Per bucket of 2 to the power of Bits seconds the last that starts by its beginning.</summary>
    private static (int[] Rank, int Bits) Rank(ReadOnlySpan<long> starts, long end)
    {
        if (starts.Length == 0)
            return ([], 0);
        var bits = 0;
        while (end - starts[0] >> bits > (long)starts.Length * EntriesPerStretch)
            bits++;
        var rank = new int[(end - starts[0] >> bits) + 1];
        var at = 0;
        for (var bucket = 0; bucket < rank.Length; bucket++)
        {
            while (at + 1 < starts.Length && starts[at + 1] <= starts[0] + ((long)bucket << bits))
                at++;
            rank[bucket] = at;
        }

        return (rank, bits);
    }

    /// <summary>One opening: its instants, working seconds before it, and what to add to working seconds for the instant.</summary>
    private readonly record struct Stretch(long Open, long Close, long Shift, long Work);
}
