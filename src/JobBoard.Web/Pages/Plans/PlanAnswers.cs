using System.Collections.Immutable;
using JobBoard.Domain.Plans;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Plans;

/// <summary>What cannot be read or is not there, with its field.</summary>
public sealed record PlanProblems(ImmutableArray<FieldFault> Faults);

/// <summary>How a plan stands.</summary>
/// <param name="Faults">Faults that stand against it.</param>
/// <param name="Sum">How it stands in one line.</param>
/// <param name="Ready">When it can be ready then.</param>
/// <param name="Clean">Whether nothing stands against it.</param>
/// <param name="Differs">Whether it differs from the running plan.</param>
/// <param name="Stale">Whether the running plan was changed since.</param>
/// <param name="Html">All of it, to be shown.</param>
public sealed record PlanChecked(ImmutableArray<PlanFaultLine> Faults, string Sum, string Ready, bool Clean, bool Differs, bool Stale, string Html);

/// <summary>A plan put right.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Words">What was done.</param>
public sealed record PlanMended(Plan Plan, string Words);

/// <summary>A pasted table.</summary>
/// <param name="Plan">The plan with the rows that could be read.</param>
/// <param name="Rest">The rows that could not.</param>
/// <param name="Good">How many could.</param>
/// <param name="Html">What becomes of each, to be shown.</param>
public sealed record PlanTableRead(Plan Plan, string Rest, int Good, string Html);

/// <summary>What can no longer be reached once a task is in.</summary>
public sealed record PlanReached(ImmutableArray<PlanReachedLine> Reached);

/// <summary>One task of it.</summary>
/// <param name="Task">Which.</param>
/// <param name="IsBefore">Whether it comes before.</param>
/// <param name="Words">In a sentence.</param>
public sealed record PlanReachedLine(string Task, bool IsBefore, string Words);

/// <summary>A draft with others' changes taken in.</summary>
/// <param name="Plan">The draft.</param>
/// <param name="Origin">The running plan it is made from now.</param>
/// <param name="PlanAt">The entry that made that.</param>
/// <param name="Both">What both changed.</param>
public sealed record PlanMerged(Plan Plan, Plan Origin, long PlanAt, ImmutableArray<string> Both);
