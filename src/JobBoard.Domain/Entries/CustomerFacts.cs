namespace JobBoard.Domain.Entries;

/// <summary>The customer was asked for something.</summary>
/// <param name="Ask">Its id in the car.</param>
/// <param name="Words">What is needed, in words for the customer.</param>
/// <param name="By">The day it is needed by, or nothing.</param>
public sealed record CustomerAsked(string Ask, string Words, DateOnly? By) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Ask(Car, Ask)];
}

/// <summary>The customer answered, or nothing is needed from them any more.</summary>
public sealed record CustomerAnswered(string Ask, string Answer) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Ask(Car, Ask)];
}

/// <summary>A note was chosen for the customer's page, or taken off it.</summary>
/// <param name="Note">The entry that wrote it.</param>
/// <param name="Show">On the page, or off it.</param>
public sealed record NoteChosen(long Note, bool Show) : CarFact
{
    public override IEnumerable<string> Footprint => [Foot.Note(Car, Note)];
}

/// <summary>How customers reach the shop was set; empty for not that way.</summary>
public sealed record ContactSet(string Phone, string Mail) : Fact
{
    public override IEnumerable<string> Footprint => ["contact"];
}
