using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Hazards and keep-apart rules, for one person.</summary>
public sealed class KeepApartFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "keep-apart";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(KeepApartList);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = KeepApartMapping.Of(picture, audience.PersonId!) };
}
