using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Items;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;

namespace JobBoard.Shop.Demo;

/// <summary>What goes on beside the tasks: parts, second checks, releases, dangers made safe, snags before handover.</summary>
internal sealed class CrewUpkeep(CrewSession session)
{
    public async Task Keep(string car, ImmutableHashSet<string> nodes)
    {
        await Parts(car, nodes).ConfigureAwait(false);
        await Safe(car).ConfigureAwait(false);
        foreach (var node in nodes.Order(StringComparer.Ordinal))
        {
            if (session.Shop.Cars[car].Tasks.ContainsKey(node)) await Check(car, node).ConfigureAwait(false);
            else await Release(car, node).ConfigureAwait(false);
        }
    }

    /// <summary>The last round of the day: what runs is turned off.</summary>
    public async Task LockUp()
    {
        if (Hand is { } hand && session.Shop.Items.GetValueOrDefault("extraction") is { Condition: "on" } fan)
            await session.Do(hand, new ChangeShopItem(fan.Id, "off", "Locking up")).ConfigureAwait(false);
    }

    private CarBoard Car(string id) => session.Shop.Cars[id];

    private string? Foreman => session.In.FirstOrDefault(p => p.Position == Position.Foreman)?.Id ?? session.In.FirstOrDefault(p => p.Position == Position.Owner)?.Id;

    private string? Hand => session.In.FirstOrDefault(p => p.Position >= Position.Technician)?.Id;

    private async Task Parts(string car, ImmutableHashSet<string> nodes)
    {
        if (Foreman is not { } foreman || Hand is not { } hand) return;
        var wanted = Car(car).Plan.Tasks.Where(t => nodes.Contains(t.Id)).SelectMany(t => t.Parts).Distinct(StringComparer.Ordinal);
        foreach (var id in wanted)
        {
            var part = Car(car).Parts[id];
            if (part.Status is PartStatus.NotOrdered or PartStatus.Wrong) await session.Do(foreman, new OrderPart(id, Expected(car, id)) { Car = car }).ConfigureAwait(false);
            else if (part.Status == PartStatus.Ordered && !(part.Expected > session.Now)) await session.Do(hand, new ArrivePart(id, Shelf(car)) { Car = car }).ConfigureAwait(false);
            else if (part.Status == PartStatus.Arrived) await session.Do(hand, new CheckPart(id, true, null) { Car = car }).ConfigureAwait(false);
        }
    }

    private DateTimeOffset Expected(string car, string id) =>
        session.Now.AddDays(Math.Min(session.Orders.MostPartDays, Car(car).Plan.Parts.First(p => p.Id == id).LeadDays));

    private string Shelf(string car) => "shelf " + (char)('A' + session.Shop.Cars.Keys.ToImmutableArray().IndexOf(car));

    private async Task Safe(string car)
    {
        foreach (var standing in Car(car).Standing.Where(s => session.Shop.Hazards.GetValueOrDefault(s.Hazard)?.Ends == HazardEnd.WhenMadeSafe))
        {
            if (Car(car).Tasks[standing.Task].Status == WorkStatus.InHand || !session.IsOwn(car, standing.Task) || Hand is not { } hand) continue;
            var by = session.Shop.People[standing.By].IsIn ? standing.By : hand;
            await session.Do(by, new MakeHazardSafe(standing.Id, "Pressure let down, key out, joints wiped and looked at dry") { Car = car }).ConfigureAwait(false);
        }
    }

    private async Task Check(string car, string task)
    {
        var state = Car(car).Tasks[task];
        if (state.Status != WorkStatus.ForSecondCheck || state.Lapsed) return;
        var asked = PlanIndex.Of(Car(car).Plan).Task(task)!.SecondCheckQualification;
        foreach (var person in session.In.Where(p => p.Position >= Position.Technician && p.IsQualified(asked, session.Now) && !state.WorkedBy.Contains(p.Id)))
        {
            if ((await session.Try(person.Id, new SecondCheck(true, "") { Car = car, Task = task }).ConfigureAwait(false)).IsEmpty) return;
        }
    }

    private async Task Release(string car, string node)
    {
        var board = Car(car);
        var hold = PlanIndex.Of(board.Plan).Hold(node)!;
        if (hold.KeyCheck) await Call(car, node).ConfigureAwait(false);
        if (board.Holds[node].Counts) return;
        foreach (var person in session.In.Where(p => p.Position >= Position.Foreman))
        {
            var against = Releasing.Against(session.Shop, Car(car), hold, person, session.Now, RuleBook.Full);
            if (!against.IsEmpty && against.All(w => Car(car).Snags.ContainsKey(w.About ?? ""))) against = await PutRight(car, against, hold, person).ConfigureAwait(false);
            if (!against.IsEmpty) continue;
            await session.Do(person.Id, new ReleaseHold(node, Why(hold), Evidence(board, node)) { Car = car }).ConfigureAwait(false);
            return;
        }
    }

    /// <summary>The foreman calls; everybody in answers once nothing but the call is missing.</summary>
    private async Task Call(string car, string hold)
    {
        var index = PlanIndex.Of(Car(car).Plan);
        if (Calling.Behind(index, hold).All(t => Car(car).Tasks[t].StartedAt is not null)) return;
        if (index.LinksInto(hold).Any(l => Car(car).Tasks.TryGetValue(l.After, out var before) && !before.Counts)) return;
        foreach (var person in Calling.Asked(session.Shop).ToArray())
        {
            // Somebody else may have answered meanwhile; nobody's no is talked over.
            if (session.Orders.AmongOthers && Car(car).Call.Values.Any(a => a is { Go: false, Lapsed: null } && a.Hold == hold)) return;
            if (Car(car).Call.GetValueOrDefault(CallAnswer.Key(hold, person.Id)) is { Counts: true }) continue;
            await session.Do(person.Id, new AnswerCall(hold, person.Id, true, null) { Car = car }).ConfigureAwait(false);
        }
    }

    private async Task<ImmutableArray<WaitingOn>> PutRight(string car, ImmutableArray<WaitingOn> snags, HoldPoint hold, Person person)
    {
        foreach (var snag in snags) await session.Do(Hand!, new FinishSnag(snag.About!, "Put right and looked at with the foreman") { Car = car }).ConfigureAwait(false);
        return Releasing.Against(session.Shop, Car(car), hold, person, session.Now, RuleBook.Full);
    }

    private static string Why(HoldPoint hold) => hold.Asks.Length > 0 ? "Seen: " + hold.Asks : "All before it is done and was looked at.";

    private static string Evidence(CarBoard car, string hold)
    {
        var index = PlanIndex.Of(car.Plan);
        return string.Join("; ", index.LinksInto(hold).Select(l => index.NameOf(l.After) + (car.Tasks.TryGetValue(l.After, out var t) && t.SignedOff is { } word ? $", {word.At:yyyy-MM-dd}" : "")));
    }
}
