using JobBoard.Domain.Entries;

namespace JobBoard.Domain.Commands;

/// <summary>Puts a question to the customer: what the shop needs from them, shown on their page until they have answered.</summary>
/// <param name="Ask">An id of its own in the car.</param>
/// <param name="Words">What is needed, in words for the customer, at most 240 characters.</param>
public sealed record AskCustomer(string Ask, string Words) : CarCommand
{
    /// <summary>The day it is needed by, or nothing.</summary>
    public DateOnly? By { get; init; }

    public override IEnumerable<string> Footprint => [Foot.Ask(Car, Ask)];
}

/// <summary>Notes what the customer answered, by telephone, letter or in person; or that nothing is needed from them any more.</summary>
public sealed record TakeAnswer(string Ask, string Answer) : CarCommand
{
    public override IEnumerable<string> Footprint => [Foot.Ask(Car, Ask)];
}

/// <summary>Chooses a note for the customer's page, or takes it off that page again.</summary>
/// <param name="Note">The entry that wrote it (<see cref="Boards.Note.Seq"/>).</param>
/// <param name="Show">On the page, or off it.</param>
public sealed record ChooseNote(long Note, bool Show) : CarCommand
{
    public override IEnumerable<string> Footprint => [Foot.Note(Car, Note)];
}

/// <summary>Sets how customers reach the shop; empty for not that way.</summary>
public sealed record SetContact(string? Phone, string? Mail) : Command
{
    public override IEnumerable<string> Footprint => ["contact"];
}
