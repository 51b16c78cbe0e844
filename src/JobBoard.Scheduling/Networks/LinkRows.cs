namespace JobBoard.Scheduling;

/// <summary>Links in compressed rows: those of place p are at <c>First[p]</c> up to and without <c>First[p + 1]</c>.</summary>
internal sealed class LinkRows
{
    public LinkRows(Network network, ReadOnlySpan<Link> links, bool after)
    {
        First = new int[network.TaskCount + 1];
        Entry = new int[links.Length];
        Lag = new long[links.Length];
        Link = new int[links.Length];
        foreach (var link in links)
            First[network.PlaceOf[after ? link.Task : link.After] + 1]++;
        for (var place = 0; place < network.TaskCount; place++)
            First[place + 1] += First[place];
        var next = First.AsSpan(0, network.TaskCount).ToArray();
        for (var i = 0; i < links.Length; i++)
        {
            var link = links[i];
            var at = next[network.PlaceOf[after ? link.Task : link.After]]++;
            Entry[at] = network.PlaceOf[after ? link.After : link.Task] << Network.PlaceBits | Bits(link);
            Lag[at] = LagCode(link);
            Link[at] = i;
        }
    }

    public int[] First { get; }

    /// <summary>The task at the other end and which ends are linked.</summary>
    public int[] Entry { get; }

    /// <summary>Elapsed: seconds. Working: 0 if none, else twice the seconds less one, to be added to an opening mark.</summary>
    public long[] Lag { get; }

    /// <summary>The link's number in the list that the network was made from.</summary>
    public int[] Link { get; }

    private static int Bits(Link link)
    {
        var bits = IsElapsed(link) ? Network.Elapsed : 0;
        if (link.Kind is LinkKind.FinishStart or LinkKind.FinishFinish)
            bits |= Network.FromFinish;
        if (link.Kind is LinkKind.FinishFinish or LinkKind.StartFinish)
            bits |= Network.ToFinish;
        return bits;
    }

    private static bool IsElapsed(Link link) => link.Clock == LagClock.Elapsed && link.Lag != 0;

    private static long LagCode(Link link) => IsElapsed(link) ? link.Lag : link.Lag == 0 ? 0 : 2 * link.Lag - 1;
}
