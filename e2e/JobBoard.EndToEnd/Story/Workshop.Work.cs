using System.Collections.Immutable;
using JobBoard.Domain.Plans;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace JobBoard.EndToEnd.Story;

/// <summary>Tasks by taps, from start to second check, each tap followed on the screens that have to show it.</summary>
internal sealed partial class Workshop
{
    private static readonly ImmutableArray<string> Leads = ["inga", "sol", "noor", "tove"];

    private readonly Dictionary<string, HashSet<string>> _workedBy = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ImmutableArray<string>> _inHand = new(StringComparer.Ordinal);
    private int _turn;

    /// <summary>A task by its id.</summary>
    public PlanTask TaskOf(string id) => PlanIndex.Of(Plan).Task(id) ?? throw new ArgumentException($"There is no task '{id}'.", nameof(id));

    /// <summary>The device in a person's hands; the shared tablet changes hands for those without one.</summary>
    public async Task<Hands> HandsOf(string person)
    {
        if (Everybody.FirstOrDefault(h => h.Person == person) is { } own) return own;
        await Tablet.ChangeTo(person);
        return Tablet;
    }

    /// <summary>A crew for a task, led by the technicians in turn.</summary>
    public ImmutableArray<string> CrewFor(PlanTask task)
    {
        _turn++;
        return Crews.For(task, Leads.Select((_, i) => Leads[(i + _turn) % Leads.Length]));
    }

    /// <summary>Does a task from start to second check.</summary>
    public async Task Do(PlanTask task, ImmutableArray<string>? crew = null)
    {
        var people = crew ?? CrewFor(task);
        var lead = await Start(task, people);
        foreach (var need in task.Readings) await Read(lead, task, need, Numbers.InLimits(need));
        await SignOff(lead, task);
    }

    /// <summary>Starts a task by a tap of the first of its crew.</summary>
    public async Task<Hands> Start(PlanTask task, ImmutableArray<string> crew)
    {
        var lead = await HandsOf(crew[0]);
        var form = await lead.ToStart(Car, task.Id, crew);
        var watched = await Delays.Watch(InHandEverywhere(task, crew));
        var answer = await lead.Device.Send(form);
        await Done(answer, form.Page, $"{crew[0]} starts {task.Name}");
        Took(task, crew);
        await watched.Shown("started", answer.At);
        return lead;
    }

    /// <summary>What the screens have to show when a task is in hand.</summary>
    public IReadOnlyCollection<Sight> InHandEverywhere(PlanTask task, ImmutableArray<string> crew) =>
    [
        .. Everybody.Where(h => crew.Contains(h.Person)).Select(h => new Sight(h.Bay, $"#task-{Car}-{task.Id}", task.Name)),
        new(Oskar.Car, $"#node-{task.Id}-state", "in hand"),
        new(Wall, "#floor-words", OnTheWall(task, crew)),
    ];

    private static string OnTheWall(PlanTask task, ImmutableArray<string> crew) =>
        $"{task.Name} {(task.Place == "car" ? "" : "(Heron coupe) ")}{char.ToUpperInvariant(crew[0][0])}{crew[0][1..]}";

    /// <summary>Logs a reading; both the bay and the foreman's page show the number with its verdict.</summary>
    public async Task Read(Hands hands, PlanTask task, ReadingNeed need, string text, string verdict = "in limits")
    {
        var shown = $"{text} {need.Unit}, {verdict}";
        var watched = await Delays.Watch([new(hands.Bay, $"#reading-{Car}-{task.Id}-{need.Id}", shown), new(Oskar.Car, $"#node-{task.Id}-reading-{need.Id}", shown)]);
        var answer = await hands.Read(Car, task.Id, need, text, hands.Person == "jarle" ? "petra" : "jarle");
        await Done(answer, hands.Bay.Page, $"{hands.Person} reads {need.Name}");
        Worked(task.Id).Add(hands.Person);
        await watched.Shown("reading", answer.At);
    }

    /// <summary>Signs a task off, has its dangers made safe and the second check given.</summary>
    public async Task SignOff(Hands hands, PlanTask task)
    {
        var crew = _inHand[task.Id];
        var watched = await Delays.Watch(
        [
            .. Everybody.Where(h => crew.Contains(h.Person)).Select(h => new Sight(h.Bay, $"#task-{Car}-{task.Id}", Gone: true)),
            new(Oskar.Car, $"#node-{task.Id}-state", task.SecondCheck ? "for second check" : "signed off"),
        ]);
        var answer = await hands.SignOff(Car, task.Id);
        await Done(answer, hands.Bay.Page, $"{hands.Person} signs {task.Name} off");
        await watched.Shown("signed off", answer.At);
        await MakeSafe(task);
        if (task.SecondCheck) await Check(task);
        Say($"{task.Name}: {string.Join(", ", crew)}");
    }

    private async Task MakeSafe(PlanTask task)
    {
        foreach (var hazard in task.Hazards.Where(h => h.Hazard == "fuel-under-pressure"))
        {
            var id = $"{task.Id}/{hazard.Hazard}";
            var watched = await Delays.Watch([new(Oskar.Holds, $"#danger-{Car}-{task.Id}-{hazard.Hazard}", Gone: true)]);
            await Expect(Oskar.InHolds($"#danger-{Car}-{task.Id}-{hazard.Hazard}")).ToContainTextAsync("Fuel under pressure");
            var answer = await Oskar.MakeSafe(Car, id);
            await Done(answer, Oskar.Holds.Page, $"made safe: {task.Name}");
            await watched.Shown("made safe", answer.At);
        }
    }

    /// <summary>Has a task checked by somebody who did not work on it.</summary>
    public async Task Check(PlanTask task)
    {
        var own = Worked(task.Id);
        var watched = await Delays.Watch([new(Oskar.Car, $"#node-{task.Id}-state", "checked by"), new(Oskar.Holds, $"#check-{Car}-{task.Id}", Gone: true)]);
        var by = new[] { Inga, Sol, Noor }.FirstOrDefault(h => !own.Contains(h.Person) && Crews.Is(h.Person, task.SecondCheckQualification));
        var answer = await LooksAgain(by?.Bay.Page ?? Marit.Holds.Page, () => by is null ? Marit.Check(Car, task.Id) : by.Check(Car, task.Id));
        await Done(answer, by?.Bay.Page ?? Marit.Holds.Page, $"second check of {task.Name}");
        await watched.Shown("checked", answer.At);
    }

    /// <summary>Whoever is told that it changed since they looked, looks again and says it again.</summary>
    private static async Task<Answer> LooksAgain(IPage page, Func<Task<Answer>> say)
    {
        var answer = await say();
        if (answer.IsDone || !(await page.Locator($"#{answer.Form} .answer").InnerTextAsync()).Contains("Changed since you looked", StringComparison.Ordinal)) return answer;
        return await say();
    }

    /// <summary>Releases a hold point from a desk.</summary>
    public async Task<Answer> Release(string hold, Desk? desk = null)
    {
        var by = desk ?? Oskar;
        var point = PlanIndex.Of(Plan).Hold(hold)!;
        await Expect(by.InHolds($"#point-{Car}-{hold}")).ToContainTextAsync(point.Asks);
        var watched = await Delays.Watch([new(Oskar.Car, $"#node-{hold}-state", "released by"), new(Oskar.Holds, $"#point-{Car}-{hold}", Gone: true)]);
        var answer = await by.Release($"{Car}-{hold}", "Seen: " + point.Asks, "looked at with the crew");
        await Done(answer, by.Holds.Page, $"release of {point.Name}");
        await watched.Shown("released", answer.At);
        Say($"released: {point.Name}");
        return answer;
    }

    /// <summary>Says that a tap was to be done, with what its form shows where it was not.</summary>
    public static async Task Done(Answer answer, IPage page, string what)
    {
        if (answer.IsDone) return;
        Assert.Fail($"{what}: {answer.Outcome}: {await page.Locator($"#{answer.Form} .answer").InnerTextAsync()}");
    }

    /// <summary>Notes that people have a task in hand.</summary>
    public void Took(PlanTask task, ImmutableArray<string> crew)
    {
        _inHand[task.Id] = crew;
        Worked(task.Id).UnionWith(crew);
    }

    /// <summary>Notes that a person had a hand in a task in passing, by a reading.</summary>
    public void HadAHand(PlanTask task, string person) => Worked(task.Id).Add(person);

    /// <summary>Whether anybody had a hand in a task.</summary>
    public bool WasWorkedOn(string task) => _workedBy.ContainsKey(task);

    private HashSet<string> Worked(string task) => _workedBy.TryGetValue(task, out var people) ? people : _workedBy[task] = new(StringComparer.Ordinal);
}
