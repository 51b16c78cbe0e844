using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Tests.Deciding;

/// <summary>
/// A small shop that commands are sent to: an owner, a foreman, three technicians and an apprentice, two bays, a bench, a hoist over bay 1.
/// </summary>
internal sealed class TestShop
{
    public static readonly DateTimeOffset Monday = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    private int _number;

    public ShopState State { get; private set; } = ShopState.Empty;

    public DateTimeOffset Now { get; set; } = Monday;

    public RuleBook Rules { get; set; } = RuleBook.Full;

    public List<Entry> Entries { get; } = [];

    public static TestShop Open()
    {
        var shop = new TestShop();
        shop.Does("owner", new SetPerson("owner", "Olga", Position.Owner));
        shop.Does("owner", new SetPerson("foreman", "Fritz", Position.Foreman) { Qualifications = [new("inspection"), new("lifting")] });
        shop.Does("owner", new SetPerson("inga", "Inga", Position.Technician) { Qualifications = [new("lifting"), new("fuel")] });
        shop.Does("owner", new SetPerson("sol", "Sol", Position.Technician) { Qualifications = [new("lifting")] });
        shop.Does("owner", new SetPerson("tove", "Tove", Position.Technician));
        shop.Does("owner", new SetPerson("mirek", "Mirek", Position.Apprentice) { WorksUnder = "inga" });
        shop.Does("owner", new SetPlace(new() { Id = "bay-1", Name = "Bay 1", Kind = "bay", Area = new(0, 0, 4, 6) }));
        shop.Does("owner", new SetPlace(new() { Id = "bay-2", Name = "Bay 2", Kind = "bay", Area = new(5, 0, 4, 6) }));
        shop.Does("owner", new SetPlace(new() { Id = "bench", Name = "Bench", Kind = "bench", Area = new(30, 0, 2, 2) }));
        shop.Does("owner", new SetGear(new() { Id = "hoist", Name = "Hoist", Kind = "hoist", RatedKg = 1000, Sweep = new(0, 0, 4, 8) }));
        shop.Does("owner", new SetHazard(new() { Id = "suspended-load", Name = "Suspended load", Sign = "W015", Ends = HazardEnd.WithTheCondition, PinsCar = true, HangsInGear = true }));
        shop.Does("owner", new SetHazard(new() { Id = "under-the-car", Name = "Somebody under the car", Sign = "W001", Ends = HazardEnd.WithTheWork }));
        shop.Does("owner", new SetHazard(new() { Id = "fuel-under-pressure", Name = "Fuel under pressure", Sign = "W021", Ends = HazardEnd.WhenMadeSafe }));
        shop.Does("owner", new SetHazard(new() { Id = "hot-work", Name = "Hot work", Sign = "W021", Ends = HazardEnd.WithTheWork }));
        shop.Does("owner", new SetHazard(new() { Id = "hot-coolant", Name = "Hot coolant", Sign = "W017", Ends = HazardEnd.ByReading }));
        shop.Does("owner", new SetKeepApart(new() { Id = "load-under", A = new("suspended-load"), B = new("under-the-car"), Scope = Scope.Sweep, Reason = "a load can fall" }));
        shop.Does("owner", new SetKeepApart(new() { Id = "hot-fuel", A = new("hot-work"), B = new("fuel-under-pressure"), Scope = Scope.Distance, Metres = 11, Reason = "fuel burns" }));
        foreach (var person in new[] { "owner", "foreman", "inga", "sol", "tove", "mirek" }) shop.Does(person, new ComeIn(person));
        return shop;
    }

    /// <summary>Takes a car in with a plan of these tasks.</summary>
    public TestShop With(string car, Plan plan, string? place = "bay-1")
    {
        Does("foreman", new TakeInCar(car, plan, place) { Car = car });
        return this;
    }

    public static PlanTask Task(string id, int minutes = 60) => new() { Id = id, Name = id, Stage = "s", Estimate = new(minutes, minutes, minutes * 2) };

    public static Plan Plan(params PlanTask[] tasks) => new() { Id = "p", Name = "p", Stages = [new("s", "Stage")], Tasks = [.. tasks] };

    public Decision Ask(string actor, Command command, long? seen = null, DateTimeOffset? at = null) =>
        Domain.Rules.Deciding.Decide(State, Envelope(actor, command, seen, at), Now, Rules);

    /// <summary>Sends a command that must be accepted; gives the facts.</summary>
    public ImmutableArray<Fact> Does(string actor, Command command, DateTimeOffset? at = null)
    {
        var envelope = Envelope(actor, command, null, at);
        var decision = Domain.Rules.Deciding.Decide(State, envelope, Now, Rules);
        var facts = Assert.IsType<Decision.Accepted>(decision, exactMatch: true).Facts;
        foreach (var fact in facts)
        {
            var entry = new Entry(State.Seq + 1, fact.Stream, actor, Domain.Rules.Deciding.When(envelope, Now), Now, envelope.Id, fact);
            Entries.Add(entry);
            State = Folding.Apply(State, entry);
        }

        LastCommand = envelope.Id;
        return facts;
    }

    public Guid LastCommand { get; private set; }

    /// <summary>Sends a command that must be refused; gives the rules that refused it, in order without repeats.</summary>
    public string[] Refused(string actor, Command command, long? seen = null) =>
        [.. Assert.IsType<Decision.Refused>(Ask(actor, command, seen)).Reasons.Select(r => r.Rule).Distinct()];

    public ImmutableArray<WaitingOn> Reasons(string actor, Command command) =>
        Assert.IsType<Decision.Refused>(Ask(actor, command)).Reasons;

    public StartTask Start(string car, string task, params string[] crew) =>
        new([.. crew.Select(c => c.Contains(':') ? new CrewMember(c.Split(':')[0], c.Split(':')[1]) : new CrewMember(c))]) { Car = car, Task = task };

    public void DoTask(string car, string task, string person)
    {
        Does(person, Start(car, task, person));
        Later(30);
        Does(person, new SignOffTask { Car = car, Task = task });
    }

    public void Later(int minutes) => Now = Now.AddMinutes(minutes);

    private Envelope Envelope(string actor, Command command, long? seen, DateTimeOffset? at) =>
        new(new Guid(++_number, 0, 0, new byte[8]), actor, at ?? Now, seen, command);
}
