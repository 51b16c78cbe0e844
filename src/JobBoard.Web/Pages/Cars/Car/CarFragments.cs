using JobBoard.Web.Live;
using JobBoard.Web.Pages.Parts;
using JobBoard.Web.Pages.Snags;

namespace JobBoard.Web.Pages.Cars.Car;

/// <summary>The head of a car's page: where it is, how far, when, and what moves it as a whole.</summary>
public sealed class CarHeadFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "car-head";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Car;

    /// <inheritdoc/>
    public Type Component => typeof(CarHead);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = CarHeadView.Of(picture, audience.Car!, audience.Position!.Value) };
}

/// <summary>One stage of a car: its tasks and hold points.</summary>
public sealed class CarStageFragment : ISubjectFragment
{
    /// <inheritdoc/>
    public string Name => "car-stage";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Car;

    /// <inheritdoc/>
    public Type Component => typeof(CarStage);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience, string subject) =>
        new Dictionary<string, object?> { ["View"] = CarStageMapping.Of(picture, audience.Car!, subject) };
}

/// <summary>The items of a car and the dangers that stand on it.</summary>
public sealed class CarItemsFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "car-items";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Car;

    /// <inheritdoc/>
    public Type Component => typeof(CarItems);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = CarItemsView.Of(picture, audience.Car!) };
}

/// <summary>The parts of a car.</summary>
public sealed class CarPartsFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "car-parts";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Car;

    /// <inheritdoc/>
    public Type Component => typeof(PartsList);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = PartsMapping.OfCar(picture, audience.Car!, audience.Position!.Value) };
}

/// <summary>The notes on a car.</summary>
public sealed class CarNotesFragment : IFragment
{
    /// <inheritdoc/>
    public string Name => "car-notes";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Car;

    /// <inheritdoc/>
    public Type Component => typeof(CarNotes);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = CarNotesView.Of(picture, audience.Car!) };
}

/// <summary>The snags of one car, for one person.</summary>
public sealed class CarSnagsFragment : ISubjectFragment
{
    /// <inheritdoc/>
    public string Name => "car-snags";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(SnagsList);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience, string subject) =>
        new Dictionary<string, object?> { ["View"] = SnagsView.Of(picture, audience.PersonId!, subject) };
}
