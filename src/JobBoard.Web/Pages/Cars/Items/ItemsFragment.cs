using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Cars.Items;

/// <summary>The items of a car as a walk round it, and the dangers that stand on it.</summary>
public sealed class ItemsFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "car-walk";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Car;

    /// <inheritdoc/>
    public Type Component => typeof(ItemsWalk);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = ItemsView.Of(picture, audience.Car!) };
}
