using JobBoard.Domain.People;

namespace JobBoard.Web.SignIn;

/// <summary>Who is looking at a page.</summary>
public abstract record Viewer;

/// <summary>A person of the shop, signed in with their PIN.</summary>
/// <param name="Person">As they stand in the shop now.</param>
/// <param name="PinAt">When they last typed their PIN.</param>
public sealed record PersonViewer(Person Person, DateTimeOffset PinAt) : Viewer
{
    /// <summary>The person's id.</summary>
    public string Id => Person.Id;
}

/// <summary>A wall screen that was opened by a wall link: it sees the floor and does nothing.</summary>
/// <param name="TokenId">The link it was opened by.</param>
public sealed record WallViewer(string TokenId) : Viewer;

/// <summary>The holder of a customer's link: sees the page of one car and does nothing.</summary>
/// <param name="LinkId">The link.</param>
public sealed record CustomerViewer(string LinkId) : Viewer;

/// <summary>Nobody is signed in.</summary>
public sealed record NoViewer : Viewer;
