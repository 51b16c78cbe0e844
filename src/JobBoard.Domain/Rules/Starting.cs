using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Starting a task, and joining one in hand.</summary>
internal static class Starting
{
    public static void Start(Ask ask, StartTask command)
    {
        if (ask.Task(command) is not { } q) return;
        CheckCrew(ask, q, command.Crew);
        if (command.Place is { } asked && !ask.Shop.Places.ContainsKey(asked)) ask.Bad("place", $"There is no place '{asked}'.");
        ask.Reasons.AddRange(StartCheck.Of(q, new(command.Crew, command.Place)));
        if (ask.Reasons.Count > 0) return;
        var place = q.Task.Place == "car" ? null : (command.Place ?? ResourceRules.PickPlace(q, null)?.Id);
        var anew = q.State.StartedAt is null || q.State.Status is WorkStatus.SignedOff or WorkStatus.Undone or WorkStatus.ForSecondCheck;
        ask.Facts.Add(new TaskStarted(command.Crew, place, ResourceRules.AllGear(q), anew, Began(ask, q, place), q.Index.Disturbs(q.Task.Id)) { Car = q.Car.Id, Task = q.Task.Id });
        if (!ask.Has(RuleBook.Ids.Lapse)) return;
        ask.Facts.AddRange(Lapsing.OfDisturbance(ask, q.Car, q.Index.Disturbs(q.Task.Id), q.Task.Id));
        if (anew) ask.Facts.AddRange(Lapsing.OwnReadings(ask, q));
    }

    private static void CheckCrew(Ask ask, TaskQuestion q, ImmutableArray<CrewMember> crew)
    {
        if (crew.IsDefaultOrEmpty)
        {
            ask.Bad("crew", $"Say who starts {q.Task.Name}.");
            return;
        }

        foreach (var twice in crew.GroupBy(m => m.Person).Where(g => g.Count() > 1))
            ask.Bad("crew", $"{{{twice.Key}}} is named more than once: one duty each.");
        if (crew.All(m => m.Person != ask.Actor) && ask.Person.Position < Position.Foreman)
            ask.Refuse(RuleBook.Ids.Position, "Start what you are on yourself; the foreman may start work for others.", q.Foremen, "crew");
    }

    private static ImmutableArray<StandingHazard> Began(Ask ask, TaskQuestion q, string? place) =>
    [
        .. q.Task.Hazards.Where(h => !Dangers.StandsWithWork(ask.Shop, h.Hazard))
            .Select(h => new StandingHazard(q.Task.Id + "/" + h.Hazard, h.Hazard, q.Task.Id, place, ask.At, ask.Actor, h.EndsByReading)),
    ];

    public static void Join(Ask ask, JoinTask command)
    {
        if (ask.Task(command) is not { } q) return;
        if (q.State.Status != WorkStatus.InHand) ask.Refuse(RuleBook.Ids.TaskState, $"{q.Task.Name} is not in hand: start it.", about: q.Task.Id);
        if (q.State.Crew.Any(m => m.Person == command.Person)) ask.Bad("person", $"{{{command.Person}}} is on it already.");
        if (command.Person != ask.Actor && ask.Person.Position < Position.Foreman)
            ask.Refuse(RuleBook.Ids.Position, "Join for yourself; the foreman may send others.", q.Foremen, "person");
        ask.Reasons.AddRange(HoldRules.Stops(q, q.State.Place ?? q.Car.Place));
        var crew = q.State.Crew.Add(new(command.Person, command.Duty));
        ask.Reasons.AddRange(Crewing.Lacks(ask.Shop, q.Car, q.Task, crew, ask.Now, ask.Rules).Where(w => w.About == command.Person || w.Rule == RuleBook.Ids.Input));
        if (ask.Reasons.Count == 0)
            ask.Facts.Add(new CrewJoined(new(command.Person, command.Duty), Crewing.IsFull(ask.Shop, q.Task, crew, ask.Now)) { Car = q.Car.Id, Task = q.Task.Id });
    }
}
