using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Tests.Histories.Oracle;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>Plans gone over as a whole, and templates kept.</summary>
public sealed partial class Sender
{
    private Sent? GoOverThePlan()
    {
        if (Car() is not { } car) return null;
        var of = shop.Entries.Last(e => e.Fact is CarTakenIn or PlanChanged or PlanRevised && ((CarFact)e.Fact).Car == car.Id).Seq;
        var plan = GoneOver(car);
        if (dice.Chance(35)) plan = dice.Below(3) switch { 0 => Grown(plan), 1 => Longer(plan), _ => Furnished(plan) };
        if (dice.Chance(8)) plan = new Spoiler(dice).Spoil(plan);
        return new(dice.Chance(90) ? Chief() : Somebody(), new RevisePlan(plan, dice.Chance(90) ? of : Math.Max(0, of - dice.Between(1, 9)), Why()) { Car = car.Id });
    }

    private Plan GoneOver(CarPicture car) => dice.Below(8) switch
    {
        0 => Shrunk(car.Plan),
        1 => Longer(car.Plan),
        2 => Furnished(car.Plan),
        3 => Held(car.Plan),
        4 => Altered(car.Plan, t => t with { SecondCheck = !t.SecondCheck }),
        5 => Altered(car.Plan, t => t with { Hazards = [new("hands-in-belts")], HowLeft = ["as found", "covered"] }),
        6 => car.Plan.Holds.IsEmpty ? car.Plan : car.Plan with { Holds = car.Plan.Holds.SetItem(0, car.Plan.Holds[0] with { ReleasedBy = Position.Technician, Qualification = null }) },
        _ => Grown(car.Plan),
    };

    private Plan Altered(Plan plan, Func<PlanTask, PlanTask> how)
    {
        if (plan.Tasks.IsEmpty) return plan;
        var at = dice.Below(plan.Tasks.Length);
        return plan with { Tasks = plan.Tasks.SetItem(at, how(plan.Tasks[at])) };
    }

    private Plan Longer(Plan plan) => Altered(plan, t => t with { Estimate = new(t.Estimate.Low, t.Estimate.Usual + 10, t.Estimate.High + 20), Name = t.Name + " again" });

    private Plan Grown(Plan plan)
    {
        var task = Lane.Job(Id("extra")) with { Parts = dice.Chance(30) ? ["seal"] : [] };
        if (plan.Tasks.IsEmpty) return plan with { Tasks = [task] };
        var early = dice.Pick(plan.Tasks).Id;
        return plan with
        {
            Tasks = plan.Tasks.Insert(dice.Below(plan.Tasks.Length + 1), task),
            Links = [.. plan.Links, new Link(task.Id, early), .. plan.Holds.Any(h => h.Id == "handover") ? new[] { new Link("handover", task.Id) } : []],
        };
    }

    private Plan Shrunk(Plan plan)
    {
        if (plan.Tasks.Length < 3) return plan;
        var gone = dice.Pick(plan.Tasks.Where(t => t.Changes.IsEmpty && (t.Id.StartsWith("extra", StringComparison.Ordinal) || dice.Chance(30))).DefaultIfEmpty(plan.Tasks[^1]).ToList()).Id;
        var (before, after) = (plan.Links.Where(l => l.Task == gone).Select(l => l.After).ToList(), plan.Links.Where(l => l.After == gone).Select(l => l.Task).ToList());
        var joined = from b in before from a in after where !plan.Links.Any(l => l.Task == a && l.After == b) select new Link(a, b);
        return plan with { Tasks = plan.Tasks.RemoveAll(t => t.Id == gone), Links = [.. plan.Links.Where(l => l.Task != gone && l.After != gone), .. joined] };
    }

    /// <summary>A new item that a new task takes off and another puts back, and a part for it.</summary>
    private Plan Furnished(Plan plan)
    {
        var (item, off, on, part) = (Id("cover"), Id("extra"), Id("extra"), Id("clip"));
        return plan with
        {
            Items = plan.Items.Add(new() { Id = item, Name = item, Conditions = ["on", "off"], AtTakeIn = "on", AsForTheRoad = "on", Aspects = ["tight"] }),
            Parts = plan.Parts.Add(new(part, part)),
            Tasks = plan.Tasks.Add(Lane.Job(off) with { Changes = [new(item, "on", "off")] }).Add(Lane.Job(on) with { Changes = [new(item, "off", "on")], Parts = [part], StandsOn = [new(item, "tight")] }),
            Links = plan.Links.Add(new(on, off)),
        };
    }

    private Plan Held(Plan plan)
    {
        var link = dice.PickOrNone(plan.Links.Where(l => l is { Kind: LinkKind.FinishStart, Lag: >= 0 }).ToList());
        if (link is null) return Longer(plan);
        var hold = new HoldPoint { Id = Id("look"), Name = "Look", Stage = "s1", ReleasedBy = Position.Technician };
        return plan with { Holds = plan.Holds.Add(hold), Links = [.. plan.Links.Remove(link), new(hold.Id, link.After), new(link.Task, hold.Id)] };
    }

    private Sent? KeepATemplate()
    {
        if (Car() is not { } car) return null;
        var plan = dice.Chance(85) ? car.Plan : car.Plan with { Items = car.Plan.Items.Add(car.Plan.Items[0]) };
        return new(dice.Chance(85) ? Chief() : Somebody(), new SaveTemplate(dice.Chance(50) ? plan with { Id = Id("template"), Name = "A template" } : plan));
    }
}
