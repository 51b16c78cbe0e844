using System.Net;
using System.Text.RegularExpressions;

namespace JobBoard.Web.Tests;

/// <summary>A form as it stands in a rendered page: what a browser without script would post of it.</summary>
internal sealed partial class FormInPage
{
    private readonly List<(string Name, string Value)> _fields;

    private FormInPage(string action, List<(string Name, string Value)> fields, IReadOnlySet<string> names) => (Action, _fields, Names) = (action, fields, names);

    /// <summary>Where it is posted to.</summary>
    public string Action { get; }

    /// <summary>Names of all its fields, also of boxes not ticked.</summary>
    public IReadOnlySet<string> Names { get; }

    /// <summary>What it holds under a name.</summary>
    public IEnumerable<string> Held(string name) => _fields.Where(f => f.Name == name).Select(f => f.Value);

    /// <summary>The form of that id; fails where the page has none.</summary>
    public static FormInPage Of(string html, string id)
    {
        var match = Regex.Match(html, $"""<form(?=[^>]*\sid="{Regex.Escape(id)}")[^>]*>(.*?)</form>""", RegexOptions.Singleline);
        Assert.True(match.Success, $"The page has no form '{id}'.");
        var fields = new List<(string, string)>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (Match field in Field().Matches(match.Groups[1].Value))
        {
            if (Attribute(field.Value, "name") is not { } name) continue;
            names.Add(name);
            if (ValueOf(field) is { } value) fields.Add((name, value));
        }

        return new(Attribute(match.Value[..(match.Value.IndexOf('>') + 1)], "action") ?? "", fields, names);
    }

    /// <summary>Types over fields the form has; a name the form does not have fails.</summary>
    public FormInPage Fill(params (string Name, string Value)[] typed)
    {
        foreach (var (name, _) in typed)
        {
            Assert.Contains(name, Names);
            _fields.RemoveAll(f => f.Name == name);
        }

        _fields.AddRange(typed);
        return this;
    }

    /// <summary>Types one more value into a further field of a name.</summary>
    public FormInPage And(string name, string value)
    {
        Assert.Contains(name, Names);
        _fields.Add((name, value));
        return this;
    }

    /// <summary>Posts it as a browser without script does.</summary>
    public Task<HttpResponseMessage> Post(Browser browser) => browser.PostBare(Action, [.. _fields]);

    private static string? ValueOf(Match field)
    {
        var tag = field.Value;
        if (tag.StartsWith("<textarea", StringComparison.Ordinal)) return WebUtility.HtmlDecode(field.Groups[1].Value);
        if (tag.StartsWith("<select", StringComparison.Ordinal))
        {
            var options = Option().Matches(tag).Select(o => o.Value).ToArray();
            return Attribute(options.FirstOrDefault(o => o.Contains(" selected", StringComparison.Ordinal)) ?? options.FirstOrDefault() ?? "", "value") ?? "";
        }

        var type = Attribute(tag, "type");
        return type is "radio" or "checkbox" && !tag.Contains(" checked", StringComparison.Ordinal) ? null : Attribute(tag, "value") ?? "";
    }

    private static string? Attribute(string tag, string name) =>
        Regex.Match(tag, $"\\s{name}=\"([^\"]*)\"") is { Success: true } match ? WebUtility.HtmlDecode(match.Groups[1].Value) : null;

    [GeneratedRegex("<input[^>]*>|<select[^>]*>.*?</select>|<textarea[^>]*>(.*?)</textarea>", RegexOptions.Singleline)]
    private static partial Regex Field();

    [GeneratedRegex("<option[^>]*>")]
    private static partial Regex Option();
}
