using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Bay;

/// <summary>What one person does now, can start next and waits on.</summary>
public sealed class BayFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "bay";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(BayScreen);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = BayMapping.Of(picture, audience.PersonId!) };
}
