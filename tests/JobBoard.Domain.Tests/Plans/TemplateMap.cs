using System.Collections.Immutable;
using System.Text.Json;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Plans;

/// <summary>What a template has to contain, each demand with the ids in the template that meet it.</summary>
internal sealed record TemplateMap
{
    public required string Plan { get; init; }
    public required ImmutableDictionary<string, string> Stages { get; init; }
    public required ImmutableArray<TaskRow> Tasks { get; init; }
    public required ImmutableArray<ChangeRow> Changes { get; init; }
    public required ImmutableArray<HazardRow> Hazards { get; init; }
    public required ImmutableDictionary<string, ImmutableArray<string>> KeepApartSides { get; init; }
    public required ImmutableArray<HoldRow> Holds { get; init; }
    public required ImmutableArray<CheckRow> SecondChecks { get; init; }
    public required ImmutableArray<ReadingRow> Readings { get; init; }
    public required ImmutableDictionary<string, ImmutableArray<Pair>> Links { get; init; }
    public required ImmutableArray<DutyRow> Duties { get; init; }
    public required ImmutableArray<BesideRow> Beside { get; init; }

    internal sealed record TaskRow(string Stage, string Demand, ImmutableArray<string> Tasks);

    internal sealed record ChangeRow(string Stage, string Item, string From, string To, string Task);

    internal sealed record HazardRow(string Stage, string Hazard, ImmutableArray<string> TasksOrItems);

    internal sealed record HoldRow(string Stage, string Demand, string Hold);

    internal sealed record CheckRow(string Stage, string Demand, string Task);

    internal sealed record ReadingRow(string Stage, string Demand, ImmutableArray<string> Readings);

    /// <summary>The task comes after the other; with a clock, by a link of its own whose lag counts on it.</summary>
    internal sealed record Pair(string Task, string After, LagClock? Clock = null);

    internal sealed record DutyRow(string Stage, string Task, ImmutableArray<string> Duties);

    /// <summary>The task is neither before nor after these.</summary>
    internal sealed record BesideRow(string Task, ImmutableArray<string> Strip);
}

/// <summary>The shipped files, read once.</summary>
internal static class Seed
{
    public static string PlanText { get; } = Text("plans/mid-engine-v8.json");

    public static Plan Plan { get; } = Read<Plan>("plans/mid-engine-v8.json");

    public static TemplateMap Map { get; } = Read<TemplateMap>("plans/mid-engine-v8.map.json");

    public static ImmutableArray<HazardKind> Hazards { get; } = Read<ImmutableArray<HazardKind>>("shop/hazards.json");

    public static ImmutableArray<KeepApart> KeepApart { get; } = Read<ImmutableArray<KeepApart>>("shop/keep-apart.json");

    public static ImmutableArray<ShopItem> Items { get; } = Read<ImmutableArray<ShopItem>>("shop/items.json");

    private static T Read<T>(string file) =>
        JsonSerializer.Deserialize<T>(Text(file), PlanJson.Options) ?? throw new InvalidDataException(file);

    private static string Text(string file) => File.ReadAllText(Path.Combine(Folder(), "seed-data", file));

    private static string Folder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "JobBoard.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("JobBoard.sln");
    }
}
