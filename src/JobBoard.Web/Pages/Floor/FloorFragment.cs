using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Floor;

/// <summary>The whole wall.</summary>
public sealed class FloorFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "floor";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Floor;

    /// <inheritdoc/>
    public Type Component => typeof(FloorScreen);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = FloorMapping.Of(picture) };
}
