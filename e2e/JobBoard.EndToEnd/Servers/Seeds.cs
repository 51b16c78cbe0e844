using System.Text.Json;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Demo;
using JobBoard.Shop.Templates;

namespace JobBoard.EndToEnd.Servers;

/// <summary>The seed files, as they lie beside the program.</summary>
internal static class Seeds
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "seed-data");

    /// <summary>The template with the engine behind the cabin.</summary>
    public static Plan MidEngine { get; } =
        JsonSerializer.Deserialize<Plan>(File.ReadAllText(Path.Combine(Folder, "plans", "mid-engine-v8.json")), PlanJson.Options)!;

    /// <summary>The demo shop.</summary>
    public static DemoShop Demo => new(Folder, new TemplateShelf(Path.Combine(Folder, "plans")).Find);
}
