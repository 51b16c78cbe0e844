using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Who is in and what they can do, for one person.</summary>
public sealed class PeopleFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "people";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(PeopleList);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = PeopleMapping.Of(picture, audience.PersonId!) };
}
