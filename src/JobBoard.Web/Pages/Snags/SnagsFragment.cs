using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Snags;

/// <summary>The snags of all cars, for one person.</summary>
public sealed class SnagsFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "snags";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(SnagsList);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = SnagsView.Of(picture, audience.PersonId!) };
}
