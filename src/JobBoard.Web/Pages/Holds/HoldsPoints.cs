using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Bay;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Holds;

/// <summary>Hold points as the person who looks at the holds sees them.</summary>
internal sealed class HoldsPoints(Picture picture, Person me)
{
    private const int MostNamed = 6;
    private const int MostComing = 3;

    /// <summary>Those of a car that are not released, or whose release has lapsed.</summary>
    public IEnumerable<HoldsPoint> Of(CarBoard car) => car.Plan.Holds.Where(h => !car.Holds[h.Id].Counts).Select(h => Of(car, h))
        .OrderBy(p => p.Earliest ?? DateTimeOffset.MaxValue).Select((p, at) => p with { IsLater = !p.WorkIsDone && at >= MostComing });

    private HoldsPoint Of(CarBoard car, HoldPoint hold)
    {
        var against = Releasing.Against(picture.Shop, car, hold, me, picture.Now, RuleBook.Full);
        var work = against.Where(w => w.About != "actor").DistinctBy(w => w.Words).ToArray();
        var q = Releasing.Question(picture.Shop, car, hold, picture.Now, RuleBook.Full);
        return new()
        {
            Id = hold.Id,
            CarId = car.Id,
            Car = car.Name,
            Name = hold.Name,
            Asks = hold.Asks,
            ReleasedBy = Releasers(q, hold),
            Lapsed = car.Holds[hold.Id].Released?.LapsedBy is { } lapse ? picture.Shop.Say(Looks.Cause(q, lapse)) : null,
            WaitsOn = [.. work.Take(MostNamed).Select(w => BayMapping.Wait(picture, w))],
            More = Math.Max(0, work.Length - MostNamed),
            Earliest = picture.Dates.Of(picture.Shop, car, picture.Now).Nodes.GetValueOrDefault(hold.Id)?.EarlyFinish is { } at ? picture.Local(at) : null,
            MayRelease = against.IsEmpty,
            LetThrough = me.Position >= Position.Foreman && IsReached(car, hold) ? LetThroughView.Of(car, picture.Open(car), hold.Id) : null,
        };
    }

    // Before anything of its work was begun nobody asks to be let past it.
    private static bool IsReached(CarBoard car, HoldPoint hold) =>
        PlanIndex.Of(car.Plan).LinksInto(hold.Id).Any(l => car.Tasks.TryGetValue(l.After, out var t) ? t.Status != WorkStatus.NotStarted : car.Holds[l.After].Counts);

    private string Releasers(TaskQuestion q, HoldPoint hold)
    {
        var who = Releasing.MayRelease(q, hold).Select(picture.Shop.NameOf).ToArray();
        var asked = $"a {hold.ReleasedBy.ToString().ToLowerInvariant()} or above{(hold.Qualification is null ? "" : $", qualified for {hold.Qualification}")}";
        return who.Length == 0 ? $"Asks for {asked}: nobody may, their own work left out." : $"{string.Join(" or ", who)} may release it.";
    }
}
