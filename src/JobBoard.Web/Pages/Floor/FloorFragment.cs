using JobBoard.Web.Live;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Pages.Floor;

/// <summary>The wall on one link's screen, sized for its distance and diagonal; the subject is the link's id.</summary>
public sealed class FloorWallFragment(WallLinks walls) : ISubjectFragment
{
    /// <inheritdoc/>
    public string Name => "floor-wall";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Floor;

    /// <inheritdoc/>
    public Type Component => typeof(FloorScreen);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience, string subject)
    {
        var screen = walls.ScreenOf(subject);
        return new Dictionary<string, object?> { ["View"] = FloorMapping.Of(picture), ["Sheet"] = FloorSheet.For(screen.Metres, screen.Inches) };
    }
}

/// <summary>The whole wall, as people look at it on their own screens.</summary>
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
