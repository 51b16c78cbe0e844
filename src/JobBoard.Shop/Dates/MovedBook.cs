using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Places;
using JobBoard.Domain.Work;
using JobBoard.Shop.Running;
using JobBoard.Storage.Journal;

namespace JobBoard.Shop.Dates;

/// <summary>
/// What moved the dates since this morning and what caused it: today's entries are folded again over the state of this
/// morning, and a car's end is worked out before and after each. What is between two entries is what time alone did. Kept, and
/// gone on with from where it was. Safe to share; never on the path of a command.
/// </summary>
/// <param name="entries">Committed entries from a number on.</param>
/// <param name="dates">Works out the ends.</param>
public sealed class MovedBook(Func<long, IEnumerable<JournalRow>> entries, DateBook dates)
{
    private readonly Lock _gate = new();
    private readonly DateBook _dates = dates;
    private readonly Dictionary<string, Ledger> _ledgers = new(StringComparer.Ordinal);
    private readonly List<Step> _steps = [];
    private DateTimeOffset _morning;
    private ShopState _atMorning = ShopState.Empty;
    private ShopState _last = ShopState.Empty;

    /// <summary>Over a running shop's day book.</summary>
    public MovedBook(ShopRunner runner, DateBook dates)
        : this(runner.Entries, dates)
    {
    }

    /// <summary>What moved a car's date since this morning.</summary>
    public CarMoves Of(ShopState shop, CarBoard car, DateTimeOffset now)
    {
        lock (_gate)
        {
            ReadOn(shop, now);
            if (!_ledgers.TryGetValue(car.Id, out var ledger)) _ledgers.Add(car.Id, ledger = new Ledger(this, car.Id));
            ledger.ReadOn();
            return ledger.Until(shop, car, now);
        }
    }

    private void ReadOn(ShopState shop, DateTimeOffset now)
    {
        var morning = Morning(shop, now);
        if (morning != _morning)
        {
            (_morning, _atMorning) = (morning, _last.RecordedAt < morning ? _last : ShopState.Empty);
            _last = _atMorning;
            _steps.Clear();
            _ledgers.Clear();
        }

        foreach (var row in shop.Seq > _last.Seq ? entries(_last.Seq + 1) : [])
        {
            if (row.Seq > shop.Seq) break;
            var (before, after) = (_last, DayBook.Apply(_last, row));
            _last = after;
            if (after.RecordedAt < morning) _atMorning = after;
            else _steps.Add(new(row, before, after));
        }
    }

    private static DateTimeOffset Morning(ShopState shop, DateTimeOffset now)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById(shop.Zone);
        var day = TimeZoneInfo.ConvertTime(now, zone).Date;
        return new DateTimeOffset(day, zone.GetUtcOffset(day));
    }

    private sealed record Step(JournalRow Row, ShopState Before, ShopState After);

    /// <summary>The moves of one car, as far as today's entries have been read.</summary>
    private sealed class Ledger
    {
        private readonly MovedBook _book;
        private readonly string _id;
        private readonly ImmutableArray<CarMove>.Builder _moves = ImmutableArray.CreateBuilder<CarMove>();
        private DateTimeOffset _since;
        private DateTimeOffset? _before;
        private DateTimeOffset? _end;
        private bool _known;
        private int _read;

        public Ledger(MovedBook book, string id)
        {
            (_book, _id) = (book, id);
            if (book._atMorning.Cars.TryGetValue(id, out var car)) Begin(book._atMorning, car, book._morning);
        }

        public void ReadOn()
        {
            for (; _read < _book._steps.Count; _read++) Read(_book._steps[_read]);
        }

        public CarMoves Until(ShopState shop, CarBoard car, DateTimeOffset now)
        {
            if (!_known) Begin(shop, car, now);
            var end = _book._dates.EarliestIf(shop, car, now);
            var last = Passed(shop, car, now, _end, end);
            return new(_since, _before, end, Between(shop, _before, end), [.. _moves, .. last is null ? [] : new[] { last }]);
        }

        private void Begin(ShopState shop, CarBoard car, DateTimeOffset at) =>
            (_known, _since, _before, _end) = (true, at, _book._dates.EarliestIf(shop, car, at), _book._dates.EarliestIf(shop, car, at));

        private void Read(Step step)
        {
            if (!step.After.Cars.TryGetValue(_id, out var after)) return;
            var at = step.After.RecordedAt;
            if (!step.Before.Cars.TryGetValue(_id, out var before))
            {
                Begin(step.After, after, at);
                return;
            }

            if (ReferenceEquals(before, after) && step.Before.Hours == step.After.Hours && step.Before.Closed == step.After.Closed) return;
            var passed = _book._dates.EarliestIf(step.Before, before, at);
            if (Passed(step.Before, before, at, _end, passed) is { } move) _moves.Add(move);
            _end = _book._dates.EarliestIf(step.After, after, at);
            if (_end == passed) return;
            var fact = step.Row.IsBlanked ? null : DayBook.ToEntry(step.Row).Fact;
            _moves.Add(new(at, Between(step.After, passed, _end), fact, step.Row.Actor, null, false, RestsOn(step.After, after, at, _end)));
        }

        private CarMove? Passed(ShopState shop, CarBoard car, DateTimeOffset at, DateTimeOffset? from, DateTimeOffset? to)
        {
            if (from == to) return null;
            var node = _book._dates.If(shop, car, at, new WhatIf()).SetsTheDate.Select(s => s.Node).FirstOrDefault(n => !car.Tasks.TryGetValue(n, out var t) ? !car.Holds[n].Counts : !t.Counts);
            var inHand = node is not null && car.Tasks.TryGetValue(node, out var task) && task.Status == WorkStatus.InHand;
            return new(at, Between(shop, from, to), null, "", node, inHand, RestsOn(shop, car, at, to));
        }

        private ImmutableArray<string> RestsOn(ShopState shop, CarBoard car, DateTimeOffset at, DateTimeOffset? end) =>
            end is null ? _book._dates.If(shop, car, at, new WhatIf()).RestsOn : [];

        private static TimeSpan? Between(ShopState shop, DateTimeOffset? from, DateTimeOffset? to)
        {
            if (from is not { } f || to is not { } t) return null;
            var hours = ShopHours.Of(shop);
            return TimeSpan.FromMinutes(t >= f ? hours.WorkingMinutes(f, t) : -hours.WorkingMinutes(t, f));
        }
    }
}
