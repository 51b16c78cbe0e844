using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Holds;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Tests.Histories.Oracle;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>The shop's own data: people, places, gear, instruments, dangers, rules.</summary>
public sealed partial class Sender
{
    private IEnumerable<(int, Func<Sent?>)> ShopMoves() =>
    [
        (70, In), (14, Out), (3, Away), (3, Gone), (6, Person), (2, Hours), (4, Place), (4, PlaceOut), (7, Hoist),
        (4, Tool), (2, Danger), (4, Rule), (3, RuleOut), (3, Thing), (3, Reached),
    ];

    private Sent? In()
    {
        var outside = shop.People.Values.Where(p => !p.In).Select(p => p.Id).ToList();
        if (outside.Count == 0) return null;
        var person = dice.Pick(outside);
        return new(dice.Chance(75) ? person : Chief(), new ComeIn(person));
    }

    private Sent? Out()
    {
        var person = dice.Pick(Staff);
        return new(dice.Chance(85) ? person : Chief(), new GoOut(person), MayBeLate: true);
    }

    private Sent? Away()
    {
        var from = _now.AddHours(dice.Between(1, 48));
        return new(Chief(), new BeAway(dice.Pick(Staff), from, from.AddHours(dice.Between(-1, 30)), "training"));
    }

    /// <summary>The owner and the foreman stay, so that a shop goes on.</summary>
    private Sent? Gone()
    {
        var others = Staff.Where(p => p is not (ShopMaker.Owner or ShopMaker.Foreman or "tess")).ToList();
        return others.Count < 2 ? null : new(Chief(), new LeaveShop(dice.Pick(others)));
    }

    private Sent? Person()
    {
        if (dice.Chance(15)) return new(ShopMaker.Owner, new SetPerson(Id("new"), "New", Position.Technician) { Qualifications = [new("lifting")] });
        var person = dice.Pick(shop.People.Values.Where(p => p.Id is not ShopMaker.Owner).ToList());
        var qualifications = dice.Chance(60) ? person.Qualifications : [.. person.Qualifications.Where(_ => dice.Chance(70))];
        var until = dice.Chance(30) ? _now.AddHours(dice.Between(1, 30)) : (DateTimeOffset?)null;
        if (dice.Chance(50)) qualifications = [.. qualifications.Where(q => q.For != "fuel"), new QualifiedFor("fuel", until)];
        return new(dice.Chance(85) ? ShopMaker.Owner : Somebody(), new SetPerson(person.Id, person.Id, person.Position) { WorksUnder = person.WorksUnder, Qualifications = [.. qualifications] });
    }

    private Sent? Hours() => new(dice.Chance(80) ? ShopMaker.Owner : Somebody(), new SetShop("Shop", shop.Zone, [.. shop.Hours], [.. shop.Closed, DateOnly.FromDateTime(_now.AddDays(dice.Between(2, 20)).Date)]));

    private Sent? Place()
    {
        var place = dice.Pick(shop.Places.Values.ToList());
        return new(dice.Chance(85) ? ShopMaker.Owner : Somebody(), new SetPlace(dice.Chance(50) ? place with { Capacity = dice.Between(0, 2) } : ShopMaker.Spot(Id("bench"), "bench", dice.Between(8, 14))));
    }

    private Sent? PlaceOut() => new(ShopMaker.Owner, new TakeOutPlace(dice.Chance(95) ? dice.Pick(shop.Places.Keys.ToList()) : "no-such-place"));

    private Sent? Hoist()
    {
        if (shop.Gear.Count == 0) return null;
        var gear = dice.Pick(shop.Gear.Values.ToList());
        return new(dice.Chance(85) ? ShopMaker.Owner : Somebody(), new SetGear(dice.Below(3) switch
        {
            0 => gear with { OutOfUse = gear.OutOfUse is null ? "hook bent" : null },
            1 => gear with { InspectedUntil = _now.AddHours(dice.Between(-2, 40)) },
            _ => gear with { RatedKg = dice.Pick([200m, 300m, 1000m]), OutOfUse = null, InspectedUntil = _now.AddDays(30) },
        }));
    }

    private Sent? Tool()
    {
        var tool = dice.Pick(shop.Instruments.Values.ToList());
        return new(dice.Chance(80) ? ShopMaker.Owner : Somebody(), new SetInstrument(tool with { CalibratedUntil = dice.Chance(80) ? _now.AddDays(dice.Between(-1, 20)) : null, Uncertainty = dice.Chance(90) ? tool.Uncertainty : -1 }));
    }

    private Sent? Danger()
    {
        var kind = dice.Pick(shop.Hazards.Values.ToList());
        return new(ShopMaker.Owner, new SetHazard(kind with { Caution = "Keep well clear." }));
    }

    private Sent? Rule()
    {
        var a = dice.Pick(shop.Hazards.Keys.ToList());
        var b = dice.Pick(shop.Hazards.Keys.ToList());
        var scope = dice.Pick([Scope.Car, Scope.Bay, Scope.Sweep, Scope.Distance]);
        var rule = dice.Chance(60)
            ? new KeepApart { Id = Id("apart"), A = new(a), B = new(b), Scope = scope, Metres = scope == Scope.Distance ? 5 : null, Reason = "Seen it go wrong." }
            : dice.PickOrNone(shop.Apart.Values.ToList()) is { } old ? old with { Reason = "As before." } : null;
        return rule is null ? null : new(dice.Chance(85) ? ShopMaker.Owner : Somebody(), new SetKeepApart(rule));
    }

    private Sent? RuleOut() => dice.PickOrNone(shop.Apart.Keys.ToList()) is { } rule ? new(dice.Chance(80) ? ShopMaker.Owner : Somebody(), new TakeOutKeepApart(dice.Chance(95) ? rule : "no-rule", Why())) : null;

    private Sent? Reached() => new(dice.Chance(85) ? ShopMaker.Owner : Somebody(), new SetContact(dice.Chance(90) ? "030 123456" : "no number", "shop@example.org"));

    private Sent? Thing()
    {
        var thing = dice.PickOrNone(shop.Items.Values.ToList());
        return thing is null ? null : new(dice.Chance(85) ? ShopMaker.Owner : Somebody(), new SetShopItem(thing with { Name = "Extraction of fumes", Condition = dice.Chance(90) ? "on" : "gone" }));
    }
}
