using System.Collections.Concurrent;
using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Rules;
using JobBoard.Shop.Dates;
using JobBoard.Shop.Running;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Live;

/// <summary>What screens are made from: the committed state, the instant it is looked at, and the dates that follow from both.</summary>
public sealed class Picture
{
    private readonly ConcurrentDictionary<string, ImmutableArray<Evaluated>> _open = new(StringComparer.Ordinal);

    /// <summary>A picture of the shop now.</summary>
    public Picture(ShopState shop, Head head, DateBook dates)
    {
        (Shop, Head) = (shop, head);
        Zone = ShopZone.Of(shop);
        Now = Local(head.At);
        Dates = dates;
    }

    /// <summary>The state.</summary>
    public ShopState Shop { get; }

    /// <summary>Its stamp.</summary>
    public Head Head { get; }

    /// <summary>The instant, with the shop's offset.</summary>
    public DateTimeOffset Now { get; }

    /// <summary>The instant cut to the minute, for markup: what looks the same is not pushed.</summary>
    public DateTimeOffset Minute => Now.AddTicks(-(Now.Ticks % TimeSpan.TicksPerMinute));

    /// <summary>The shop's zone.</summary>
    public TimeZoneInfo Zone { get; }

    /// <summary>The dates of the cars.</summary>
    public DateBook Dates { get; }

    /// <summary>What each open task of a car waits on; worked out once for all fragments of the picture.</summary>
    public ImmutableArray<Evaluated> Open(CarBoard car) => _open.GetOrAdd(car.Id, _ => Evaluation.Of(Shop, car, Head.At));

    /// <summary>An instant with the shop's offset.</summary>
    public DateTimeOffset Local(DateTimeOffset at) => TimeZoneInfo.ConvertTime(at, Zone);
}
