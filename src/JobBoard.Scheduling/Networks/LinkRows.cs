namespace JobBoard.Scheduling;

/// <summary>
/// Links in compressed rows: those of place p are at <c>First[p]</c> up to and without <c>First[p + 1]</c>. One number per link,
/// so that a pass reads one stream: the lag above, then the place at the other end, then which ends are linked. Elapsed lags come last
/// in a row.
/// </summary>
internal sealed class LinkRows
{
    /// <summary>The lag counts clock hours.</summary>
    public const int Elapsed = 1;

    /// <summary>The link is at the finish of the task whose row this is.</summary>
    public const int AtFinish = 2;

    /// <summary>The link is at the finish of the task at the other end.</summary>
    public const int OtherFinish = 4;

    private const int PlaceBits = 3;
    private const int LagBits = 27;

    public LinkRows(Network network, ReadOnlySpan<Link> links, bool after)
    {
        First = new int[network.TaskCount + 1];
        Row = new long[links.Length];
        Link = new int[links.Length];
        foreach (var link in links)
            First[network.PlaceOf[after ? link.Task : link.After] + 1]++;
        for (var place = 0; place < network.TaskCount; place++)
            First[place + 1] += First[place];
        var next = First.AsSpan(0, network.TaskCount).ToArray();
        Fill(network, links, after, next, elapsed: false);
        Fill(network, links, after, next, elapsed: true);
    }

    public int[] First { get; }

    public long[] Row { get; }

    /// <summary>The link's number in the list that the network was made from.</summary>
    public int[] Link { get; }

    /// <summary>The place at the other end.</summary>
    public static int Place(long row) => (unchecked((int)row) & ((1 << LagBits) - 1)) >> PlaceBits;

    /// <summary>Elapsed: seconds. Working: 0 if none, else twice the seconds less one, to be added to an opening mark.</summary>
    public static long Lag(long row) => row >> LagBits;

    /// <summary>Index of the linked end of the task at the other end, among pairs of start and finish.</summary>
    public static int Other(long row) => (unchecked((int)row) & ((1 << LagBits) - 1)) >> (PlaceBits - 1);

    private void Fill(Network network, ReadOnlySpan<Link> links, bool after, int[] next, bool elapsed)
    {
        for (var i = 0; i < links.Length; i++)
        {
            var link = links[i];
            if (IsElapsed(link) != elapsed)
                continue;
            var at = next[network.PlaceOf[after ? link.Task : link.After]]++;
            Row[at] = Packed(link, after, network.PlaceOf[after ? link.After : link.Task]);
            Link[at] = i;
        }
    }

    private static bool IsElapsed(Link link) => link.Clock == LagClock.Elapsed && link.Lag != 0;

    private static long Packed(Link link, bool after, int other)
    {
        var isElapsed = IsElapsed(link);
        var lag = isElapsed ? link.Lag : link.Lag == 0 ? 0 : 2 * link.Lag - 1;
        var fromFinish = link.Kind is LinkKind.FinishStart or LinkKind.FinishFinish;
        var toFinish = link.Kind is LinkKind.FinishFinish or LinkKind.StartFinish;
        var bits = (isElapsed ? Elapsed : 0)
            | ((after ? toFinish : fromFinish) ? AtFinish : 0)
            | ((after ? fromFinish : toFinish) ? OtherFinish : 0);
        return lag << LagBits | (long)other << PlaceBits | (long)bits;
    }
}
