using System.Globalization;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Cars.New;

/// <summary>A new task as it was typed. A field left empty is nothing.</summary>
public sealed class TypedTask
{
    /// <summary>What people call it.</summary>
    public string? Name { get; set; }

    /// <summary>The stage's id.</summary>
    public string? Stage { get; set; }

    /// <summary>Low estimate in minutes.</summary>
    public string? Low { get; set; } = "30";

    /// <summary>Usual estimate in minutes.</summary>
    public string? Usual { get; set; } = "60";

    /// <summary>High estimate in minutes.</summary>
    public string? High { get; set; } = "120";

    /// <summary><c>car</c>, or a kind of place.</summary>
    public string? Place { get; set; } = "car";

    /// <summary>What it asks for, or empty.</summary>
    public string? Qualification { get; set; }

    /// <summary>Nodes it comes after.</summary>
    public string[] After { get; set; } = [];

    /// <summary>Nodes that come after it.</summary>
    public string[] Before { get; set; } = [];

    /// <summary>Why the plan changes.</summary>
    public string? Why { get; set; }

    /// <summary>What cannot be read, or nothing.</summary>
    public FieldFault? Fault()
    {
        if (string.IsNullOrWhiteSpace(Name)) return new("name", "Say what people call it.");
        return new[] { Low, Usual, High }.All(m => Minutes(m) is not null)
            ? null
            : new("estimate", "The estimates are whole numbers of minutes. Type digits only, such as 90.");
    }

    /// <summary>The change of the plan it stands for; only where <see cref="Fault"/> finds nothing.</summary>
    public ChangePlan Change(string car, string id) => new(Why ?? "")
    {
        Car = car,
        Add = [ToTask(id)],
        AddLinks = [.. After.Select(a => new Link(id, a)), .. Before.Select(b => new Link(b, id))],
    };

    private PlanTask ToTask(string id) => new()
    {
        Id = id,
        Name = Name!.Trim(),
        Stage = Stage ?? "",
        Place = Place ?? "car",
        Estimate = new(Minutes(Low) ?? 0, Minutes(Usual) ?? 0, Minutes(High) ?? 0),
        Crew = [new CrewNeed("lead", Qualification)],
    };

    private static int? Minutes(string? text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var minutes) ? minutes : null;
}
