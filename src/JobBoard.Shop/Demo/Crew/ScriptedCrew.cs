using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;

namespace JobBoard.Shop.Demo;

/// <summary>
/// A made-up crew that carries cars through their plans by the same commands as people: whoever is qualified starts what can
/// start, reads within limits, signs off; others check; those who may release. It works in shop hours alone, knocks off in
/// the evening and comes in in the morning. The same orders in the same shop at the same time give the same commands.
/// </summary>
public sealed class ScriptedCrew
{
    private static readonly TimeSpan GivesUpAfter = TimeSpan.FromDays(10);

    private readonly CrewSession _session;
    private readonly CrewShift _shift;
    private readonly CrewWork _work;
    private readonly CrewStarts _starts;
    private readonly CrewUpkeep _upkeep;
    private readonly CrewStops _stops;
    private readonly Dictionary<string, (Plan Of, ImmutableHashSet<string> Nodes)> _nodes = new(StringComparer.Ordinal);

    /// <summary>Makes a crew for the people of a shop; nothing is sent yet.</summary>
    /// <param name="door">Where it looks and sends.</param>
    /// <param name="orders">What it is to do.</param>
    /// <param name="from">The shop's time it begins at.</param>
    public ScriptedCrew(CrewDoor door, CrewOrders orders, DateTimeOffset from)
    {
        _session = new(door, orders, from);
        _shift = new(_session);
        _work = new(_session, new(_session));
        _starts = new(_session, _shift, _work);
        _upkeep = new(_session);
        _stops = new(_session);
        if (orders.AmongOthers) TakeOver();
    }

    /// <summary>The crew's clock.</summary>
    public DateTimeOffset Now => _session.Now;

    /// <summary>
    /// Works until all is done or nothing more can be done; with a time, until then, and whoever has nothing to do comes in and
    /// goes out all the same. Work in hand at that time is left in hand.
    /// </summary>
    /// <exception cref="CrewException">A command was refused that the rules had said could be done.</exception>
    public async Task<CrewReport> CarryOn(DateTimeOffset? until = null)
    {
        var worked = _session.Now;
        var stop = until ?? DateTimeOffset.MaxValue;
        while (_session.Now < stop && (until is not null || (!IsDone() && (_session.Orders.AmongOthers || _session.Now - worked < GivesUpAfter))))
        {
            var before = _session.Sent;
            if (await Pass().ConfigureAwait(false)) worked = _session.Now;
            if (_session.Sent == before) await _session.GoOn(Earliest(Next(), stop), WaitsForOthers() ? CrewWait.Others : CrewWait.NothingToDo).ConfigureAwait(false);
        }

        return new(_session.Sent, _session.Kinds, _session.Now, Open());
    }

    /// <summary>One look round; true when work was done in it.</summary>
    private async Task<bool> Pass()
    {
        if (!_shift.IsOpen)
        {
            if (_shift.IsNight) await Evening().ConfigureAwait(false);
            return false;
        }

        await _shift.ComeIn().ConfigureAwait(false);
        var before = _session.Sent;
        if (_session.Orders.AmongOthers) await _stops.Look().ConfigureAwait(false);
        await _work.Finish().ConfigureAwait(false);
        foreach (var (car, nodes) in Cars()) await _upkeep.Keep(car.Id, nodes).ConfigureAwait(false);
        foreach (var (car, nodes) in Cars()) await _starts.Start(car.Id, nodes, everybody: false).ConfigureAwait(false);
        if (_session.Sent == before && !_work.IsBusy)
        {
            foreach (var (car, nodes) in Cars()) await _starts.Start(car.Id, nodes, everybody: true).ConfigureAwait(false);
        }

        return _session.Sent > before;
    }

    /// <summary>Whatever is in hand when the crew comes is its own from then on.</summary>
    private void TakeOver()
    {
        foreach (var (car, nodes) in Cars())
        {
            foreach (var task in car.Plan.Tasks.Where(t => car.Tasks[t.Id].Status != WorkStatus.NotStarted)) _session.Own.Add(car.Id + "/" + task.Id);
            foreach (var task in car.Plan.Tasks.Where(t => nodes.Contains(t.Id) && car.Tasks[t.Id].Status == WorkStatus.InHand)) _work.Took(car, task);
        }
    }

    /// <summary>While the shop is open: somebody else holds the first car, or has work in hand.</summary>
    private bool WaitsForOthers() => _session.Orders.AmongOthers && _shift.IsOpen && Cars().Select(c => c.Car).FirstOrDefault() is { } first
        && (_stops.Hold(first) || first.Call.Values.Any(a => a is { Go: false, Lapsed: null })
            || _session.Shop.Cars.Values.Any(c => c.Tasks.Values.Any(t => t.Status == WorkStatus.InHand && !_session.IsOwn(c.Id, t.Id))));

    private async Task Evening()
    {
        await _work.LeaveAll().ConfigureAwait(false);
        await _upkeep.LockUp().ConfigureAwait(false);
        await _shift.GoOut().ConfigureAwait(false);
    }

    private DateTimeOffset Next()
    {
        var now = _session.Now;
        var next = _shift.NextEdge;
        if (_shift.IsOpen && _work.NextAt is { } work) next = Earliest(next, work);
        if (_shift.IsOpen && _session.Orders.AmongOthers && _stops.NextAt is { } word) next = Earliest(next, word);
        if (_shift.IsOpen && Evaluation.NextChangeAt(_session.Shop, now) is { } change) next = Earliest(next, change);
        return next > now ? next : now.AddSeconds(30);
    }

    private static DateTimeOffset Earliest(DateTimeOffset a, DateTimeOffset b) => a < b ? a : b;

    private IEnumerable<(CarBoard Car, ImmutableHashSet<string> Nodes)> Cars() =>
        from order in _session.Orders.Cars
        let car = _session.Shop.Cars.GetValueOrDefault(order.Car)
        where car is not null
        select (car, Nodes(order, car.Plan));

    private ImmutableHashSet<string> Nodes(CarryTo order, Plan plan)
    {
        if (!_nodes.TryGetValue(order.Car, out var known) || !ReferenceEquals(known.Of, plan)) _nodes[order.Car] = known = (plan, order.Nodes(plan));
        return known.Nodes;
    }

    private bool IsDone() => _session.Orders.AmongOthers
        ? Cars().Take(1).All(c => c.Nodes.All(n => IsDone(c.Car, n)))
        : !_work.IsAny && Cars().All(c => c.Nodes.All(n => IsDone(c.Car, n)));

    private static bool IsDone(CarBoard car, string node) =>
        car.Tasks.TryGetValue(node, out var task) ? task.Counts : car.Holds.TryGetValue(node, out var hold) && hold.Counts;

    private ImmutableArray<string> Open() =>
    [
        .. from c in Cars()
           from node in c.Nodes.Where(n => !IsDone(c.Car, n)).Order(StringComparer.Ordinal)
           select $"{c.Car.Id}/{node} ({(c.Car.Tasks.TryGetValue(node, out var t) ? t.Status.ToString() : "hold")}): {string.Join(" ", Against(c.Car, node).Select(w => $"[{w.Rule}] {w.Words}"))}",
    ];

    private IEnumerable<WaitingOn> Against(CarBoard car, string node)
    {
        var shop = _session.Shop;
        var index = PlanIndex.Of(car.Plan);
        if (index.Task(node) is { } task) return StartCheck.Of(new(shop, car, task, _session.Now, RuleBook.Full, _session.Hours), new());
        return shop.People.Values.Where(p => p.Position >= Position.Foreman).Take(1)
            .SelectMany(p => Releasing.Against(shop, car, index.Hold(node)!, p, _session.Now, RuleBook.Full));
    }
}
