using System.Text.RegularExpressions;

namespace JobBoard.Web.Tests;

public partial class PageContents
{
    public static TheoryData<string> Markup =>
        [.. Directory.EnumerateFiles(Sources.Web, "*.*", SearchOption.AllDirectories)
            .Where(path => path.EndsWith(".razor", StringComparison.Ordinal) || path.EndsWith(".cshtml", StringComparison.Ordinal))
            .Select(path => Path.GetRelativePath(Sources.Web, path))
            .Where(path => !path.StartsWith("obj", StringComparison.Ordinal) && !path.StartsWith("bin", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Markup))]
    public void No_style_or_script_stands_in_the_markup(string path)
    {
        var text = File.ReadAllText(Path.Combine(Sources.Web, path));

        Assert.DoesNotMatch(Inline(), text);
    }

    [GeneratedRegex(@"<style|\sstyle=|<script(?![^>]*\ssrc=)|\son[a-z]+=""", RegexOptions.IgnoreCase)]
    private static partial Regex Inline();
}
