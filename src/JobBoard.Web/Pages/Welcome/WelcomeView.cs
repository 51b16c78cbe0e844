using System.Collections.Immutable;

namespace JobBoard.Web.Pages.Welcome;

/// <summary>What is still missing for the shop to work.</summary>
/// <param name="Steps">In the order in which they are best done.</param>
/// <param name="MayAsk">Whether the reader is the owner.</param>
public sealed record WelcomeView(ImmutableArray<WelcomeStep> Steps, bool MayAsk)
{
    /// <summary>Whether nothing is missing.</summary>
    public bool IsDone => Steps.All(s => s.IsDone);
}

/// <summary>One step.</summary>
/// <param name="Id">Stable, for the page.</param>
/// <param name="Title">What it is.</param>
/// <param name="State">How it stands, in a sentence.</param>
/// <param name="IsDone">Whether nothing is missing in it.</param>
/// <param name="Links">Where it is done.</param>
public sealed record WelcomeStep(string Id, string Title, string State, bool IsDone, ImmutableArray<WelcomeLink> Links)
{
    /// <summary>Whether the usual things can be loaded here.</summary>
    public bool LoadsUsual { get; init; }
}

/// <summary>A link to a form.</summary>
public sealed record WelcomeLink(string Path, string Words);
