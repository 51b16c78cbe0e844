using System.Text.RegularExpressions;

namespace JobBoard.Web.Live;

/// <summary>
/// One fragment for one audience, written <c>AUDIENCE/NAME</c>, such as <c>person/inga/bay</c>; where there are several of a
/// kind, with what it is about: <c>car/heron/foreman/car-stage:s06-lift</c>.
/// </summary>
public readonly partial record struct FragmentId(Audience Audience, string Name, string? Subject = null)
{
    /// <summary>Its name in the protocol and in the page.</summary>
    public override string ToString() => Audience.Key + "/" + Name + (Subject is null ? "" : ":" + Subject);

    /// <summary>Reads an id; nothing when it is none.</summary>
    public static FragmentId? Read(string text)
    {
        var slash = text.LastIndexOf('/');
        if (slash <= 0 || Live.Audience.Read(text[..slash]) is not { } audience) return null;
        var parts = text[(slash + 1)..].Split(':', 2);
        if (parts.Length == 1) return new(audience, parts[0]);
        return Subjects().IsMatch(parts[1]) ? new(audience, parts[0], parts[1]) : null;
    }

    [GeneratedRegex("^[a-z0-9:-]{1,160}\\z")]
    private static partial Regex Subjects();
}
