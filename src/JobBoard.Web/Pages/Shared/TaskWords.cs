using JobBoard.Domain.Work;
using JobBoard.Web.Marks;

namespace JobBoard.Web.Pages.Shared;

/// <summary>Where a task stands: its bolt and its words.</summary>
public static class TaskWords
{
    /// <summary>How its bolt is drawn. A task for second check is not signed off yet: the bolt alone.</summary>
    public static BoltState Mark(TaskState state) => state switch
    {
        { Status: WorkStatus.InHand } => BoltState.InHand,
        { Status: WorkStatus.Undone } or { Lapsed: true } => BoltState.OutOfLine,
        { Status: WorkStatus.SignedOff } => BoltState.SignedOff,
        _ => BoltState.NotStarted,
    };

    /// <summary>in hand, left part-done, lapsed, ...</summary>
    public static string State(TaskState state) => state switch
    {
        { Status: WorkStatus.InHand, Reopened: true } => "in hand, being done again",
        { Status: WorkStatus.InHand } => "in hand",
        { Status: WorkStatus.PartDone } => "left part-done",
        { Lapsed: true, SignedOff.LapsedBy.ByPlan: true } => "signed off; lapsed by plan, taken again later",
        { Lapsed: true } => "lapsed: has to be done again",
        { Status: WorkStatus.ForSecondCheck } => "for second check",
        { Status: WorkStatus.SignedOff } => "signed off",
        { Status: WorkStatus.Undone } => "undone: has to be done again",
        _ => "not started",
    };
}
