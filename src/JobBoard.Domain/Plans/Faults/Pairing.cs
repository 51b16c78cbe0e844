namespace JobBoard.Domain.Plans.Faults;

/// <summary>Pairs of two lists in which nobody stands twice, by augmenting paths (Kuhn, 1955).</summary>
internal static class Pairing
{
    /// <summary>Whether each of the first list can have one of the second that fits, all different.</summary>
    public static bool Covers(int first, int second, Func<int, int, bool> fits)
    {
        var taken = new int[second];
        Array.Fill(taken, -1);
        return first <= second && Enumerable.Range(0, first).All(one => Place(one, taken, new bool[second], fits));
    }

    private static bool Place(int one, int[] taken, bool[] seen, Func<int, int, bool> fits)
    {
        for (var other = 0; other < taken.Length; other++)
        {
            if (seen[other] || !fits(one, other))
                continue;
            seen[other] = true;
            if (taken[other] >= 0 && !Place(taken[other], taken, seen, fits))
                continue;
            taken[other] = one;
            return true;
        }

        return false;
    }
}
