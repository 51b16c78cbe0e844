using System.Numerics;

namespace JobBoard.Domain.Plans;

/// <summary>Who comes after whom over any number of steps, as one row of bits per node. Nodes are 0 … count − 1.</summary>
internal sealed class Closure
{
    private readonly int words;
    private readonly ulong[] after;
    private readonly ulong[] before;
    private readonly int[] order;

    /// <summary>Reaches over all steps; circles are allowed and make every node of them come after every other.</summary>
    public Closure(int count, IEnumerable<(int Earlier, int Later)> steps)
    {
        words = (count + 63) / 64;
        after = new ulong[count * words];
        before = new ulong[count * words];
        var later = steps.Distinct().ToLookup(s => s.Earlier, s => s.Later);
        order = Sort(count, later);
        Reach(later);
    }

    /// <summary>Every node after all that it comes after; what is in or behind a circle is last, in the order of the numbers.</summary>
    public IReadOnlyList<int> InOrder => order;

    public bool IsAfter(int later, int earlier) => Has(after, earlier, later);

    public IEnumerable<int> After(int node) => Members(after, node);

    public IEnumerable<int> Before(int node) => Members(before, node);

    private static int[] Sort(int count, ILookup<int, int> later)
    {
        var waiting = new int[count];
        foreach (var node in later.SelectMany(g => g))
            waiting[node]++;
        var ready = new PriorityQueue<int, int>(Enumerable.Range(0, count).Where(n => waiting[n] == 0).Select(n => (n, n)));
        var sorted = new List<int>(count);
        while (ready.TryDequeue(out var node, out _))
        {
            sorted.Add(node);
            foreach (var next in later[node].Where(next => --waiting[next] == 0))
                ready.Enqueue(next, next);
        }

        sorted.AddRange(Enumerable.Range(0, count).Where(n => waiting[n] > 0));
        return [.. sorted];
    }

    /// <summary>From the last node to the first, once where there is no circle, else until nothing more is reached.</summary>
    private void Reach(ILookup<int, int> later)
    {
        bool grown;
        do
        {
            grown = false;
            for (var i = order.Length - 1; i >= 0; i--)
                foreach (var next in later[order[i]])
                    grown |= Join(order[i], next);
        }
        while (grown);

        for (var node = 0; node < order.Length; node++)
            foreach (var next in After(node))
                before[(next * words) + (node / 64)] |= 1UL << (node % 64);
    }

    private bool Join(int node, int next)
    {
        var row = after.AsSpan(node * words, words);
        var other = after.AsSpan(next * words, words);
        var grown = !Has(after, node, next);
        row[next / 64] |= 1UL << (next % 64);
        for (var w = 0; w < row.Length; w++)
        {
            grown |= (other[w] & ~row[w]) != 0;
            row[w] |= other[w];
        }

        return grown;
    }

    private bool Has(ulong[] bits, int row, int node) => (bits[(row * words) + (node / 64)] >> (node % 64) & 1) != 0;

    private IEnumerable<int> Members(ulong[] bits, int row)
    {
        for (var w = 0; w < words; w++)
            for (var rest = bits[(row * words) + w]; rest != 0; rest &= rest - 1)
                yield return (w * 64) + BitOperations.TrailingZeroCount(rest);
    }
}
