using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.EndToEnd.Crew;

/// <summary>Who of the shop can be on which task.</summary>
internal sealed class CrewBook(ShopState shop)
{
    // Those of the story's devices first, the foreman and the owner never: they release and check.
    private static readonly ImmutableArray<string> Order = ["inga", "sol", "noor", "tove", "runa", "jarle", "petra", "bela"];

    /// <summary>Whether a person is qualified.</summary>
    public bool Is(string person, string? qualification) => shop.People[person].IsQualified(qualification, DateTimeOffset.UtcNow);

    /// <summary>People for all duties of a task in their order, the first led by one of the leads given where one can.</summary>
    public ImmutableArray<string> For(PlanTask task, IEnumerable<string> leads)
    {
        var slots = Crewing.Slots(task);
        foreach (var lead in leads.Concat(Order).Where(p => Is(p, slots[0].Qualification)))
        {
            if (Fill(slots, [lead]) is { } crew) return crew;
        }

        throw new InvalidOperationException($"Nobody can do {task.Name}.");
    }

    private ImmutableArray<string>? Fill(ImmutableArray<Crewing.Slot> slots, ImmutableArray<string> crew)
    {
        if (crew.Length == slots.Length) return crew;
        foreach (var person in Order.Where(p => !crew.Contains(p) && Is(p, slots[crew.Length].Qualification)))
        {
            if (Fill(slots, crew.Add(person)) is { } whole) return whole;
        }

        return null;
    }
}
