using JobBoard.Domain.Commands;
using JobBoard.Domain.Places;
using JobBoard.Web.Live;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Makes gear and instruments, as one person sees them, from the state of the shop.</summary>
public static class GearMapping
{
    /// <summary>The gear as of a picture; empty for a reader who is not there.</summary>
    public static GearView Of(Picture picture, string personId)
    {
        if (!picture.Shop.People.TryGetValue(personId, out var me)) return new([], [], [], false);
        var gear = picture.Shop.Gear.Values.Select(g => Line(picture, g)).OrderBy(l => l.Name, StringComparer.InvariantCulture).ToArray();
        var instruments = picture.Shop.Instruments.Values.Select(i => Line(picture, i)).OrderBy(l => l.Name, StringComparer.InvariantCulture).ToArray();
        return new([.. gear.Concat(instruments).Where(l => l.IsOverdue).Select(l => $"{l.Name}: {l.Until}")], [.. gear], [.. instruments], MayPost.May<SetGear>(me.Position));
    }

    private static ThingLine Line(Picture picture, Gear gear)
    {
        var load = gear.RatedKg is { } kg ? $"{gear.Kind}, rated load {ShopWords.Number(kg)} kg" : gear.Kind;
        var (until, over) = Until(picture, gear.InspectedUntil, "inspection", "inspected until", "no inspection due");
        return new(gear.Id, gear.Name, load, until, over, gear.OutOfUse);
    }

    private static ThingLine Line(Picture picture, Instrument instrument)
    {
        var (until, over) = Until(picture, instrument.CalibratedUntil, "calibration", "calibrated until", "no calibration due");
        return new(instrument.Id, instrument.Name, Uncertainty(instrument), until, over, null);
    }

    private static (string Words, bool IsOver) Until(Picture picture, DateTimeOffset? at, string what, string until, string none) => at switch
    {
        null => (none, false),
        { } over when over <= picture.Now => ($"{what} overdue since {ShopWords.Day(picture.Local(over))}", true),
        { } to => ($"{until} {ShopWords.Day(picture.Local(to))}", false),
    };

    /// <summary>Expanded uncertainty in words, as it guards the limits.</summary>
    private static string Uncertainty(Instrument i) => (i.Uncertainty, i.UncertaintyPercent) switch
    {
        (0, 0) => $"reads {i.Unit}, no uncertainty noted",
        ( > 0, 0) => $"reads {i.Unit}, uncertainty U {ShopWords.Number(i.Uncertainty)} {i.Unit}",
        (0, > 0) => $"reads {i.Unit}, uncertainty U {ShopWords.Number(i.UncertaintyPercent)} % of the reading",
        _ => $"reads {i.Unit}, uncertainty U {ShopWords.Number(i.Uncertainty)} {i.Unit} or {ShopWords.Number(i.UncertaintyPercent)} % of the reading, the greater",
    };
}
