using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;

namespace JobBoard.Domain.Tests.Histories.Oracle;

/// <summary>
/// What somebody would know who only read the day book from its beginning: kept apart from the program's own fold, so
/// that the two can be held against each other.
/// </summary>
public sealed partial class Picture
{
    private readonly List<Entry> _entries = [];
    private Calendar? _calendar;

    public string Zone { get; private set; } = "Etc/UTC";

    public IReadOnlyList<OpenHours> Hours { get; private set; } = [];

    public IReadOnlyCollection<DateOnly> Closed { get; private set; } = [];

    public SortedDictionary<string, PersonPicture> People { get; } = new(StringComparer.Ordinal);

    public SortedDictionary<string, Place> Places { get; } = new(StringComparer.Ordinal);

    public SortedDictionary<string, Gear> Gear { get; } = new(StringComparer.Ordinal);

    public SortedDictionary<string, Instrument> Instruments { get; } = new(StringComparer.Ordinal);

    public SortedDictionary<string, ShopItem> Items { get; } = new(StringComparer.Ordinal);

    public SortedDictionary<string, HazardKind> Hazards { get; } = new(StringComparer.Ordinal);

    public SortedDictionary<string, KeepApart> Apart { get; } = new(StringComparer.Ordinal);

    public SortedDictionary<string, CarPicture> Cars { get; } = new(StringComparer.Ordinal);

    public SortedDictionary<string, StopPicture> Stops { get; } = new(StringComparer.Ordinal);

    /// <summary>All entries kept, in order.</summary>
    public IReadOnlyList<Entry> Entries => _entries;

    public Calendar Calendar => _calendar ??= new Calendar(Zone, Hours, Closed);

    /// <summary>All tasks in hand in the shop.</summary>
    public IEnumerable<(CarPicture Car, TaskPicture Task)> InHand =>
        Cars.Values.SelectMany(c => c.Tasks.Values.Where(t => t.InHand).Select(t => (c, t)));

    /// <summary>Reads one more entry.</summary>
    public void Add(Entry entry)
    {
        if (entry.Fact is TakenBack back) Forget(back.Command);
        else Read(entry);
        _entries.Add(entry);
    }

    /// <summary>A command that was taken back never was: everything else is read again without it.</summary>
    private void Forget(Guid command)
    {
        var from = _entries.First(e => e.CommandId == command).Seq;
        _entries.RemoveAll(e => e.CommandId == command);
        _calendar = null;
        People.Clear();
        Places.Clear();
        Gear.Clear();
        Instruments.Clear();
        Items.Clear();
        Hazards.Clear();
        Apart.Clear();
        Cars.Clear();
        Stops.Clear();
        foreach (var entry in _entries)
        {
            if (entry.Seq > from && entry.Fact is TaskStarted start) Shaken.AddRange(Shakes(start, entry));
            Read(entry);
        }
    }

    /// <summary>Starts since a command that was taken back which would have waited on something without it.</summary>
    public List<string> Shaken { get; } = [];

    private IEnumerable<string> Shakes(TaskStarted start, Entry entry) =>
        new Waits(this, Cars[start.Car], start.Task, entry.RecordedAt).All([.. start.Crew], start.Place)
            .Where(w => w.Sure).Select(w => $"{start.Car}/{start.Task} was started on what is taken back ({w.Kind})");

    private void Read(Entry entry)
    {
        switch (entry.Fact)
        {
            case TaskFact fact:
                ReadTask(fact, Cars[fact.Car].Tasks[fact.Task], entry);
                break;
            case CarFact fact:
                ReadCar(fact, entry);
                break;
            default:
                ReadShop(entry.Fact, entry);
                break;
        }

        ReadCall(entry.Fact);
    }

    private void ReadShop(Fact fact, Entry entry)
    {
        switch (fact)
        {
            case ShopSet set:
                (Zone, Hours, Closed, _calendar) = (set.Zone, set.Hours, set.Closed, null);
                break;
            case PlaceSet set:
                Places[set.Place.Id] = set.Place;
                break;
            case PlaceTakenOut taken:
                Places.Remove(taken.Place);
                break;
            case GearSet set:
                Gear[set.Gear.Id] = set.Gear;
                break;
            case InstrumentSet set:
                Instruments[set.Instrument.Id] = set.Instrument;
                break;
            case HazardSet set:
                Hazards[set.Hazard.Id] = set.Hazard;
                break;
            case KeepApartSet set:
                Apart[set.Rule.Id] = set.Rule;
                break;
            case KeepApartTakenOut taken:
                Apart.Remove(taken.Rule);
                break;
            case ShopItemSet set:
                Items[set.Item.Id] = set.Item;
                break;
            case ShopItemChanged changed:
                Items[changed.Item] = Items[changed.Item] with { Condition = changed.To };
                break;
            default:
                ReadPeople(fact, entry);
                break;
        }
    }

    private void ReadPeople(Fact fact, Entry entry)
    {
        switch (fact)
        {
            case PersonSet set:
                var known = People.GetValueOrDefault(set.Person);
                People[set.Person] = new(set.Person, set.Position, set.WorksUnder, [.. set.Qualifications]) { In = known?.In ?? false };
                break;
            case PersonCameIn came:
                People[came.Person].In = true;
                break;
            case PersonWentOut went:
                People[went.Person].In = false;
                break;
            case PersonLeft left:
                (People[left.Person].Left, People[left.Person].In) = (true, false);
                break;
            default:
                ReadStop(fact, entry);
                break;
        }
    }

    private void ReadStop(Fact fact, Entry entry)
    {
        switch (fact)
        {
            case StopRaised raised:
                Stops[raised.Stop] = new(raised.Scope, raised.Car, raised.Task, raised.Place, raised.Clash, [.. raised.Told], entry.Actor, Crews(raised.Tasks));
                break;
            case StopHeard heard:
                Stops[heard.Stop].Heard.Add(heard.Person);
                break;
            case StopMadeSafe safe:
                Stops[safe.Stop].Safe = true;
                break;
            case StopReleased released:
                Stops.Remove(released.Stop);
                break;
        }
    }

    private HashSet<string> Crews(IEnumerable<string> tasks) =>
        [.. tasks.Select(key => key.Split('/')).SelectMany(k => Cars[k[0]].Tasks[k[1]].Crew.Select(m => m.Person))];
}

public sealed record PersonPicture(string Id, Domain.Plans.Position Position, string? WorksUnder, List<QualifiedFor> Qualifications)
{
    public bool In { get; set; }

    public bool Left { get; set; }

    public bool Can(string? what, DateTimeOffset at) => what is null || Qualifications.Any(q => q.For == what && !(q.Until <= at));
}

public sealed record StopPicture(Domain.Holds.StopScope Scope, string? Car, string? Task, string? Place, string? Clash, HashSet<string> Told, string By, HashSet<string> Crews)
{
    public HashSet<string> Heard { get; } = [];

    public bool Safe { get; set; }

    /// <summary>Whether work on a task at a place is under it.</summary>
    public bool Covers(string car, string task, string? place) => Scope switch
    {
        Domain.Holds.StopScope.Task => Car == car && Task == task,
        Domain.Holds.StopScope.Car => Car == car,
        Domain.Holds.StopScope.Place => Place == place,
        _ => true,
    };
}
