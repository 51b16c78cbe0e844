using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Tests.Histories.Oracle;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>
/// The people of a made-up shop and what they send: mostly what makes sense as things stand, now and then what does
/// not. It looks at the oracle's picture, never at the program's state.
/// </summary>
public sealed partial class Sender(Dice dice, Picture shop)
{
    private readonly List<(int Weight, Func<Sent?> Make)> _moves = [];
    private readonly List<(Guid Id, string Actor, DateTimeOffset At)> _sent = [];
    private DateTimeOffset _now;
    private int _made;

    /// <summary>A command, who sends it and whether word of it may come late.</summary>
    private sealed record Sent(string Actor, Command Command, bool MayBeLate = false);

    /// <summary>The next thing somebody sends.</summary>
    public Envelope Next(DateTimeOffset now, long head)
    {
        _now = now;
        if (_moves.Count == 0) _moves.AddRange([.. WorkMoves(), .. HoldMoves(), .. CarMoves(), .. ShopMoves()]);
        while (true)
        {
            if (Draw() is not { } sent) continue;
            var occurred = sent.MayBeLate && dice.Chance(12) ? now.AddMinutes(-dice.Between(1, 180)) : now;
            var seen = dice.Chance(60) ? head : dice.Chance(50) ? (long?)null : Math.Max(0, head - dice.Between(1, 12));
            var envelope = new Envelope(dice.Guid(), sent.Actor, occurred, seen, sent.Command);
            _sent.Add((envelope.Id, sent.Actor, now));
            return envelope;
        }
    }

    private Sent? Draw()
    {
        var at = dice.Below(_moves.Sum(m => m.Weight));
        foreach (var (weight, make) in _moves)
        {
            if (at < weight) return make();
            at -= weight;
        }

        return null;
    }

    private string Id(string kind) => $"{kind}-{++_made}";

    private List<string> Staff => [.. shop.People.Values.Where(p => !p.Left).Select(p => p.Id)];

    private List<string> Present => [.. shop.People.Values.Where(p => p.In).Select(p => p.Id)];

    /// <summary>Mostly somebody who is in.</summary>
    private string Somebody() => Present is { Count: > 0 } present && dice.Chance(85) ? dice.Pick(present) : dice.Chance(95) ? dice.Pick(Staff) : "nobody";

    /// <summary>Mostly the foreman or the owner.</summary>
    private string Chief() => dice.Chance(85) ? dice.Pick([ShopMaker.Foreman, ShopMaker.Foreman, ShopMaker.Owner]) : Somebody();

    private CarPicture? Car() => shop.Cars.Count == 0 ? null : dice.Pick(shop.Cars.Values.ToList());

    private string SomeCar() => Car() is { } car && dice.Chance(98) ? car.Id : "no-such-car";

    private (CarPicture Car, TaskPicture Task)? InHand() => shop.InHand.ToList() is { Count: > 0 } all ? dice.Pick(all) : null;

    private (CarPicture Car, TaskPicture Task)? Task(Func<TaskPicture, bool> like)
    {
        var all = shop.Cars.Values.SelectMany(c => c.Tasks.Values.Where(like).Select(t => (c, t))).ToList();
        return all.Count == 0 ? null : dice.Pick(all);
    }

    private (CarPicture Car, TaskPicture Task)? AnyTask() => Task(_ => true);

    private string SomeTask(CarPicture car) => dice.Chance(97) && car.Plan.Tasks.Length > 0 ? dice.Pick(car.Plan.Tasks).Id : "no-such-task";

    private string Why() => dice.Chance(95) ? dice.Pick(["seen to it", "as agreed", "it slipped"]) : "";

    /// <summary>People for a task who are in, free and qualified as far as there are any; a stranger now and then.</summary>
    private List<CrewMember> CrewFor(PlanTask task)
    {
        var busy = shop.InHand.Where(h => !h.Car.Task(h.Task.Id).NowAndThen).SelectMany(h => h.Task.Crew.Select(m => m.Person)).ToHashSet();
        var free = dice.Shuffled(shop.People.Values.Where(p => p.In && !busy.Contains(p.Id)));
        var crew = new List<CrewMember>();
        foreach (var need in task.Crew)
            for (var n = 0; n < need.Count; n++)
                if (free.FirstOrDefault(p => p.Can(need.Qualification, _now) && Beside(p, crew)) is { } person)
                {
                    crew.Add(new CrewMember(person.Id, need.Duty));
                    free.Remove(person);
                }

        if (dice.Chance(5) || crew.Count == 0) crew.Add(new CrewMember(Somebody(), task.Crew[0].Duty));
        if (dice.Chance(6)) crew.Add(new CrewMember(dice.Pick(Staff), dice.Pick(["hand", "lead", "guide"])));
        return crew;
    }

    private bool Beside(PersonPicture person, List<CrewMember> crew) =>
        person.Position != Position.Apprentice || crew.Any(m => m.Person == person.WorksUnder) || dice.Chance(8);
}
