using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Items;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;
using JobBoard.Scheduling;

namespace JobBoard.Shop.Dates;

/// <summary>
/// What a board says of its tasks, for the critical path: signed-off ones at their actual times, those in hand or left
/// part-done with the work that remains, the rest with their usual estimate. A task under a stop is taken as if it could go on
/// now; the screens say that it waits.
/// </summary>
internal sealed class CarTimes(CarBoard car, CarNetwork network, ShopHours hours, DateTimeOffset now, WhatIf? whatIf = null)
{
    public TaskTimes Read()
    {
        var times = new TaskTimes(network.Network) { DateGiven = car.DateGiven?.ToUnixTimeSeconds() };
        foreach (var task in car.Plan.Tasks) SetTask(times, task, car.Tasks[task.Id]);
        foreach (var hold in car.Plan.Holds)
        {
            if (car.Holds[hold.Id] is { Counts: true, Released: { } released }) SetDone(times, hold.Id, released.At, released.At);
            else if (whatIf?.HeldUntil.TryGetValue(hold.Id, out var until) == true) times.SetNotBefore(network.NumberOf(hold.Id), until.ToUnixTimeSeconds());
        }

        return times;
    }

    private void SetTask(TaskTimes times, PlanTask task, TaskState state)
    {
        var number = network.NumberOf(task.Id);
        switch (state)
        {
            case { Counts: true }:
                SetDone(times, task.Id, state.StartedAt, state.WorkEndedAt ?? state.SignedOff!.At);
                return;
            case { Status: WorkStatus.ForSecondCheck, StartedAt: { } started }:
                times.SetInHand(number, started.ToUnixTimeSeconds(), 0);
                break;
            case { Status: WorkStatus.InHand or WorkStatus.PartDone, StartedAt: { } started }:
                times.SetInHand(number, started.ToUnixTimeSeconds(), 60L * Remaining.Minutes(task, state, hours, now));
                break;
            default:
                times.SetWork(number, 60L * (state.Revised ?? task.Estimate).Usual);
                break;
        }

        if (whatIf?.Left.TryGetValue(task.Id, out var left) == true) times.SetWork(number, 60L * left);
        foreach (var part in task.Parts.Where(p => whatIf?.PartsHere.Contains(p) != true)) SetPart(times, number, part);
    }

    private void SetDone(TaskTimes times, string node, DateTimeOffset? start, DateTimeOffset finish)
    {
        var end = finish.ToUnixTimeSeconds();
        times.SetSignedOff(network.NumberOf(node), Math.Min(start?.ToUnixTimeSeconds() ?? end, end), end);
    }

    // A part nobody has ordered comes its usual time after now; one that is overdue, or wrong, comes when somebody gives a new time.
    private void SetPart(TaskTimes times, int task, string id)
    {
        var at = IndexOf(id);
        if (at < 0 || !car.Parts.TryGetValue(id, out var part) || part.Status is PartStatus.CheckedRight or PartStatus.Arrived) return;
        DateTimeOffset? expected = part.Status == PartStatus.NotOrdered ? now.AddDays(car.Plan.Parts[at].LeadDays) : part.Expected;
        if (expected is { } when && (when > now || part.Status == PartStatus.NotOrdered)) times.SetNotBefore(task, when.ToUnixTimeSeconds());
        else times.SetNotKnown(task, at);
    }

    private int IndexOf(string part)
    {
        var parts = car.Plan.Parts;
        for (var i = 0; i < parts.Length; i++)
        {
            if (parts[i].Id == part) return i;
        }

        return -1;
    }
}
