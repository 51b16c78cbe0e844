using JobBoard.Domain.Plans;
using JobBoard.Web.Live;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Pages.Welcome;

/// <summary>What is still missing for the shop to work, for the owner.</summary>
public sealed class WelcomeFragment(PinBook pins) : IFragment
{
    /// <inheritdoc/>
    public string Name => "welcome";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(WelcomeSteps);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) => new Dictionary<string, object?>
    {
        ["View"] = picture.Shop.People.GetValueOrDefault(audience.PersonId!) is { Position: Position.Owner, Left: false }
            ? new WelcomeView(WelcomeMapping.Steps(picture.Shop, pins.People), MayAsk: true)
            : new WelcomeView([], MayAsk: false),
    };
}
