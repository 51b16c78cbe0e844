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

/// <summary>
/// A fragment of which there are several for one audience, one for each subject: a stage of a car, a task. The subject is part
/// of its id; <see cref="Parameters(Picture, Audience, string)"/> must do with one that does not exist (an empty view).
/// </summary>
public interface ISubjectFragment : IFragment
{
    /// <summary>The component's parameters for one audience and subject at one instant.</summary>
    /// <param name="picture">What to show.</param>
    /// <param name="audience">For whom.</param>
    /// <param name="subject">Lower-case letters, digits, hyphens and colons.</param>
    IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience, string subject);

    /// <inheritdoc/>
    IReadOnlyDictionary<string, object?> IFragment.Parameters(Picture picture, Audience audience) => Parameters(picture, audience, "");
}
