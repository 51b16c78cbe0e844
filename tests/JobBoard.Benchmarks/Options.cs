using System.Globalization;

namespace JobBoard.Benchmarks;

/// <summary>What stands after a verb: <c>--name value</c> pairs.</summary>
internal sealed class Options(string[] args)
{
    /// <summary>The whole number after <c>--name</c>, or <paramref name="usual"/> if it is not given.</summary>
    /// <exception cref="ArgumentException">The name stands without a whole number of at least 0.</exception>
    public int Number(string name, int usual)
    {
        var at = Array.IndexOf(args, "--" + name);
        if (at < 0)
            return usual;
        if (at + 1 < args.Length && int.TryParse(args[at + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            return number;
        throw new ArgumentException($"--{name} needs a whole number after it, such as --{name} {usual}.");
    }

    /// <summary>The text after <c>--name</c>, or nothing if it is not given.</summary>
    /// <exception cref="ArgumentException">The name stands without a text.</exception>
    public string? Text(string name)
    {
        var at = Array.IndexOf(args, "--" + name);
        if (at < 0)
            return null;
        return at + 1 < args.Length ? args[at + 1] : throw new ArgumentException($"--{name} needs a text after it.");
    }
}
