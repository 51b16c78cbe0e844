using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;
using JobBoard.Web.Live;
using JobBoard.Web.Marks;

namespace JobBoard.Web.Pages.Customer;

/// <summary>The one way from a car to what its customer is told.</summary>
public static class CustomerMapping
{
    /// <summary>Most moves of the date that are told.</summary>
    private const int MostMoves = 4;

    /// <summary>Room for notes, in characters; at least the newest is shown whole.</summary>
    private const int RoomForNotes = 2400;

    /// <summary>What the customer of a car is told; nothing where there is no such car.</summary>
    public static CustomerView? Of(Picture picture, string? carId)
    {
        if (carId is null || !picture.Shop.Cars.TryGetValue(carId, out var car)) return null;
        var stages = Stages(picture, car);
        var done = stages.All(s => s.Bolt == BoltState.SignedOff);
        var notes = Notes(picture, car);
        var chosen = car.Notes.Count(n => n.Chosen);
        return new()
        {
            Shop = picture.Shop.Name,
            Car = car.Name,
            Now = NowAndNext(stages, done),
            Date = Date(picture, car, done),
            Waiting = [.. WordAwaited(car), .. Asked(picture, car)],
            Stages = stages,
            Notes = notes,
            HasEarlierNotes = notes.Length < chosen,
            Phone = Something(picture.Shop.Phone),
            Mail = Something(picture.Shop.Mail),
        };
    }

    /// <summary>Now is what somebody is on; while nobody is, the first that is begun.</summary>
    private static string NowAndNext(ImmutableArray<CustomerStage> stages, bool done)
    {
        CustomerStage[] inHand = [.. stages.Where(s => s.Bolt == BoltState.InHand)];
        if (inHand.Length == 0) inHand = [.. stages.Where(s => s.State == CustomerWords.Begun).Take(1)];
        return CustomerWords.Now([.. inHand.Select(s => s.Name)], stages.FirstOrDefault(s => s.State == CustomerWords.Next)?.Name, done);
    }

    private static string? Something(string words) => words.Length == 0 ? null : words;

    private static CustomerDate Date(Picture picture, CarBoard car, bool done)
    {
        var date = car.DateGiven is { } given ? picture.Local(given) : (DateTimeOffset?)null;
        var lead = CustomerWords.Lead(date, picture.Now, done);
        var shown = done ? null : date;
        return new(lead, shown is { } day ? CustomerWords.Day(day, picture.Now) : null, shown is { } at ? CustomerWords.Clock(at) : null, Moves(picture, car));
    }

    /// <summary>Given again with the same date it did not move: words given then are why it moved the time before.</summary>
    private static ImmutableArray<CustomerMove> Moves(Picture picture, CarBoard car)
    {
        var moves = new List<CustomerMove>();
        GivenDate? before = null;
        foreach (var given in car.DatesGiven)
        {
            var moved = before is not null && given.Date != before.Date;
            if (moved) moves.Add(new(CustomerWords.Moved(Local(before!.Date), Local(given.Date), picture.Local(given.At), picture.Now), given.WordsForCustomer));
            else if (given.WordsForCustomer is { } why && moves.Count > 0) moves[^1] = moves[^1] with { Why = why };
            before = given;
        }

        return [.. Enumerable.Reverse(moves).Take(MostMoves)];

        DateTimeOffset? Local(DateTimeOffset? at) => at is { } one ? picture.Local(one) : null;
    }

    /// <summary>Hold points that wait for the customer's word, once all that comes before them is done.</summary>
    private static IEnumerable<CustomerNeed> WordAwaited(CarBoard car) =>
        from hold in car.Plan.Holds
        where hold.CustomerWords is { Length: > 0 } && !car.Holds[hold.Id].Counts
        where car.Plan.Links.Where(l => l.Task == hold.Id).All(l => Counts(car, l.After))
        select new CustomerNeed(hold.CustomerWords!, null);

    private static IEnumerable<CustomerNeed> Asked(Picture picture, CarBoard car) => car.Asks.Values.Where(a => a.IsOpen).OrderBy(a => a.By ?? DateOnly.MaxValue).ThenBy(a => a.AskedAt)
        .Select(a => new CustomerNeed(a.Words, a.By is { } by ? "by " + CustomerWords.Day(new(by.ToDateTime(default), TimeSpan.Zero), picture.Now) : null));

    private static bool Counts(CarBoard car, string node) =>
        car.Tasks.TryGetValue(node, out var task) ? task.Counts : !car.Holds.TryGetValue(node, out var hold) || hold.Counts;

    private static ImmutableArray<CustomerStage> Stages(Picture picture, CarBoard car)
    {
        var stages = new List<CustomerStage>();
        var next = true;
        foreach (var stage in car.Plan.Stages)
        {
            TaskState[] tasks = [.. car.Plan.Tasks.Where(t => t.Stage == stage.Id).Select(t => car.Tasks[t.Id])];
            Domain.Holds.HoldState[] holds = [.. car.Plan.Holds.Where(h => h.Stage == stage.Id).Select(h => car.Holds[h.Id])];
            if (tasks.Length + holds.Length == 0) continue;
            var done = tasks.All(t => t.Counts) && holds.All(h => h.Counts);
            var inHand = tasks.Any(t => t.Status == WorkStatus.InHand);
            var begun = inHand || tasks.Any(t => t.Status != WorkStatus.NotStarted) || holds.Any(h => h.Released is not null);
            var end = tasks.Select(t => t.WorkEndedAt).Concat(holds.Select(h => h.Released?.At)).Max();
            var bolt = done ? BoltState.SignedOff : inHand ? BoltState.InHand : BoltState.NotStarted;
            var words = CustomerWords.State(done, inHand, begun, next && !begun, end is { } at ? picture.Local(at) : null, picture.Now);
            next &= done || begun;
            stages.Add(new(stage.CustomerName.Length > 0 ? stage.CustomerName : stage.Name, bolt, words));
        }

        return [.. stages];
    }

    private static ImmutableArray<CustomerNote> Notes(Picture picture, CarBoard car)
    {
        var notes = ImmutableArray.CreateBuilder<CustomerNote>();
        var room = RoomForNotes;
        foreach (var note in car.Notes.Where(n => n.Chosen).OrderByDescending(n => n.At))
        {
            room -= note.Words.Length + 100;
            if (room < 0 && notes.Count > 0) break;
            notes.Add(new(CustomerWords.Day(picture.Local(note.At), picture.Now), note.Words));
        }

        return notes.ToImmutable();
    }
}
