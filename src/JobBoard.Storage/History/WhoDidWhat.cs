using Dapper;
using JobBoard.Domain.Entries;
using JobBoard.Storage.Journal;

namespace JobBoard.Storage.History;

/// <summary>One row for each entry: who, when, what kind of thing, about what. Screens turn kinds and ids into words.</summary>
public sealed class WhoDidWhat : IHistoryProjection
{
    private const string Entries = "entries";

    /// <inheritdoc/>
    public string Name => "who-did-what";

    /// <summary>To be raised with every change to what this class writes.</summary>
    public string Stamp => "2";

    /// <inheritdoc/>
    public IReadOnlyList<HistoryTable> Tables { get; } =
    [
        new(
            Entries,
            """
            seq INTEGER PRIMARY KEY, car TEXT, task TEXT, kind TEXT NOT NULL, subject TEXT, actor TEXT NOT NULL,
            occurred_at INTEGER NOT NULL, recorded_at INTEGER NOT NULL, command TEXT NOT NULL, taken_back_seq INTEGER
            """,
            "car, seq",
            "actor, seq",
            "command"),
    ];

    /// <inheritdoc/>
    public void Apply(HistoryTarget target, JournalRow row)
    {
        var fact = Histories.FactOf(row);
        target.Connection.Execute(
            $"""
             INSERT INTO {target.Table(Entries)} (seq, car, task, kind, subject, actor, occurred_at, recorded_at, command)
             VALUES (@Seq, @car, @task, @Kind, @subject, @Actor, @OccurredAt, @RecordedAt, @command)
             """,
            new
            {
                row.Seq,
                car = Car(fact),
                task = Task(fact),
                row.Kind,
                subject = Subject(fact),
                row.Actor,
                row.OccurredAt,
                row.RecordedAt,
                command = Histories.IdOf(row.CommandId),
            });
        if (fact is TakenBack back)
        {
            target.Connection.Execute(
                $"UPDATE {target.Table(Entries)} SET taken_back_seq = @Seq WHERE command = @command",
                new { row.Seq, command = Histories.IdOf(back.Command) });
        }
    }

    private static string? Car(Fact? fact) => fact switch
    {
        CarFact about => about.Car,
        StopRaised stop => stop.Car,
        DeviationNoted deviation => deviation.Car,
        _ => null,
    };

    private static string? Task(Fact? fact) => fact switch
    {
        TaskFact about => about.Task,
        TaskLetThrough through => through.Task,
        NoteWritten note => note.Task,
        StopRaised stop => stop.Task,
        DeviationNoted deviation => deviation.Task,
        _ => null,
    };

    /// <summary>The id of the one thing, other than car and task, that the entry is about.</summary>
    private static string? Subject(Fact? fact) => fact switch
    {
        ReadingLogged f => f.Reading,
        ReadingReleased f => f.Reading,
        CrewJoined f => f.Member.Person,
        CrewLeft f => f.Person,
        LeftAcknowledged f => f.Person,
        EvidenceLapsed f => f.Id,
        EvidenceTakenAgain f => f.Node,
        HazardMadeSafe f => f.Hazard,
        HazardEndedByReading f => f.Hazard,
        ItemChanged f => f.Item,
        PartOrdered f => f.Part,
        PartArrived f => f.Part,
        PartChecked f => f.Part,
        HoldReleased f => f.Hold,
        CallAnswered f => f.Hold,
        StartFailed f => f.Hold,
        TaskLetThrough f => f.Hold,
        SnagRaised f => f.Snag,
        SnagDone f => f.Snag,
        CustomerAsked f => f.Ask,
        CustomerAnswered f => f.Ask,
        CarMoved f => f.Place,
        _ => ShopSubject(fact),
    };

    private static string? ShopSubject(Fact? fact) => fact switch
    {
        PersonSet f => f.Person,
        PersonNamed f => f.Person,
        PersonCameIn f => f.Person,
        PersonWentOut f => f.Person,
        PersonAway f => f.Person,
        PersonLeft f => f.Person,
        PlaceSet f => f.Place.Id,
        PlaceTakenOut f => f.Place,
        GearSet f => f.Gear.Id,
        InstrumentSet f => f.Instrument.Id,
        HazardSet f => f.Hazard.Id,
        KeepApartSet f => f.Rule.Id,
        KeepApartTakenOut f => f.Rule,
        ShopItemSet f => f.Item.Id,
        ShopItemChanged f => f.Item,
        StopRaised f => f.Stop,
        StopHeard f => f.Stop,
        StopMadeSafe f => f.Stop,
        StopReleased f => f.Stop,
        _ => null,
    };
}
