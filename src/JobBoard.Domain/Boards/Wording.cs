using System.Text.RegularExpressions;

namespace JobBoard.Domain.Boards;

/// <summary>Words kept in entries and refusals name people as <c>{person-id}</c>; screens resolve them.</summary>
public static partial class Wording
{
    /// <summary>Puts names for ids.</summary>
    public static string Resolve(string words, ShopState shop) =>
        words.Contains('{', StringComparison.Ordinal) ? Tokens().Replace(words, m => shop.NameOf(m.Groups[1].Value)) : words;

    [GeneratedRegex(@"\{([a-z0-9][a-z0-9-]*)\}")]
    private static partial Regex Tokens();
}
