using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Hours, places and things of the shop, for one person.</summary>
public sealed class PlacesFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "shop-places";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(PlacesList);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = PlacesMapping.Of(picture, audience.PersonId!) };
}
