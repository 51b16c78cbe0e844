using System.Collections.Immutable;
using JobBoard.Web.Marks;
using JobBoard.Web.Pages.Bay;

namespace JobBoard.Web.Pages.Cars.Car;

/// <summary>One stage of a car: its tasks and hold points with how each stands.</summary>
public sealed record CarStageView
{
    /// <summary>When this was evaluated, to the minute.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The car's id.</summary>
    public required string CarId { get; init; }

    /// <summary>The stage's id; empty when it is gone.</summary>
    public string Id { get; init; } = "";

    /// <summary>The stage.</summary>
    public string Name { get; init; } = "";

    /// <summary>How it stands, in words: "3 of 8 signed off, 1 in hand".</summary>
    public string Stands { get; init; } = "";

    /// <summary>Whether it is the one to look at: something is in hand, can start, or has to be done again.</summary>
    public bool IsOpen { get; init; }

    /// <summary>Tasks and hold points in the order of the work.</summary>
    public ImmutableArray<CarNode> Nodes { get; init; } = [];
}

/// <summary>A task or hold point of a car.</summary>
public sealed record CarNode
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>Its bolt; nothing for a hold point, which has a tag.</summary>
    public BoltState? Bolt { get; init; }

    /// <summary>How it stands, in words, and who: "in hand, Inga and Sol".</summary>
    public required string State { get; init; }

    /// <summary>What to know at a glance beside it: "can start", "waits on 3 things", "earliest Tue 1 Dec".</summary>
    public string? Side { get; init; }

    /// <summary>Everything it waits on.</summary>
    public ImmutableArray<BayWait> WaitsOn { get; init; } = [];

    /// <summary>Dates, slack and the like: what, and how it stands.</summary>
    public ImmutableArray<(string What, string Stands)> Facts { get; init; } = [];

    /// <summary>Its readings.</summary>
    public ImmutableArray<CarReading> Readings { get; init; } = [];
}

/// <summary>A reading of a task as it stands.</summary>
public sealed record CarReading
{
    /// <summary>Its id in the task.</summary>
    public required string Id { get; init; }

    /// <summary>What is measured.</summary>
    public required string Name { get; init; }

    /// <summary>Its limit.</summary>
    public required string Limit { get; init; }

    /// <summary>The value and the verdict: "31 kPa, out"; "not taken".</summary>
    public required string Value { get; init; }

    /// <summary>Who took it with what and when; or nothing.</summary>
    public string? Taken { get; init; }

    /// <summary>What made it lapse, who released it, why it cannot be called; or nothing.</summary>
    public string? Note { get; init; }
}
