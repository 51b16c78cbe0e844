using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using JobBoard.Web.Live;

namespace JobBoard.Web.Paper;

/// <summary>
/// Writes the sheets of all cars and of the shop as files that print without server, script or network: one HTML file each and
/// their style beside them. All at once: a folder is there whole or not at all.
/// </summary>
public sealed class PaperFolder(Markup markup)
{
    /// <summary>Days that are kept.</summary>
    public const int DaysKept = 30;

    private const string DayFormat = "yyyy-MM-dd";

    /// <summary>The style beside the sheets.</summary>
    public const string Style = "paper.css";

    /// <summary>The folder of one evening.</summary>
    public static string Of(string root, DateOnly day) => Path.Combine(root, day.ToString(DayFormat, CultureInfo.InvariantCulture));

    /// <summary>Writes all sheets into a folder in place of what was there.</summary>
    /// <returns>How many sheets.</returns>
    /// <exception cref="IOException">It cannot be written; what was there before still is.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public async Task<int> Write(Picture picture, string folder, string by)
    {
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        var sheets = picture.Shop.Cars.Values.Select(c => (Name: "car-" + c.Id, View: CarPaper.Of(picture, c, by))).Append(("shop", ShopPaper.Of(picture, by))).ToImmutableArray();
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        var fresh = full + ".writing";
        if (Directory.Exists(fresh)) Directory.Delete(fresh, recursive: true);
        Directory.CreateDirectory(fresh);
        await File.WriteAllTextAsync(Path.Combine(fresh, Style), await StyleText().ConfigureAwait(false)).ConfigureAwait(false);
        foreach (var (name, view) in sheets) await File.WriteAllTextAsync(Path.Combine(fresh, name + ".html"), await Html(view).ConfigureAwait(false), new UTF8Encoding(false)).ConfigureAwait(false);
        Replace(full, fresh);
        return sheets.Length;
    }

    /// <summary>Takes away all but the newest days.</summary>
    public static void Tidy(string root)
    {
        var days = Directory.GetDirectories(root).Where(d => DateOnly.TryParseExact(Path.GetFileName(d), DayFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out _));
        foreach (var old in days.OrderDescending(StringComparer.Ordinal).Skip(DaysKept)) Directory.Delete(old, recursive: true);
    }

    private static async Task<string> StyleText()
    {
        using var reader = new StreamReader(typeof(PaperFolder).Assembly.GetManifestResourceStream(Style)!);
        return await reader.ReadToEndAsync().ConfigureAwait(false);
    }

    private static void Replace(string full, string fresh)
    {
        var old = full + ".old";
        if (Directory.Exists(old)) Directory.Delete(old, recursive: true);
        if (Directory.Exists(full)) Directory.Move(full, old);
        Directory.Move(fresh, full);
        if (Directory.Exists(old)) Directory.Delete(old, recursive: true);
    }

    private async Task<string> Html(PaperView view)
    {
        var sheet = await markup.Render<PaperSheet>(new Dictionary<string, object?> { ["View"] = view }).ConfigureAwait(false);
        return $"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>{HtmlEncoder.Default.Encode(view.Title)} · {HtmlEncoder.Default.Encode(view.Stamp)}</title>
            <link rel="stylesheet" href="{Style}">
            </head>
            <body class="paper-page">
            {sheet}
            </body>
            </html>
            """;
    }
}
