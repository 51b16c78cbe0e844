using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;

namespace JobBoard.Shop.Templates;

/// <summary>All templates of a shop: those shipped with the program and those kept in its day book, which go before shipped ones of the same id.</summary>
/// <param name="shelf">The shipped ones.</param>
/// <param name="shop">The shop as it stands.</param>
public sealed class TemplateBook(TemplateShelf shelf, Func<ShopState> shop)
{
    /// <summary>All of them, by name.</summary>
    public ImmutableArray<Template> All =>
    [
        .. shop().Templates.Values.Select(p => new Template(p, Kept: true))
            .Concat(shelf.Plans.Values.Where(p => !shop().Templates.ContainsKey(p.Id)).Select(p => new Template(p, Kept: false)))
            .OrderBy(t => t.Plan.Name, StringComparer.OrdinalIgnoreCase),
    ];

    /// <summary>The plan of that id, or nothing.</summary>
    public Plan? Find(string id) => shop().Templates.GetValueOrDefault(id) ?? shelf.Find(id);
}

/// <summary>One template.</summary>
/// <param name="Plan">Its plan.</param>
/// <param name="Kept">Whether the shop kept it itself; else it came with the program.</param>
public sealed record Template(Plan Plan, bool Kept);
