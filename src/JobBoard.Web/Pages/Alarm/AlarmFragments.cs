using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Alarm;

/// <summary>On every page of a person: the stops that touch them until they have said heard.</summary>
public sealed class PersonAlarm : IFragment
{
    /// <inheritdoc/>
    public string Name => "alarm";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Person;

    /// <inheritdoc/>
    public Type Component => typeof(Alarm);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = AlarmView.ForPerson(picture.Shop, audience.PersonId!) };
}

/// <summary>On the wall: what sounds there.</summary>
public sealed class WallAlarm : IFragment
{
    /// <inheritdoc/>
    public string Name => "wall-alarm";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Floor;

    /// <inheritdoc/>
    public Type Component => typeof(Alarm);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = AlarmView.ForWall(picture.Shop) };
}
