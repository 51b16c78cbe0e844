using System.Collections.Frozen;
using System.Text.RegularExpressions;
using JobBoard.Domain.Boards;
using Microsoft.Extensions.Primitives;

namespace JobBoard.Web.Posting;

/// <summary>
/// What a form leaves to the board: the id of something new is made from its name or words, and a weekday with no
/// times typed is no opening.
/// </summary>
internal static partial class LeftToTheBoard
{
    private static readonly FrozenDictionary<string, Naming> Namings = new Dictionary<string, Naming>
    {
        ["set-person"] = new("person", f => f["name"], (s, id) => s.People.ContainsKey(id), "person"),
        ["set-place"] = new("place.id", f => f["place.name"], (s, id) => s.Places.ContainsKey(id), "place"),
        ["set-gear"] = new("gear.id", f => f["gear.name"], (s, id) => s.Gear.ContainsKey(id), "gear"),
        ["set-instrument"] = new("instrument.id", f => f["instrument.name"], (s, id) => s.Instruments.ContainsKey(id), "instrument"),
        ["set-hazard"] = new("hazard.id", f => f["hazard.name"], (s, id) => s.Hazards.ContainsKey(id), "hazard"),
        ["set-shop-item"] = new("item.id", f => f["item.name"], (s, id) => s.Items.ContainsKey(id), "item"),
        ["ask-customer"] = new("ask", f => f["words"], (s, id) => s.Cars.Values.Any(c => c.Asks.ContainsKey(id)), "question"),
        ["set-keep-apart"] = new("rule.id", f => $"{Side(f, "a")} and {Side(f, "b")}", (s, id) => s.KeepApart.ContainsKey(id), "rule"),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The form's fields with what it leaves to the board.</summary>
    public static IEnumerable<KeyValuePair<string, StringValues>> Complete(string kind, IFormCollection form, ShopState shop)
    {
        var fields = form.Where(f => !IsUnusedDay(f.Key, form));
        return Namings.TryGetValue(kind, out var naming) && StringValues.IsNullOrEmpty(form[naming.Field])
            ? fields.Where(f => f.Key != naming.Field).Append(new(naming.Field, naming.NewId(form, AsFirstSent(form, shop))))
            : fields;
    }

    // A form sent again for want of an answer is the same command: it gets the id it got the first time.
    private static ShopState AsFirstSent(IFormCollection form, ShopState shop) =>
        Guid.TryParse(form["command"], out var id) && shop.Recent.FindLast(r => r.Id == id) is { } recent ? recent.Before : shop;

    private static bool IsUnusedDay(string field, IFormCollection form) =>
        DayOfRow().Match(field) is { Success: true } row && IsBlank(form[row.Groups[1].Value + ".from"]) && IsBlank(form[row.Groups[1].Value + ".to"]);

    private static bool IsBlank(StringValues values) => string.IsNullOrWhiteSpace(values.ToString());

    private static string Side(IFormCollection form, string side) =>
        $"{form[$"rule.{side}.hazard"]} {form[$"rule.{side}.item"].ToString().Replace("shop/", "", StringComparison.Ordinal)} {form[$"rule.{side}.condition"]}";

    [GeneratedRegex(@"^(.*\[\d+\])\.day$")]
    private static partial Regex DayOfRow();

    /// <param name="Field">The field that holds the id.</param>
    /// <param name="Name">What the id is made from.</param>
    /// <param name="IsTaken">Whether something in the shop has an id.</param>
    /// <param name="Otherwise">The id where nothing can be made of the name.</param>
    private sealed record Naming(string Field, Func<IFormCollection, string?> Name, Func<ShopState, string, bool> IsTaken, string Otherwise)
    {
        public string NewId(IFormCollection form, ShopState shop) => NewIds.For(Name(form) ?? "", id => IsTaken(shop, id), Otherwise);
    }
}
