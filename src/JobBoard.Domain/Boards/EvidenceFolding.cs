using JobBoard.Domain.Entries;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Boards;

/// <summary>Folds facts about evidence, releases and dangers of a car.</summary>
internal static class EvidenceFolding
{
    public static CarBoard Fold(CarBoard car, CarFact fact, Entry entry) => fact switch
    {
        EvidenceLapsed f => Lapse(car, f),
        EvidenceTakenAgain f => TakeAgain(car, f),
        HoldReleased f => WithHold(car, f.Hold, _ => new(f.Hold, new(entry.Actor, entry.OccurredAt), f.Why, f.Evidence)),
        StartFailed f => WithHold(car, f.Hold, h => new(h.Id)),
        HazardMadeSafe f => car with { Standing = car.Standing.RemoveAll(s => s.Id == f.Hazard) },
        HazardEndedByReading f => car with { Standing = car.Standing.RemoveAll(s => s.Id == f.Hazard) },
        _ => car,
    };

    private static CarBoard Lapse(CarBoard car, EvidenceLapsed f) => f.Kind switch
    {
        EvidenceKind.Reading => TaskFolding.WithReading(car, f.Id, null, r => r.LapsedBy is null && r.At < f.Lapse.At ? r with { LapsedBy = f.Lapse } : r),
        EvidenceKind.SignOff => TaskFolding.With(car, f.Id, t => t with { SignedOff = t.SignedOff! with { LapsedBy = f.Lapse } }),
        _ => WithHold(car, f.Id, h => h with { Released = h.Released! with { LapsedBy = f.Lapse } }),
    };

    private static CarBoard TakeAgain(CarBoard car, EvidenceTakenAgain f)
    {
        if (car.Holds.TryGetValue(f.Node, out var hold) && hold.Released is { LapsedBy: { } lapse } released)
            return WithHold(car, f.Node, h => h with { Released = released with { LapsedBy = lapse with { TakenAgainBy = f.By } } });
        return TaskFolding.With(car, f.Node, t => t.SignedOff is { LapsedBy: { } l } s
            ? t with { SignedOff = s with { LapsedBy = l with { TakenAgainBy = f.By } } }
            : t);
    }

    private static CarBoard WithHold(CarBoard car, string id, Func<HoldState, HoldState> change) =>
        car.Holds.TryGetValue(id, out var hold) ? car with { Holds = car.Holds.SetItem(id, change(hold)) } : car;
}
