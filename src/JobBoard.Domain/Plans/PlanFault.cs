namespace JobBoard.Domain.Plans;

/// <summary>Something in a plan that makes it unfit to run.</summary>
/// <param name="Code">The rule of <see cref="PlanFaults.Rules"/> that says so.</param>
/// <param name="At">Its place in the JSON, such as <c>tasks[12].needs[0]</c>; for JSON that cannot be read at all the line.</param>
/// <param name="Words">What is wrong, in a sentence that names tasks and items as people do.</param>
/// <param name="Repair">What would put it right, where there is one way that suggests itself.</param>
public sealed record PlanFault(string Code, string At, string Words, string? Repair = null)
{
    /// <summary>The tie between two nodes that the repair asks for, where it does.</summary>
    public PlanTie? Tie { get; init; }

    /// <inheritdoc/>
    public override string ToString() => $"{At}: {Words}" + (Repair is null ? "" : $" ({Repair})");
}

/// <summary>A tie between two nodes that would put a fault right: <paramref name="Node"/> comes after, or takes again, <paramref name="Other"/>.</summary>
/// <param name="Node">The later node.</param>
/// <param name="Other">The earlier node.</param>
/// <param name="TakesAgain">Whether it is to take the other's evidence again, not only to come after it.</param>
public sealed record PlanTie(string Node, string Other, bool TakesAgain = false);
