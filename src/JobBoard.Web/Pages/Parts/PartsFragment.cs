using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Parts;

/// <summary>The parts of all cars, for one person.</summary>
public sealed class PartsFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "parts";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(PartsList);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = PartsMapping.OfShop(picture, audience.PersonId!) };
}
