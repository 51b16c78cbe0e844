using JobBoard.Domain.Commands;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Places;
using JobBoard.Shop.Demo;

namespace JobBoard.Shop.Templates;

/// <summary>The usual hazards, things of a shop and keep-apart rules, from a folder with <c>hazards.json</c>, <c>items.json</c> and <c>keep-apart.json</c>.</summary>
public static class UsualThings
{
    /// <summary>The commands that set them, in an order in which they can be sent, each with its name.</summary>
    /// <exception cref="DemoException">A file cannot be read.</exception>
    public static IEnumerable<(string Name, Command Command)> Read(string folder)
    {
        foreach (var hazard in DemoFiles.Read<HazardKind[]>(Path.Combine(folder, "hazards.json"))) yield return ("hazard " + hazard.Id, new SetHazard(hazard));
        foreach (var item in DemoFiles.Read<ShopItem[]>(Path.Combine(folder, "items.json"))) yield return ("item " + item.Id, new SetShopItem(item));
        foreach (var rule in DemoFiles.Read<KeepApart[]>(Path.Combine(folder, "keep-apart.json"))) yield return ("keep apart " + rule.Id, new SetKeepApart(rule));
    }
}
