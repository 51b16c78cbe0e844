using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;

namespace JobBoard.Shop.Demo;

/// <summary>Work in hand: readings while it is done, sign-off at its end, left part-done in the evening.</summary>
internal sealed class CrewWork(CrewSession session, CrewReadings readings)
{
    private static readonly TimeSpan LookAgain = TimeSpan.FromMinutes(15);

    private readonly Dictionary<(string Car, string Task), Job> _jobs = [];
    private readonly Dictionary<(string Car, string Task), string> _waitsForEndOf = [];

    /// <summary>Whether anybody is tied by work.</summary>
    public bool IsBusy => _jobs.Values.Any(j => !j.Task.NowAndThen);

    /// <summary>Whether anything is in hand.</summary>
    public bool IsAny => _jobs.Count > 0;

    /// <summary>When something is next to be read or signed off.</summary>
    public DateTimeOffset? NextAt => _jobs.Values.Select(j => (DateTimeOffset?)j.NextAt).Min();

    /// <summary>Whether a task left part-done waits for another one's end before it is worth going on with.</summary>
    public bool WaitsForEnd(CarBoard car, string task) =>
        _waitsForEndOf.TryGetValue((car.Id, task), out var other) && car.Tasks[other] is not { Status: WorkStatus.SignedOff };

    /// <summary>How many shop minutes a task takes when luck is what it is.</summary>
    public int Minutes(string car, PlanTask task, TaskState state)
    {
        var e = state.Revised ?? task.Estimate;
        var luck = session.Luck($"minutes {car}/{task.Id}");
        var minutes = luck < 0.5 ? e.Low + ((e.Usual - e.Low) * (0.5 + luck)) : e.Usual + ((e.High - e.Usual) * (luck - 0.5) * 0.6);
        return Math.Max(5, (int)minutes);
    }

    /// <summary>Notes that a task is in hand now, by whomever, so that it is brought to its end.</summary>
    public void Took(CarBoard car, PlanTask task)
    {
        if (_jobs.ContainsKey((car.Id, task.Id))) return;
        var state = car.Tasks[task.Id];
        var left = Math.Max(5, Minutes(car.Id, task, state) - Remaining.Done(state, session.Hours, session.Now));
        var missing = CrewReadings.Missing(car, task).ToImmutableArray();
        var due = missing.Select((r, i) => (session.Hours.AddWorking(session.Now, left * (i + 1) / (missing.Length + 1)), r));
        _jobs.Add((car.Id, task.Id), new(car.Id, task, session.Hours.AddWorking(session.Now, left), new(task.NowAndThen ? [] : due)));
    }

    /// <summary>Reads and signs off what is due.</summary>
    public async Task Finish()
    {
        foreach (var job in _jobs.Values.Where(j => j.NextAt <= session.Now).OrderBy(j => j.NextAt).ThenBy(j => j.Car + "/" + j.Task.Id, StringComparer.Ordinal).ToArray())
        {
            if (State(job).Status != WorkStatus.InHand) _jobs.Remove(job.Key);
            else if (IsStopped(job)) job.End = session.Now + LookAgain;
            else if (Signer(job) is not { } by) job.End = session.Now + LookAgain;
            else if (job.End <= session.Now) await SignOff(job, by).ConfigureAwait(false);
            else await ReadDue(job, by).ConfigureAwait(false);
        }
    }

    /// <summary>Leaves everything but what only wants a look now and then.</summary>
    public async Task LeaveAll()
    {
        foreach (var job in _jobs.Values.Where(j => !j.Task.NowAndThen).OrderBy(j => j.Car + "/" + j.Task.Id, StringComparer.Ordinal).ToArray())
            await Leave(job).ConfigureAwait(false);
    }

    private bool IsStopped(Job job) => session.Orders.AmongOthers
        && session.Shop.Stops.Values.Any(s => Looks.Covers(s, session.Shop.Cars[job.Car], job.Task.Id, State(job).Place ?? session.Shop.Cars[job.Car].Place));

    private TaskState State(Job job) => session.Shop.Cars[job.Car].Tasks[job.Task.Id];

    /// <summary>The first of the crew who signs and is in, else the foreman.</summary>
    private string? Signer(Job job)
    {
        var people = session.Shop.People;
        return State(job).Crew.Select(m => m.Person).FirstOrDefault(p => people[p] is { IsIn: true, Position: > Position.Apprentice })
            ?? people.Values.FirstOrDefault(p => p is { IsIn: true, Position: Position.Foreman })?.Id;
    }

    private async Task ReadDue(Job job, string by)
    {
        while (job.Due.TryPeek(out var next) && next.At <= session.Now)
            await readings.Log(job.Car, job.Task, job.Due.Dequeue().Need, by).ConfigureAwait(false);
    }

    private async Task SignOff(Job job, string by)
    {
        foreach (var need in CrewReadings.Missing(session.Shop.Cars[job.Car], job.Task)) await readings.Log(job.Car, job.Task, need, by).ConfigureAwait(false);
        var command = new SignOffTask { Car = job.Car, Task = job.Task.Id };
        var against = await session.Try(by, command).ConfigureAwait(false);
        if (against.IsEmpty)
        {
            _jobs.Remove(job.Key);
            return;
        }

        if (against.Any(w => w.Rule != RuleBook.Ids.FinishLink))
        {
            if (!session.Orders.AmongOthers) throw session.Unexpected(by, command, against);
            job.End = session.Now + LookAgain;
            return;
        }

        _waitsForEndOf[job.Key] = against[0].About!;
        await Leave(job).ConfigureAwait(false);
    }

    private async Task Leave(Job job)
    {
        _jobs.Remove(job.Key);
        if (State(job) is not { Status: WorkStatus.InHand, Crew: [var first, ..] }) return;
        var how = How(job.Task);
        var items = job.Task.Changes.ToImmutableSortedDictionary(c => c.Item, c => LeftIn(job, c, how), StringComparer.Ordinal);
        if (!await session.Do(first.Person, new LeavePartDone { Car = job.Car, Task = job.Task.Id, How = how, Items = items }).ConfigureAwait(false)) _jobs.Add(job.Key, job);
    }

    /// <summary>With the pressure let down where that is a way to leave it, else the first way the plan names.</summary>
    private static string? How(PlanTask task) =>
        task.HowLeft.FirstOrDefault(h => h.Contains("let down", StringComparison.Ordinal)) ?? task.HowLeft.FirstOrDefault();

    /// <summary>The condition on the way that the words name, else the present one.</summary>
    private string LeftIn(Job job, Change change, string? how) =>
        change.Through.FirstOrDefault(c => how?.Contains(c, StringComparison.Ordinal) == true) ?? session.Shop.Cars[job.Car].Items[change.Item].Condition;

    /// <summary>A task in hand: when it ends, and what is read when.</summary>
    private sealed class Job(string car, PlanTask task, DateTimeOffset end, Queue<(DateTimeOffset At, ReadingNeed Need)> due)
    {
        public string Car => car;

        public PlanTask Task => task;

        public (string Car, string Task) Key => (car, task.Id);

        public DateTimeOffset End { get; set; } = end;

        public Queue<(DateTimeOffset At, ReadingNeed Need)> Due => due;

        public DateTimeOffset NextAt => due.TryPeek(out var next) && next.At < End ? next.At : End;
    }
}
