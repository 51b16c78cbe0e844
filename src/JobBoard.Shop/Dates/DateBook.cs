using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Items;
using JobBoard.Domain.Places;
using JobBoard.Scheduling;
using ScheduleDates = JobBoard.Scheduling.Dates;

namespace JobBoard.Shop.Dates;

/// <summary>
/// The dates of cars, worked out when a screen asks and kept while neither the board nor the minute has changed. Never on the
/// path of a command. Safe to share.
/// </summary>
public sealed class DateBook
{
    private readonly ConcurrentDictionary<string, Page> _pages = new(StringComparer.Ordinal);
    private readonly ConditionalWeakTable<Domain.Plans.Plan, CarNetwork> _networks = [];
    private Hours? _hours;

    /// <summary>The dates of a car as things stand.</summary>
    public CarDates Of(ShopState shop, CarBoard car, DateTimeOffset now)
    {
        var hours = HoursOf(shop);
        var minute = now.ToUnixTimeSeconds() / 60;
        if (_pages.TryGetValue(car.Id, out var page) && ReferenceEquals(page.Car, car) && page.Minute == minute && ReferenceEquals(page.Hours, hours)) return page.Dates;
        var dates = Compute(car, hours, now);
        _pages[car.Id] = new(car, hours, minute, dates);
        return dates;
    }

    /// <summary>The dates of a car if something were otherwise. Worked out anew each time.</summary>
    public CarDates If(ShopState shop, CarBoard car, DateTimeOffset now, WhatIf whatIf) => Compute(car, HoursOf(shop), now, whatIf);

    /// <summary>The end of everything, as <see cref="CarDates.Earliest"/>, and nothing else. Worked out anew each time.</summary>
    public DateTimeOffset? EarliestIf(ShopState shop, CarBoard car, DateTimeOffset now, WhatIf? whatIf = null)
    {
        var hours = HoursOf(shop);
        return Instant(Raw(_networks.GetValue(car.Plan, CarNetwork.Of), car, hours, now, whatIf).End, hours.Calendar);
    }

    private static ScheduleDates Raw(CarNetwork network, CarBoard car, Hours hours, DateTimeOffset now, WhatIf? whatIf) =>
        CriticalPath.Compute(new CarTimes(car, network, hours.Shop, now, whatIf).Read(), hours.Calendar, now.ToUnixTimeSeconds());

    private CarDates Compute(CarBoard car, Hours hours, DateTimeOffset now, WhatIf? whatIf = null)
    {
        var network = _networks.GetValue(car.Plan, CarNetwork.Of);
        var dates = Raw(network, car, hours, now, whatIf);
        var nodes = network.Nodes.Select((id, i) => KeyValuePair.Create(id, Node(dates[i], car, hours.Calendar))).ToFrozenDictionary(StringComparer.Ordinal);
        return new(Instant(dates.End, hours.Calendar), RestsOn(dates, car), Chain(dates, network), nodes)
        {
            IsDone = car.Tasks.Values.All(t => t.Counts) && car.Holds.Values.All(h => h.Counts),
        };
    }

    private static ImmutableArray<DateStep> Chain(ScheduleDates dates, CarNetwork network) =>
        [.. dates.Chain().Select(s => new DateStep(network.Nodes[s.Task], network.LagOf(s.Link)))];

    private static ImmutableArray<string> RestsOn(ScheduleDates dates, CarBoard car) => dates.End is not null
        ? []
        : [.. Enumerable.Range(0, dates.Count).SelectMany(dates.RestsOn).Distinct().Order().Select(p => car.Plan.Parts[p].Id)];

    private static NodeDates Node(TaskDates dates, CarBoard car, WorkCalendar calendar) => new(
        Instant(dates.EarlyStart, calendar),
        Instant(dates.EarlyFinish, calendar),
        Instant(dates.LateStart, calendar),
        Instant(dates.LateFinish, calendar),
        Span(dates.TotalFloat),
        Span(dates.FreeFloat),
        dates.SetsTheDate,
        dates.MissesDateGiven,
        dates.RestsOn is { } part ? car.Plan.Parts[part].Id : null);

    private static DateTimeOffset? Instant(long? at, WorkCalendar calendar) => at is { } seconds ? calendar.Local(seconds) : null;

    private static TimeSpan? Span(long? seconds) => seconds is { } s ? TimeSpan.FromSeconds(s) : null;

    private Hours HoursOf(ShopState shop)
    {
        var known = _hours;
        if (known is not null && known.Is(shop)) return known;
        return _hours = new Hours(shop);
    }

    private sealed record Page(CarBoard Car, Hours Hours, long Minute, CarDates Dates);

    /// <summary>One set of opening hours in the two forms that are needed.</summary>
    private sealed class Hours(ShopState shop)
    {
        private readonly (string, ImmutableArray<Domain.People.OpenHours>, ImmutableArray<DateOnly>) _of = (shop.Zone, shop.Hours, shop.Closed);

        public ShopHours Shop { get; } = ShopHours.Of(shop);

        public WorkCalendar Calendar { get; } = shop.Hours.IsEmpty
            ? WorkCalendar.NeverCloses
            : new WorkCalendar(
                TimeZoneInfo.FindSystemTimeZoneById(shop.Zone),
                shop.Hours.Select(h => new WeeklyOpening(h.Day, new OpenSpan(h.From.ToTimeSpan(), h.To.ToTimeSpan()))),
                shop.Closed);

        public bool Is(ShopState shop) => _of == (shop.Zone, shop.Hours, shop.Closed);
    }
}
