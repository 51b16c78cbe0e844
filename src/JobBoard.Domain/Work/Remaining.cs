using JobBoard.Domain.Boards;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Work;

/// <summary>How much of a task is left: shop minutes of work by the full crew.</summary>
public static class Remaining
{
    /// <summary>One slot of the schedule, in minutes: what a task past its high estimate is taken to need still.</summary>
    public const int Slot = 5;

    /// <summary>Shop minutes the full crew was on it, the present stretch included.</summary>
    public static int Done(TaskState state, ShopHours hours, DateTimeOffset now) =>
        state.MinutesDone + (state is { Status: WorkStatus.InHand, FullSince: { } since } ? hours.WorkingMinutes(since, now) : 0);

    /// <summary>usual − done; past usual, high − done; past high, one slot.</summary>
    public static int Minutes(PlanTask task, TaskState state, ShopHours hours, DateTimeOffset now)
    {
        var estimate = state.Revised ?? task.Estimate;
        var done = Done(state, hours, now);
        if (done < estimate.Usual) return estimate.Usual - done;
        return done < estimate.High ? estimate.High - done : Slot;
    }

    /// <summary>Whether it has taken longer than its high estimate.</summary>
    public static bool IsOver(PlanTask task, TaskState state, ShopHours hours, DateTimeOffset now) =>
        Done(state, hours, now) >= (state.Revised ?? task.Estimate).High;
}
