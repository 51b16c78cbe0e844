using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace JobBoard.Web.Marks;

/// <summary>
/// What every mark shares: in running text it takes its size from a class (<c>mark-20</c> to <c>mark-64</c>, else 1.5 em);
/// inside another drawing it takes <see cref="X"/>, <see cref="Y"/> and <see cref="Size"/> in that drawing's units.
/// </summary>
public abstract class MarkBase : ComponentBase
{
    /// <summary>What a screen reader says. Null when the words beside the mark already say it.</summary>
    [Parameter]
    public string? Label { get; set; }

    /// <summary>Further CSS classes.</summary>
    [Parameter]
    public string? Class { get; set; }

    /// <summary>Left edge inside a drawing.</summary>
    [Parameter]
    public double? X { get; set; }

    /// <summary>Top edge inside a drawing.</summary>
    [Parameter]
    public double? Y { get; set; }

    /// <summary>Side length inside a drawing, in its units.</summary>
    [Parameter]
    public double? Size { get; set; }

    /// <summary>The attributes of the svg element, in a fixed order so that equal marks give equal bytes.</summary>
    protected Dictionary<string, object?> Frame => new()
    {
        ["class"] = Size is null ? Join("mark", Class) : Class,
        ["x"] = Number(X),
        ["y"] = Number(Y),
        ["width"] = Number(Size),
        ["height"] = Number(Size),
        ["role"] = Label is null ? null : "img",
        ["aria-label"] = Label,
        ["aria-hidden"] = Label is null ? "true" : null,
    };

    private static string Join(string first, string? second) => second is null ? first : $"{first} {second}";

    private static string? Number(double? value) => value?.ToString("0.##", CultureInfo.InvariantCulture);
}
