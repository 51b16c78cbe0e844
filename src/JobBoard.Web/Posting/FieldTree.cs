using System.Globalization;

namespace JobBoard.Web.Posting;

/// <summary>
/// The fields of a posted form as the tree their names spell: <c>estimate.low</c>, <c>crew[0].person</c>, <c>items[car/item]</c>.
/// A name posted more than once is a list of its values.
/// </summary>
internal sealed class FieldTree
{
    private readonly Dictionary<string, FieldTree> _children = new(StringComparer.Ordinal);

    private FieldTree(string path) => Path = path;

    /// <summary>The field's name from the root.</summary>
    public string Path { get; }

    /// <summary>Values posted under exactly this name, trimmed; empty ones left out.</summary>
    public List<string> Values { get; } = [];

    /// <summary>The one value, or nothing when none was typed.</summary>
    public string? Value => Values.Count == 0 ? null : Values[0];

    /// <summary>Whether nothing was typed here or below.</summary>
    public bool IsEmpty => Values.Count == 0 && _children.Values.All(c => c.IsEmpty);

    /// <summary>Children by name or key.</summary>
    public IReadOnlyDictionary<string, FieldTree> Children => _children;

    /// <summary>Children by number, in order.</summary>
    public IEnumerable<FieldTree> Numbered => _children
        .Where(c => int.TryParse(c.Key, NumberStyles.None, CultureInfo.InvariantCulture, out _))
        .OrderBy(c => int.Parse(c.Key, CultureInfo.InvariantCulture)).Select(c => c.Value);

    /// <summary>Sorts fields into their tree.</summary>
    public static FieldTree Of(IEnumerable<KeyValuePair<string, Microsoft.Extensions.Primitives.StringValues>> fields)
    {
        var root = new FieldTree("");
        foreach (var (name, values) in fields)
        {
            root.At(name).Values.AddRange(values.Select(v => v?.Trim() ?? "").Where(v => v.Length > 0));
        }

        return root;
    }

    /// <summary>The child of that name; an empty one when there is none.</summary>
    public FieldTree Child(string name) => _children.GetValueOrDefault(name) ?? new FieldTree(Path.Length == 0 ? name : Path + "." + name);

    private FieldTree At(string name)
    {
        var node = this;
        foreach (var (key, path) in Steps(name))
        {
            if (!node._children.TryGetValue(key, out var next)) node._children[key] = next = new FieldTree(path);
            node = next;
        }

        return node;
    }

    // Keys in brackets may hold anything but brackets; outside them a point parts two names.
    private static IEnumerable<(string Key, string Path)> Steps(string name)
    {
        for (var i = 0; i < name.Length;)
        {
            var bracket = name[i] == '[';
            var end = bracket ? name.IndexOf(']', i) : name.IndexOfAny(['.', '['], i);
            if (end < 0) end = name.Length;
            var key = bracket ? name[(i + 1)..end] : name[i..end];
            i = bracket ? Math.Min(end + 1, name.Length) : end;
            yield return (key, name[..i]);
            if (i < name.Length && name[i] == '.') i++;
        }
    }
}
