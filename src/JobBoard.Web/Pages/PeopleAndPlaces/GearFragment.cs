using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Gear and instruments, for one person.</summary>
public sealed class GearFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "shop-gear";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(GearList);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = GearMapping.Of(picture, audience.PersonId!) };
}
