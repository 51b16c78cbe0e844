using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Rules;
using JobBoard.Web.Pages.Bay;

namespace JobBoard.Web.Pages.Shared;

/// <summary>Letting one named task through one named hold.</summary>
/// <param name="CarId">The car's id.</param>
/// <param name="Car">The car.</param>
/// <param name="Hold">A hold point, a stop, or a reading as <c>task/reading</c>.</param>
/// <param name="Tasks">Tasks that wait on it, the nearest to starting first.</param>
public sealed record LetThroughView(string CarId, string Car, string Hold, ImmutableArray<BayChoice> Tasks)
{
    private const int Most = 40;

    /// <summary>What may be let through, or nothing where no task waits on that hold.</summary>
    public static LetThroughView? Of(CarBoard car, ImmutableArray<Evaluated> open, string hold)
    {
        var waiting = open.Where(e => e.Waiting.Any(w => w.About == hold)).OrderBy(e => e.Waiting.Length).Take(Most)
            .Select(e => new BayChoice(e.Task.Id, e.Task.Name)).ToImmutableArray();
        return waiting.IsEmpty ? null : new(car.Id, car.Name, hold, waiting);
    }
}
