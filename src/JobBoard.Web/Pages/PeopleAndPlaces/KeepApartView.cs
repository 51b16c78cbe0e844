using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Hazards;
using JobBoard.Web.Live;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Hazards and keep-apart rules, as one person sees them.</summary>
/// <param name="Rules">Keep-apart rules in words.</param>
/// <param name="Hazards">Hazard kinds.</param>
/// <param name="MayChange">Whether the reader sets them.</param>
public sealed record KeepApartView(ImmutableArray<RuleLine> Rules, ImmutableArray<HazardLine> Hazards, bool MayChange);

/// <summary>A keep-apart rule in a sentence.</summary>
public sealed record RuleLine(string Id, string Words);

/// <summary>A hazard kind: its ISO 7010 sign by number, how it ends, its caution.</summary>
public sealed record HazardLine(string Id, string Name, string Sign, string Ends, string Caution, bool PinsCar, bool HangsInGear);

/// <summary>Makes hazards and keep-apart rules, as one person sees them, from the state of the shop.</summary>
public static class KeepApartMapping
{
    /// <summary>The rules as of a picture; empty for a reader who is not there.</summary>
    public static KeepApartView Of(Picture picture, string personId)
    {
        var shop = picture.Shop;
        if (!shop.People.TryGetValue(personId, out var me)) return new([], [], false);
        return new(
            [.. shop.KeepApart.Values.Select(r => new RuleLine(r.Id, ShopWords.Of(r, shop))).OrderBy(r => r.Words, StringComparer.InvariantCulture)],
            [.. shop.Hazards.Values.OrderBy(h => h.Name, StringComparer.InvariantCulture).Select(Line)],
            MayPost.May<SetKeepApart>(me.Position));
    }

    private static HazardLine Line(HazardKind h) => new(h.Id, h.Name, h.Sign, ShopWords.Of(h.Ends), h.Caution, h.PinsCar, h.HangsInGear);
}
