using System.Collections.Immutable;

namespace JobBoard.Web.Paper;

/// <summary>Cuts lists to two columns of a page; what finds no room is counted. Sizes go with <c>paper.css</c>.</summary>
public static class PaperFit
{
    /// <summary>Lines of text a column holds.</summary>
    public const int ColumnLines = 33;

    /// <summary>Most letters of one entry: two lines of a column.</summary>
    public const int MostLetters = 92;

    private const int LetterPerLine = 46;
    private const double TitleLines = 1.7;

    /// <summary>
    /// Two columns of what there is, in order: every list its title, then one entry after another to each in turn while there
    /// is room. Lists are not torn between columns.
    /// </summary>
    public static ImmutableArray<ImmutableArray<PaperList>> Columns(IEnumerable<PaperList> lists, int lines = ColumnLines)
    {
        var all = lists.ToArray();
        var shown = new int[all.Length];
        var full = new bool[all.Length];
        while (!full.All(f => f))
        {
            for (var i = 0; i < all.Length; i++)
            {
                if (full[i]) continue;
                shown[i]++;
                if (shown[i] > all[i].Lines.Length || Split(all, shown, lines) is null) (shown[i], full[i]) = (shown[i] - 1, true);
            }
        }

        var at = Split(all, shown, lines) ?? all.Length;
        var cut = all.Select((list, i) => Cut(list, shown[i])).ToArray();
        return [[.. cut[..at]], [.. cut[at..]]];
    }

    /// <summary>Words cut to a number of letters.</summary>
    public static string Short(string words, int letters = MostLetters)
    {
        var plain = string.Join(' ', words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return plain.Length <= letters ? plain : plain[..(letters - 1)].TrimEnd() + "…";
    }

    private static PaperList Cut(PaperList list, int shown) =>
        list with { Lines = [.. list.Lines.Take(shown).Select(l => Short(l))], More = list.Lines.Length - shown + list.More };

    /// <summary>How many lists stand in the left column so that both have room; the most even way, or nothing.</summary>
    private static int? Split(PaperList[] all, int[] shown, int lines)
    {
        var heights = all.Select((list, i) => Height(list, shown[i])).ToArray();
        var ways = Enumerable.Range(0, all.Length + 1).Select(at => (At: at, Most: Math.Max(heights[..at].Sum(), heights[at..].Sum()))).ToArray();
        var best = ways.MinBy(w => w.Most);
        return best.Most <= lines ? best.At : null;
    }

    private static double Height(PaperList list, int shown) =>
        TitleLines + list.Lines.Take(shown).Sum(l => Short(l).Length > LetterPerLine ? 2 : 1) + (shown < list.Lines.Length || list.More > 0 ? 1 : 0);
}
