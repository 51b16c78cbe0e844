using System.Collections.Immutable;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Plans;

/// <summary>The mid-engine template can be run by a crew of seven in which one person alone has the fuel qualification.</summary>
public class TemplateFaultsTests
{
    private static readonly ImmutableArray<Person> Seven =
    [
        Someone("owner", Position.Owner, "inspection", "lifting"),
        Someone("foreman", Position.Foreman, "inspection", "lifting"),
        Someone("first", Position.Technician, "lifting", "signalling", "coolant", "inspection"),
        Someone("second", Position.Technician, "lifting", "signalling", "welding"),
        Someone("third", Position.Technician, "lifting", "auto-electric", "coolant"),
        Someone("fourth", Position.Technician, "fuel", "signalling"),
        Someone("young", Position.Apprentice) with { WorksUnder = "first" },
    ];

    private static readonly ShopFacts Shop = new()
    {
        People = Seven,
        Places = [Somewhere("bay"), Somewhere("bench"), Somewhere("fuel corner")],
        Gear = [Lifting("hoist", 1000m), Lifting("load beam", 750m), Lifting("jack", 2000m)],
        Hazards = Seed.Hazards,
        KeepApart = Seed.KeepApart,
        Items = Seed.Items,
        Now = new DateTimeOffset(2026, 3, 2, 7, 0, 0, TimeSpan.Zero),
    };

    [Fact]
    public void Template_has_no_faults() => Assert.Empty(PlanFaults.Find(Seed.Plan, Shop));

    [Fact]
    public void Template_reads_strictly()
    {
        var reading = PlanReader.Read(Seed.PlanText);

        Assert.Empty(reading.Faults);
        Assert.Equal(PlanReader.Write(Seed.Plan), PlanReader.Write(reading.Plan!));
    }

    [Fact]
    public void Only_fuel_work_is_left_undone_without_its_one_person()
    {
        var faults = PlanFaults.Find(Seed.Plan, Shop with { People = [.. Seven.Where(p => p.Id != "fourth")] });

        var fuel = Seed.Plan.Tasks.Index().Where(t => t.Item.Crew.Any(c => c.Qualification == "fuel"));
        Assert.Equal(fuel.Select(t => $"tasks[{t.Index}]"), faults.Where(f => f.Code == "crew").Select(f => f.At.Split('.')[0]).Distinct());
        Assert.All(faults, f => Assert.Equal("crew", f.Code));
    }

    private static Person Someone(string id, Position position, params string[] qualified) =>
        new() { Id = id, Name = id, Position = position, Qualifications = [.. qualified.Select(q => new QualifiedFor(q))] };

    private static Place Somewhere(string kind) =>
        new() { Id = kind.Replace(' ', '-'), Name = kind, Kind = kind, Area = new Area(0, 0, 4, 6) };

    private static Gear Lifting(string kind, decimal rated) =>
        new() { Id = kind.Replace(' ', '-'), Name = kind, Kind = kind, RatedKg = rated };
}
