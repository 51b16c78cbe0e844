namespace JobBoard.Web.Pages.Floor;

/// <summary>Breaks text into lines that fit, by measured widths. Text is cut between words with "…"; a word wider than the line is broken with a hyphen, never clipped.</summary>
public static class FloorText
{
    private const string Ellipsis = "…";

    /// <summary>The lines of <paramref name="text"/> within <paramref name="width"/>, at most <paramref name="most"/> (1 or more); none where not even a letter fits.</summary>
    public static IReadOnlyList<string> Lines(string text, double width, double size, bool bold, int most)
    {
        var lines = new List<string>();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(word => Pieces(word, Fits)))
        {
            if (!Fits(word))
                return [];
            var joined = lines.Count == 0 ? word : $"{lines[^1]} {word}";
            if (lines.Count > 0 && Fits(joined))
                lines[^1] = joined;
            else
                lines.Add(word);
        }
        return lines.Count <= most ? lines : Cut(lines, most, Fits);

        bool Fits(string line) => FloorFace.Width(line, size, bold) <= width;
    }

    private static List<string> Cut(List<string> lines, int most, Func<string, bool> fits)
    {
        var kept = lines.GetRange(0, most);
        var last = kept[^1];
        while (!fits($"{last} {Ellipsis}") && last.Contains(' ', StringComparison.Ordinal))
            last = last[..last.LastIndexOf(' ')];
        kept[^1] = fits($"{last} {Ellipsis}") ? $"{last} {Ellipsis}" : Ellipsis;
        return kept;
    }

    /// <summary>The word whole where it fits, else in pieces: after its own hyphens first, then between two consonants, then where it must.</summary>
    private static IEnumerable<string> Pieces(string word, Func<string, bool> fits)
    {
        while (!fits(word) && word.Length > 3)
        {
            var at = BreakAt(word, fits);
            if (at == 0)
                break;
            yield return word[at - 1] == '-' ? word[..at] : $"{word[..at]}-";
            word = word[at..];
        }
        yield return word;
    }

    private static int BreakAt(string word, Func<string, bool> fits)
    {
        var longest = 0;
        var between = 0;
        for (var at = 2; at <= word.Length - 2; at++)
        {
            if (!fits(word[at - 1] == '-' ? word[..at] : $"{word[..at]}-"))
                break;
            longest = at;
            if (word[at - 1] == '-' || (IsConsonant(word[at - 1]) && IsConsonant(word[at]) && at > 2))
                between = at;
        }
        return between > 0 ? between : longest;
    }

    private static bool IsConsonant(char c) => char.IsLetter(c) && !"aeiouyAEIOUY".Contains(c, StringComparison.Ordinal);
}
