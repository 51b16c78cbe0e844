using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Whether the task is in a state from which it can start, and how it was left.</summary>
internal static class StateRules
{
    public static IEnumerable<WaitingOn> Of(TaskQuestion q)
    {
        if (!q.Has(RuleBook.Ids.TaskState)) yield break;
        var state = q.State;
        if (state.Status == WorkStatus.InHand)
        {
            var who = string.Join(", ", state.Crew.Select(m => "{" + m.Person + "}"));
            yield return new(RuleBook.Ids.TaskState, $"{q.Task.Name} is in hand already, by {who}.", [.. state.Crew.Select(m => m.Person)], About: q.Task.Id);
        }
        else if (state.Status == WorkStatus.ForSecondCheck && !state.Lapsed)
        {
            yield return new(RuleBook.Ids.TaskState, $"{q.Task.Name} is done and waits for its second check.", About: q.Task.Id);
        }
        else if (state.Status == WorkStatus.SignedOff && !state.Lapsed)
        {
            yield return new(RuleBook.Ids.TaskState, $"{q.Task.Name} is signed off.", [state.SignedOff!.By], About: q.Task.Id);
        }
    }
}
