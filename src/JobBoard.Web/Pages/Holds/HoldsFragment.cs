using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Holds;

/// <summary>All that holds work, for one person: what needs them first.</summary>
public sealed class HoldsFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "holds";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(HoldsBoard);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = HoldsMapping.Of(picture, audience.PersonId!) };
}
