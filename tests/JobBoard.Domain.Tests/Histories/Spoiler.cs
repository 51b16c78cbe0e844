using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>Plants one fault in a plan that has none.</summary>
public sealed class Spoiler(Dice dice)
{
    public Plan Spoil(Plan plan)
    {
        var at = dice.Below(plan.Tasks.Length);
        var changer = plan.Tasks.First(t => !t.Changes.IsEmpty);
        return dice.Below(9) switch
        {
            0 => plan with { Links = plan.Links.Add(new Link(plan.Links[0].After, plan.Links[0].Task)) },
            1 => plan with { Links = plan.Links.Add(new Link("no-such-node", plan.Tasks[0].Id)) },
            2 => With(plan, at, t => t with { Hazards = [new("no-such-hazard")] }),
            3 => With(plan, at, t => t with { Gear = [new("crane", 90000)] }),
            4 => With(plan, at, t => t with { Crew = [new("lead", "alchemy")] }),
            5 => With(plan, at, t => t with { Estimate = new(50, 20, 10) }),
            6 => With(plan, at, t => t with { Place = "moon" }),
            7 => plan with { Tasks = plan.Tasks.Remove(changer), Links = plan.Links.RemoveAll(l => l.Task == changer.Id || l.After == changer.Id) },
            _ => With(plan, at, t => t with { Needs = [new(plan.Items[0].Id, ["no-such-condition"])] }),
        };
    }

    private static Plan With(Plan plan, int at, Func<PlanTask, PlanTask> change) => plan with { Tasks = plan.Tasks.SetItem(at, change(plan.Tasks[at])) };
}
