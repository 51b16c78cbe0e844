using System.Collections.Immutable;
using JobBoard.Web.Marks;

namespace JobBoard.Web.Pages.Customer;

/// <summary>
/// Everything a customer is told, and nothing else: their page and its pushes are made from this alone. It holds words ready to be
/// read, marks and lists of them; no id, no person, no task, no place, no other car has a member here. A new member is a decision.
/// </summary>
public sealed record CustomerView
{
    /// <summary>What the shop is called.</summary>
    public required string Shop { get; init; }

    /// <summary>What the car is called.</summary>
    public required string Car { get; init; }

    /// <summary>Now and next in a sentence.</summary>
    public required string Now { get; init; }

    /// <summary>The date given.</summary>
    public required CustomerDate Date { get; init; }

    /// <summary>What the shop needs from the customer.</summary>
    public ImmutableArray<CustomerNeed> Waiting { get; init; } = [];

    /// <summary>The stages in their order.</summary>
    public ImmutableArray<CustomerStage> Stages { get; init; } = [];

    /// <summary>Notes chosen for them, the newest first.</summary>
    public ImmutableArray<CustomerNote> Notes { get; init; } = [];

    /// <summary>Whether there are earlier notes that the page has no room for.</summary>
    public bool HasEarlierNotes { get; init; }

    /// <summary>The number to call, or nothing.</summary>
    public string? Phone { get; init; }

    /// <summary>The address to write to, or nothing.</summary>
    public string? Mail { get; init; }
}

/// <summary>The date as the customer was told it.</summary>
/// <param name="Lead">What it is: "The date we gave you".</param>
/// <param name="Day">"Monday 7 December", or nothing while there is none.</param>
/// <param name="Clock">"by 16:00", or nothing.</param>
/// <param name="Moves">Each time it moved and why, the newest first.</param>
public sealed record CustomerDate(string Lead, string? Day, string? Clock, ImmutableArray<CustomerMove> Moves);

/// <summary>One time the date moved.</summary>
/// <param name="Moved">"Moved on Tuesday 24 November from Thursday 3 to Monday 7 December."</param>
/// <param name="Why">Why, in the foreman's words for the customer; or nothing.</param>
public sealed record CustomerMove(string Moved, string? Why);

/// <summary>What the shop needs from the customer.</summary>
/// <param name="Words">What.</param>
/// <param name="By">"by Friday 4 December", or nothing.</param>
public sealed record CustomerNeed(string Words, string? By);

/// <summary>A stage.</summary>
/// <param name="Name">The plan's words for the customer.</param>
/// <param name="Bolt">Not begun, in hand or done.</param>
/// <param name="State">"done Tuesday 24 November", "in hand now", "next".</param>
public sealed record CustomerStage(string Name, BoltState Bolt, string State);

/// <summary>A note chosen for the customer.</summary>
/// <param name="Day">When it was written.</param>
/// <param name="Words">The note.</param>
public sealed record CustomerNote(string Day, string Words);
