using System.Collections.Immutable;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars;

/// <summary>All cars in the shop, the same for everybody.</summary>
public sealed class CarsFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "cars";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Floor;

    /// <inheritdoc/>
    public Type Component => typeof(CarsList);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) => new Dictionary<string, object?>
    {
        ["Cars"] = picture.Shop.Cars.Values.Select(c => CarSummary.Of(picture, c)).OrderBy(c => c.IsDone).ToImmutableArray(),
        ["Now"] = picture.Minute,
    };
}
