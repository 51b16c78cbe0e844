using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Cars.KeyCheck;

/// <summary>The key check of a car (its subject), for one person.</summary>
public sealed class KeyCheckFragment : ISubjectFragment
{
    /// <inheritdoc/>
    public string Name => "key-check";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(KeyCheckBoard);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience, string subject) =>
        new Dictionary<string, object?> { ["View"] = KeyCheckMapping.Of(picture, subject, audience.PersonId!) };
}
