using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Cars.CarTask;

/// <summary>One task of a car, for one person.</summary>
public sealed class CarTaskFragment : ISubjectFragment
{
    /// <inheritdoc/>
    public string Name => "car-task";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(CarTaskBoard);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience, string subject) =>
        new Dictionary<string, object?> { ["View"] = CarTaskMapping.Of(picture, audience.PersonId!, subject) };
}
