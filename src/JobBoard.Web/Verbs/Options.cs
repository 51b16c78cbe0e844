namespace JobBoard.Web.Verbs;

/// <summary>Options of a verb: <c>--data DIR</c>, <c>--data=DIR</c> or, without a value, <c>--demo</c>.</summary>
internal sealed class Options
{
    private readonly Dictionary<string, string> _given = new(StringComparer.Ordinal);

    public string? this[string name] => _given.GetValueOrDefault(name);

    public bool Has(string name) => _given.ContainsKey(name);

    /// <summary>Reads options; a known name that begins with <c>!</c> takes no value.</summary>
    /// <exception cref="CommandLineException">An option is unknown, comes twice or lacks its value.</exception>
    public static Options Read(string verb, string[] args, params string[] known)
    {
        var options = new Options();
        for (var i = 0; i < args.Length; i++)
        {
            var (name, value) = Split(args[i]);
            var flag = known.Contains("!" + name);
            if (name is null || (!flag && !known.Contains(name))) throw new CommandLineException($"'{verb}' does not know '{args[i]}'.");
            if (flag && value is not null) throw new CommandLineException($"--{name} takes no value.");
            if (!flag) value ??= i + 1 < args.Length ? args[++i] : throw new CommandLineException($"--{name} needs a value after it.");
            if (!options._given.TryAdd(name, value ?? "")) throw new CommandLineException($"--{name} is given twice.");
        }

        return options;
    }

    private static (string? Name, string? Value) Split(string arg)
    {
        if (!arg.StartsWith("--", StringComparison.Ordinal)) return (null, null);
        var at = arg.IndexOf('=', StringComparison.Ordinal);
        return at < 0 ? (arg[2..], null) : (arg[2..at], arg[(at + 1)..]);
    }
}
