namespace JobBoard.Web.Live;

/// <summary>
/// A part of a page that is pushed when it changes. Its component renders the same on first load and on push: it takes what
/// <see cref="Parameters"/> gives and nothing else, and holds blank seals, no token and no stamp. Every public one in this
/// program is found by itself.
/// </summary>
public interface IFragment
{
    /// <summary>Unique among the fragments, a lower-case word such as <c>floor-map</c>.</summary>
    string Name { get; }

    /// <summary>The kind of audience it belongs to.</summary>
    AudienceKind Audience { get; }

    /// <summary>The Razor component.</summary>
    Type Component { get; }

    /// <summary>The component's parameters for one audience at one instant.</summary>
    IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience);
}
