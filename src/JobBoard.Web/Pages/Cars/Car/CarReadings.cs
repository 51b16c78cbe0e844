using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Rules;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.Car;

/// <summary>Readings of a task in words.</summary>
public sealed class CarReadings(Picture picture)
{
    private readonly ShopState _shop = picture.Shop;

    /// <summary>One reading as it stands.</summary>
    public CarReading Of(TaskQuestion q, ReadingNeed need)
    {
        var latest = Looks.LatestOfAll(q.Car, q.Task.Id, need.Id);
        return new()
        {
            Id = need.Id,
            Name = need.Name,
            Limit = ReadingWords.Limit(need),
            Value = latest is null ? "not taken" : $"{latest.Text} {latest.Unit}, {(latest.LapsedBy is null ? ReadingWords.Verdict(latest.Verdict) : "lapsed")}",
            Taken = latest is null ? null : Taken(latest),
            Note = latest is null ? null : Note(q, latest),
        };
    }

    private string Taken(Reading reading)
    {
        var instrument = reading.Instrument is { } id ? _shop.Instruments.GetValueOrDefault(id)?.Name ?? id : null;
        var seen = reading.SeenBy is { } second ? $"seen by {_shop.NameOf(second)}" : null;
        var parts = new[] { _shop.NameOf(reading.By), seen, instrument, ShopTime.Since(picture.Local(reading.At), picture.Now) };
        return string.Join(", ", parts.OfType<string>());
    }

    private string? Note(TaskQuestion q, Reading reading) => reading switch
    {
        { LapsedBy: { } lapse } => "lapsed: " + (lapse.Aspect.Length == 0 ? "the task is done again" : _shop.Say(Looks.Cause(q, lapse))),
        { Released: { } released } => $"released by {_shop.NameOf(released.By)}",
        { Verdict: Verdict.InLimits } => null,
        _ => reading.Because,
    };
}
