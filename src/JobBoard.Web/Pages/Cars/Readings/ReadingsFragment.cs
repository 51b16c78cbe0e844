using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Cars.Readings;

/// <summary>What was and is to be measured on a car.</summary>
public sealed class ReadingsFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "car-measured";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Car;

    /// <inheritdoc/>
    public Type Component => typeof(ReadingsBoard);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = ReadingsView.Of(picture, audience.Car!) };
}
