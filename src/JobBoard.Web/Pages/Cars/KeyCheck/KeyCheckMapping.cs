using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Holds;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Shop.Dates;
using JobBoard.Web.Live;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Cars.KeyCheck;

/// <summary>Makes the key check of a car for one person.</summary>
public sealed class KeyCheckMapping
{
    private const int MostWords = 3;
    private const int MostOpen = 8;

    private readonly Picture _picture;
    private readonly ShopState _shop;
    private readonly CarBoard _car;
    private readonly Person _me;
    private readonly PlanIndex _index;
    private readonly CarDates _dates;

    private KeyCheckMapping(Picture picture, CarBoard car, Person me)
    {
        (_picture, _shop, _car, _me, _index) = (picture, picture.Shop, car, me, PlanIndex.Of(car.Plan));
        _dates = picture.Dates.Of(picture.Shop, car, picture.Now);
    }

    /// <summary>The key check of a car; without a hold point where there is none, or no such car or person.</summary>
    public static KeyCheckView Of(Picture picture, string carId, string personId)
    {
        if (!picture.Shop.Cars.TryGetValue(carId, out var car) || !picture.Shop.People.TryGetValue(personId, out var me)) return new() { CarId = carId, Car = carId, At = picture.Minute };
        var empty = new KeyCheckView { CarId = car.Id, Car = car.Name, At = picture.Minute, Place = car.Place is { } place ? picture.Shop.Places.GetValueOrDefault(place)?.Name : null };
        return HoldOf(car) is { } hold ? new KeyCheckMapping(picture, car, me).View(empty, hold) : empty;
    }

    /// <summary>The key check of a car's plan, or nothing.</summary>
    public static HoldPoint? HoldOf(CarBoard car) => car.Plan.Holds.FirstOrDefault(h => h.KeyCheck);

    private KeyCheckView View(KeyCheckView empty, HoldPoint hold)
    {
        var look = KeyChecks.Of(_shop, _car, hold, _picture.Now);
        var steps = look.Open.Select(Step).ToArray();
        var released = _car.Holds[hold.Id].Released;
        var against = released is { LapsedBy: null } ? [] : Releasing.Against(_shop, _car, hold, _me, _picture.Now, RuleBook.Full);
        var starts = Calling.Behind(_index, hold.Id).Select(t => _car.Tasks[t]).ToArray();
        var begun = starts.Any(t => t.StartedAt is not null && t.Status != WorkStatus.SignedOff);
        return empty with
        {
            Hold = hold.Id,
            Asks = hold.Asks,
            Rows = [.. look.Rows.Select(Row)],
            Open = [.. steps.Take(MostOpen)],
            More = Math.Max(0, steps.Length - MostOpen),
            Earliest = _dates.Nodes.GetValueOrDefault(hold.Id)?.EarlyFinish is { } at ? _picture.Local(at) : null,
            Call = [.. look.Asked.Select(a => Call(a.Person, a.Answer))],
            Me = look.Asked.Any(a => a.Person == _me.Id) ? _me.Id : null,
            TapsForOthers = _me.Position >= Position.Foreman,
            Word = released is { LapsedBy: null } word ? $"Given by {_shop.NameOf(word.By)}, {ShopTime.Since(_picture.Local(word.At), _picture.Now)}" : null,
            WordStands = released is { LapsedBy: null } && look.Asked.All(a => a.Answer is { Counts: true }),
            MayGiveWord = released is not { LapsedBy: null } && MayPost.May<ReleaseHold>(_me.Position) && against.IsEmpty,
            NotYet = NotYet(look, against),
            Outcome = Outcome(starts),
            MayFail = begun && released is not null && MayPost.May<FailStart>(_me.Position),
            MayUndo = begun ? [.. MayUndo(hold)] : [],
            ItemsToSay = [.. starts.Where(t => t.Status == WorkStatus.InHand).SelectMany(t => _index.Task(t.Id)!.Changes).Where(c => Looks.HasToBeSaid(_shop, _car, c)).Select(ToSay)],
        };
    }

    private BayHowLeft ToSay(Change change) =>
        new($"items[{change.Item}]", $"{_index.Item(change.Item)?.Name} is", [.. change.Path.Distinct().Select(c => new BayChoice(c, c))]);

    private IEnumerable<(string, string, string)> MayUndo(HoldPoint hold)
    {
        var before = _index.AllBefore(hold.Id).ToHashSet(StringComparer.Ordinal);
        return _index.InOrder.Where(before.Contains).Reverse().Select(_index.Task).OfType<PlanTask>()
            .Where(t => _car.Tasks[t.Id].Status is WorkStatus.SignedOff or WorkStatus.ForSecondCheck && KeyChecks.SystemOf(_index, t.Id) is not null)
            .Select(t => (t.Id, t.Name, _car.Plan.Stages.FirstOrDefault(s => s.Id == t.Stage)?.Name ?? ""));
    }

    private string? Outcome(TaskState[] starts)
    {
        if (starts.FirstOrDefault(t => t.Status == WorkStatus.InHand) is { } now) return $"{_index.NameOf(now.Id)} in hand: {ShopTime.Names([.. now.Crew.Select(m => _shop.NameOf(m.Person))])}.";
        return starts.FirstOrDefault(t => t.SignedOff is not null) is { SignedOff: { } word } done
            ? $"{_index.NameOf(done.Id)} signed off by {_shop.NameOf(word.By)}, {ShopTime.DayClock(_picture.Local(word.At))}."
            : null;
    }

    private static string NotYet(KeyLook look, ImmutableArray<WaitingOn> against)
    {
        var no = look.Rows.Count(r => !r.Go);
        var call = look.Asked.Count(a => a.Answer is not { Counts: true });
        string[] words = [.. no == 0 ? [] : new[] { $"{no} no go" }, .. call == 0 ? [] : new[] { $"{call} not called go" }];
        return words.Length > 0 ? string.Join(", ", words) : against.FirstOrDefault(a => a.About == "actor")?.Words ?? "";
    }

    private KeyRowView Row(KeyRow row)
    {
        var evidence = row.Nodes.Select(Evidence).ToImmutableArray();
        var words = row.Go ? Spoken(row) : row.Against.Select(w => _shop.Say(w.Words).TrimEnd('.')).ToArray();
        var mark = row.Go ? BoltState.SignedOff : row.Nodes.Any(IsOutOfLine) ? BoltState.OutOfLine : BoltState.NotStarted;
        return new(row.System?.ToString() ?? "else", NameOf(row.System), mark, row.Go, [.. words.Take(MostWords)], row.Go ? 0 : Math.Max(0, words.Length - MostWords), evidence);
    }

    /// <summary>A system as it is called.</summary>
    public static string NameOf(KeySystem? system) => system switch
    {
        KeySystem.PeopleAndPlace => "People, place",
        null => "All before",
        _ => system.Value.ToString(),
    };

    /// <summary>The last readings and releases that speak for a system.</summary>
    private string[] Spoken(KeyRow row)
    {
        var releases = row.Nodes.Where(n => _car.Holds.ContainsKey(n)).Select(n => $"{_index.NameOf(n)}: {_shop.NameOf(_car.Holds[n].Released!.By)}");
        var readings = row.Nodes.Reverse().SelectMany(n => _index.Task(n)?.Readings.Select(r => (Need: r, Last: Looks.Latest(_car, n, r.Id))) ?? [])
            .Where(r => r.Last is not null).Select(r => $"{r.Need.Name} {r.Last!.Text} {r.Last.Unit}, {ReadingWords.Limit(r.Need)}");
        string[] words = [.. readings.Take(2), .. releases.Reverse().Take(1)];
        return words.Length > 0 ? words : [$"{row.Nodes.Length.ToString(CultureInfo.InvariantCulture)} signed off"];
    }

    private KeyEvidenceView Evidence(string node)
    {
        if (_car.Holds.TryGetValue(node, out var hold))
            return new(_index.NameOf(node), hold.Released is { } word ? Signed("released", word) : "not released", Mark(hold.Released));
        var (task, state) = (_index.Task(node)!, _car.Tasks[node]);
        var readings = task.Readings.Select(r => (Need: r, Last: Looks.LatestOfAll(_car, node, r.Id))).Where(r => r.Last is not null)
            .Select(r => $"{r.Need.Name} {r.Last!.Text} {r.Last.Unit} ({ReadingWords.Limit(r.Need)}, {(r.Last.LapsedBy is null ? ReadingWords.Verdict(r.Last.Verdict) : "lapsed")})");
        var how = state.SignedOff is { } signed ? Signed("signed off", signed) : state.Status == WorkStatus.InHand ? "in hand" : state.Status == WorkStatus.Undone ? "undone" : "not done";
        if (state.Status == WorkStatus.ForSecondCheck) how += ", " + TaskWords.State(state);
        return new(task.Name, string.Join("; ", readings.Prepend(state.Checked is { } check ? how + ", " + Signed("checked", check) : how)), TaskWords.Mark(state));
    }

    /// <summary>Whether it was done and no longer counts.</summary>
    private bool IsOutOfLine(string node) => _car.Tasks.TryGetValue(node, out var task)
        ? task is { Status: WorkStatus.Undone } or { SignedOff.LapsedBy.Holds: true }
        : Mark(_car.Holds[node].Released) == BoltState.OutOfLine;

    private static BoltState Mark(SignOff? word) => word is null ? BoltState.NotStarted : word.LapsedBy is { Holds: true } ? BoltState.OutOfLine : BoltState.SignedOff;

    private string Signed(string what, SignOff word) =>
        $"{what} by {_shop.NameOf(word.By)}, {ShopTime.Since(_picture.Local(word.At), _picture.Now)}" + (word.LapsedBy is { Holds: true } lapse ? $"; lapsed {ShopTime.Since(_picture.Local(lapse.At), _picture.Now)}, {_shop.NameOf(lapse.By)}" : "");

    private KeyStepView Step(OpenStep step)
    {
        var name = _index.NameOf(step.Node);
        var what = step.Kind switch
        {
            OpenKind.Again => name + ", again",
            OpenKind.Check => "Second check of " + name,
            OpenKind.Answer => $"{name}: again or not?",
            OpenKind.Reading => $"{_index.Task(step.Node)!.Readings.First(r => r.Id == step.Reading).Name}, again or released",
            OpenKind.Release => "Release: " + name,
            _ => name,
        };
        var at = _dates.Nodes.GetValueOrDefault(step.Node)?.EarlyFinish;
        return new(what, Who(step), at is { } when && when > _picture.Now ? _picture.Local(when) : null);
    }

    private string Who(OpenStep step)
    {
        if (step.Kind is OpenKind.Release or OpenKind.Answer || _car.Holds.ContainsKey(step.Node)) return "foreman";
        var state = _car.Tasks[step.Node];
        if (!state.Crew.IsEmpty) return ShopTime.Names([.. state.Crew.Select(m => _shop.NameOf(m.Person))]);
        if (step.Kind == OpenKind.Check) return "somebody else";
        var crew = Crewing.Propose(_shop, _car, _index.Task(step.Node)!, _picture.Now, treatFree: _shop.People.Keys.ToHashSet(StringComparer.Ordinal));
        return crew is { } found ? "such as " + ShopTime.Names([.. found.Select(m => _shop.NameOf(m.Person))]) : "nobody in is qualified";
    }

    private KeyCallView Call(string person, CallAnswer? answer)
    {
        var name = _shop.NameOf(person);
        return answer switch
        {
            null => new(person, name, "not-called", "not called"),
            { Lapsed: { } lapse } => new(person, name, "lapsed", $"lapsed {ShopTime.Since(_picture.Local(lapse.At), _picture.Now)}: {Lapsed(lapse)}"),
            { Go: false } => new(person, name, "no", "no go: " + answer.Why),
            _ => new(person, name, "go", "go" + (answer.By == person ? "" : ", tapped by " + _shop.NameOf(answer.By))),
        };
    }

    private string Lapsed(CallLapse lapse)
    {
        var about = _index.IsNode(lapse.About) ? _index.NameOf(lapse.About) : _index.Item(lapse.About)?.Name ?? _shop.Items.GetValueOrDefault(lapse.About.Replace("shop/", "", StringComparison.Ordinal))?.Name;
        return $"{about ?? "the car"} {lapse.Kind.Replace('-', ' ')}, {_shop.NameOf(lapse.By)}";
    }
}
