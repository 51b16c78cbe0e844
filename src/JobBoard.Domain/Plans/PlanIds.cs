using System.Globalization;
using System.Text;

namespace JobBoard.Domain.Plans;

/// <summary>Ids for new entries of a plan: their name in lower-case letters, digits and hyphens, with a number where one has it already.</summary>
public static class PlanIds
{
    private const int Longest = 56;

    /// <summary>An id that is not taken.</summary>
    /// <param name="name">What people call it.</param>
    /// <param name="isTaken">Whether something has that id already.</param>
    /// <param name="otherwise">The id where the name has no letter or digit that an id can have.</param>
    public static string For(string name, Func<string, bool> isTaken, string otherwise)
    {
        var bare = Bare(name) is { Length: > 0 } id ? id : otherwise;
        return Enumerable.Range(1, int.MaxValue - 1).Select(n => n == 1 ? bare : string.Create(CultureInfo.InvariantCulture, $"{bare}-{n}")).First(id => !isTaken(id));
    }

    private static string Bare(string name)
    {
        var letters = new StringBuilder();
        foreach (var c in name.Normalize(NormalizationForm.FormD).ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(c)) letters.Append(c);
            else if (!IsDropped(c) && letters.Length > 0 && letters[^1] != '-') letters.Append('-');
        }

        return letters.ToString(0, Math.Min(letters.Length, Longest)).Trim('-');
    }

    private static bool IsDropped(char c) => c is '\'' or '’' or '.' || char.GetUnicodeCategory(c) == UnicodeCategory.NonSpacingMark;
}
