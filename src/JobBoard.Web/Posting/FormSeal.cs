using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;

namespace JobBoard.Web.Posting;

/// <summary>
/// What a form needs to be posted that is the sender's alone: a command id, the version they look at, the antiforgery token.
/// A fragment is rendered once for all its viewers, so it holds the blank seal; the page fills it for its reader, and the
/// script fills it in what was pushed.
/// </summary>
public static class FormSeal
{
    /// <summary>The blank seal, exactly as a fragment renders it.</summary>
    public const string Blank = "<span class=\"seal\" hidden></span>";

    /// <summary>Fills every blank seal: a new command id each, the same version and token for all.</summary>
    /// <param name="html">Rendered html.</param>
    /// <param name="token">The reader's antiforgery token.</param>
    /// <param name="seen">Number of the last entry in the picture.</param>
    public static string Fill(string html, string? token, long seen)
    {
        if (!html.Contains(Blank, StringComparison.Ordinal)) return html;
        var parts = html.Split(Blank);
        var filled = new StringBuilder(parts[0], html.Length + (parts.Length * 400));
        for (var i = 1; i < parts.Length; i++) filled.Append(Filled(token, seen)).Append(parts[i]);
        return filled.ToString();
    }

    private static string Filled(string? token, long seen) => string.Create(
        CultureInfo.InvariantCulture,
        $"<span class=\"seal\" hidden><input type=\"hidden\" name=\"command\" value=\"{Guid.CreateVersion7()}\"><input type=\"hidden\" name=\"seen\" value=\"{seen}\">"
        + $"<input type=\"hidden\" name=\"__RequestVerificationToken\" value=\"{HtmlEncoder.Default.Encode(token ?? "")}\"></span>");
}
