namespace JobBoard.Domain.Tests.Histories;

/// <summary>
/// A small random generator that gives the same numbers on every machine (SplitMix64; Steele, Lea, Flood: Fast
/// splittable pseudorandom number generators, 2014), so that a history can be had again from its seed alone.
/// </summary>
public sealed class Dice(ulong seed)
{
    private ulong _state = seed;

    /// <summary>The dice of one history of a run.</summary>
    public static Dice For(int seed, int history) =>
        new(((ulong)(uint)seed << 32) ^ ((ulong)(uint)history * 0x9E3779B97F4A7C15UL));

    public ulong Next()
    {
        _state += 0x9E3779B97F4A7C15UL;
        var z = _state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    /// <summary>From 0 to <paramref name="below"/> - 1.</summary>
    public int Below(int below) => (int)(Next() % (ulong)below);

    /// <summary>Both ends included.</summary>
    public int Between(int least, int greatest) => least + Below(greatest - least + 1);

    /// <summary>True in so many cases of a hundred.</summary>
    public bool Chance(int percent) => Below(100) < percent;

    public T Pick<T>(IReadOnlyList<T> from) => from[Below(from.Count)];

    public T? PickOrNone<T>(IReadOnlyList<T> from)
        where T : class => from.Count == 0 ? null : Pick(from);

    public List<T> Shuffled<T>(IEnumerable<T> of)
    {
        var list = of.ToList();
        for (var i = list.Count - 1; i > 0; i--)
        {
            var j = Below(i + 1);
            (list[i], list[j]) = (list[j], list[i]);
        }
        return list;
    }

    public Guid Guid()
    {
        Span<byte> bytes = stackalloc byte[16];
        BitConverter.TryWriteBytes(bytes, Next());
        BitConverter.TryWriteBytes(bytes[8..], Next());
        return new Guid(bytes);
    }
}
