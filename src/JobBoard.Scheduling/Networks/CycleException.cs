namespace JobBoard.Scheduling;

/// <summary>Tasks wait on one another in a ring, so none of them can have a date.</summary>
/// <param name="tasks">The ring, each task coming after the one before it, and the first after the last.</param>
public sealed class CycleException(IReadOnlyList<int> tasks)
    : ArgumentException($"Tasks wait on one another in a ring: {string.Join(", ", tasks)}. Take out one of the links between them.")
{
    /// <summary>The ring, each task coming after the one before it, and the first after the last.</summary>
    public IReadOnlyList<int> Tasks { get; } = tasks;
}
