namespace JobBoard.Domain.Items;

/// <summary>How far back on the car, in the order of a walk.</summary>
public enum Along
{
    Front,
    Middle,
    Rear,

    /// <summary>At more than one of these, or all round.</summary>
    Whole,

    /// <summary>Not on the car: on the bench, desk work; or words that say nothing of it.</summary>
    Elsewhere,
}

/// <summary>On which side of the car, seen from above with its front up.</summary>
public enum Side
{
    Left,

    /// <summary>In the middle, across, or on both sides.</summary>
    Across,

    Right,
}

/// <summary>Where on a car free words such as <c>rear, left and right</c> or <c>middle, under</c> are.</summary>
/// <param name="Along">How far back.</param>
/// <param name="Side">On which side.</param>
public readonly record struct Spot(Along Along, Side Side) : IComparable<Spot>
{
    /// <summary>
    /// Reads the words. The first of front, middle (cabin, engine bay, gearbox tunnel), rear that is said before a comma counts;
    /// two of them, "whole", "all round" or "four" are the whole car; what says none of it is elsewhere. Never fails.
    /// </summary>
    public static Spot Of(string words)
    {
        var all = words.ToLowerInvariant().Split([' ', ',', ';', '/', '-', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
        var first = words.ToLowerInvariant().Split([',', ';'], 2)[0].Split([' ', '/', '-', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
        var (left, right) = (all.Contains("left"), all.Contains("right"));
        var side = left == right ? Side.Across : left ? Side.Left : Side.Right;
        return new(Reach(first) is var along and not Along.Elsewhere ? along : Reach(all), side);
    }

    /// <inheritdoc/>
    public int CompareTo(Spot other) => (Along, Side).CompareTo((other.Along, other.Side));

    private static Along Reach(string[] words)
    {
        if (words.Any(w => w is "whole" or "round" or "around" or "four" or "corners" or "everywhere")) return Along.Whole;
        var named = words.Select(Named).OfType<Along>().Distinct().ToArray();
        return named.Length switch { 0 => Along.Elsewhere, 1 => named[0], _ => Along.Whole };
    }

    private static Along? Named(string word) => word switch
    {
        "front" or "nose" => Along.Front,
        "middle" or "mid" or "centre" or "cabin" or "bulkhead" or "sill" or "sills" => Along.Middle,
        "rear" or "back" or "tail" => Along.Rear,
        _ => null,
    };
}
