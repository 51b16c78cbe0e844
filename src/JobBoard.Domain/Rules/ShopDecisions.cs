using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.People;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;

namespace JobBoard.Domain.Rules;

/// <summary>Commands about the shop: its people, places, gear, instruments, hazards and keep-apart rules.</summary>
internal static class ShopDecisions
{
    public static void Decide(Ask ask, Command command)
    {
        switch (command)
        {
            case SetPerson c: SetPerson(ask, c); break;
            case ComeIn or GoOut or BeAway or LeaveShop: Presence(ask, command); break;
            case SetShop c: SetShop(ask, c); break;
            case SetContact c: CustomerDecisions.Contact(ask, c); break;
            case SetKeepApart c: SetKeepApart(ask, c.Rule); break;
            case SetPlace c: SetPlace(ask, c.Place); break;
            case SaveTemplate c: PlanRevisions.Save(ask, c.Plan); break;
            default: Things(ask, command); break;
        }

        if (ask.Reasons.Count > 0) ask.Facts.Clear();
    }

    /// <summary>Lower-case words joined by hyphens, at most 64 characters.</summary>
    public static bool IsId(string? id) =>
        id is { Length: > 0 and <= 64 } && id.All(c => c is (>= 'a' and <= 'z') or (>= '0' and <= '9') or '-') && id[0] != '-' && id[^1] != '-';

    private static void CheckId(Ask ask, string id)
    {
        if (!IsId(id)) ask.Bad("id", $"'{id}' is no id: lower-case words joined by hyphens, at most 64 characters.");
    }

    private static void SetShop(Ask ask, SetShop c)
    {
        if (string.IsNullOrWhiteSpace(c.Name)) ask.Bad("name", "Give the shop a name.");
        if (!TimeZoneInfo.TryFindSystemTimeZoneById(c.Zone, out var zone) || !zone.HasIanaId) ask.Bad("zone", $"'{c.Zone}' is no IANA time zone, such as Europe/Berlin.");
        CheckHours(ask, c.Hours);
        ask.Facts.Add(new ShopSet(c.Name, c.Zone, c.Hours, c.Closed));
    }

    private static void CheckHours(Ask ask, ImmutableArray<OpenHours> hours)
    {
        foreach (var h in hours.Where(h => h.To <= h.From)) ask.Bad("hours", $"{h.Day}: {h.From:HH\\:mm} to {h.To:HH\\:mm} ends before it begins.");
        foreach (var day in hours.GroupBy(h => h.Day))
        {
            var sorted = day.OrderBy(h => h.From).ToArray();
            for (var i = 1; i < sorted.Length; i++)
            {
                if (sorted[i].From < sorted[i - 1].To) ask.Bad("hours", $"{day.Key}: two openings overlap.");
            }
        }
    }

    private static void SetPerson(Ask ask, SetPerson c)
    {
        CheckId(ask, c.Person);
        if (string.IsNullOrWhiteSpace(c.Name) || c.Name.Length > 60) ask.Bad("name", "Give a name of at most 60 characters.");
        if (c.Position == Position.Apprentice && (c.WorksUnder is null || !ask.Shop.People.TryGetValue(c.WorksUnder, out var under) || under.Left || under.Position == Position.Apprentice))
            ask.Bad("worksUnder", "An apprentice works under a named technician, foreman or owner of this shop.");
        if (c.Position != Position.Apprentice && c.WorksUnder is not null) ask.Bad("worksUnder", "Only an apprentice works under somebody.");
        CheckHours(ask, c.Hours);
        var owners = ask.Shop.People.Values.Where(p => !p.Left && p.Position == Position.Owner).Select(p => p.Id).ToArray();
        if (c.Position != Position.Owner && owners is [var only] && only == c.Person) ask.Bad("position", "A shop keeps at least one owner.");
        ask.Facts.Add(new PersonSet(c.Person, c.Position, c.Outside, c.WorksUnder, c.Qualifications, c.Hours));
        if (!ask.Shop.People.TryGetValue(c.Person, out var known) || known.Name != c.Name.Trim()) ask.Facts.Add(new PersonNamed(c.Person, c.Name?.Trim() ?? ""));
    }

    private static void Presence(Ask ask, Command command)
    {
        var id = command switch { ComeIn c => c.Person, GoOut c => c.Person, BeAway c => c.Person, LeaveShop c => c.Person, _ => "" };
        if (!ask.Shop.People.TryGetValue(id, out var person) || person.Left)
        {
            ask.Bad("person", $"There is nobody '{id}' in this shop.");
            return;
        }

        if (id != ask.Actor && ask.Person.Position < Position.Foreman) ask.Refuse(RuleBook.Ids.Position, "Say it for yourself; the foreman may for others.", about: "person");
        switch (command)
        {
            case ComeIn when !person.IsIn: ask.Facts.Add(new PersonCameIn(id)); break;
            case GoOut when person.IsIn:
                Leaving.WentOut(ask, id);
                ask.Facts.Add(new PersonWentOut(id));
                break;
            case BeAway c:
                if (c.To <= c.From) ask.Bad("to", "It ends before it begins.");
                ask.Facts.Add(new PersonAway(id, c.From, c.To, c.Why ?? ""));
                break;
            case LeaveShop: Left(ask, person); break;
        }
    }

    private static void Left(Ask ask, Person person)
    {
        if (Crewing.InHand(ask.Shop, person.Id).Any()) ask.Refuse(RuleBook.Ids.TaskState, $"{{{person.Id}}} has work in hand.", [person.Id], person.Id);
        if (ask.Shop.People.Values.Any(p => !p.Left && p.WorksUnder == person.Id)) ask.Bad("person", $"An apprentice works under {{{person.Id}}}: give them somebody else first.");
        if (person.Position == Position.Owner && ask.Shop.People.Values.Count(p => !p.Left && p.Position == Position.Owner) == 1) ask.Bad("person", "A shop keeps at least one owner.");
        ask.Facts.Add(new PersonLeft(person.Id));
    }

    private static void SetPlace(Ask ask, Place place)
    {
        CheckId(ask, place.Id);
        var area = place.Area;
        if (area.Width <= 0 || area.Depth <= 0 || area.X < 0 || area.Y < 0 || area.X + area.Width > 1000 || area.Y + area.Depth > 1000)
            ask.Bad("area", "Metres from the map's corner, 0 to 1000, with a width and a depth above 0.");
        if (place.Capacity is < 1 or > 20) ask.Bad("capacity", "1 to 20.");
        if (ask.Shop.Cars.Values.Count(c => c.Place == place.Id) > place.Capacity) ask.Refuse(RuleBook.Ids.Place, "More cars stand there than that.", about: place.Id);
        ask.Facts.Add(new PlaceSet(place));
    }

    private static void SetKeepApart(Ask ask, KeepApart rule)
    {
        CheckId(ask, rule.Id);
        foreach (var side in new[] { rule.A, rule.B })
        {
            if (side.Hazard is null == (side.Item is null || side.Condition is null)) ask.Bad("side", "A side is a hazard, or an item with a condition.");
            else if (side.Hazard is not null && !ask.Shop.Hazards.ContainsKey(side.Hazard)) ask.Bad("side", $"There is no hazard '{side.Hazard}'.");
        }

        if (rule.Scope == Scope.Distance && !(rule.Metres > 0)) ask.Bad("metres", "Say how many metres.");
        if (string.IsNullOrWhiteSpace(rule.Reason)) ask.Bad("reason", "Say why.");
        ask.Facts.Add(new KeepApartSet(rule));
    }

    private static void Things(Ask ask, Command command)
    {
        switch (command)
        {
            case SetGear c:
                CheckId(ask, c.Gear.Id);
                if (c.Gear.RatedKg <= 0) ask.Bad("ratedKg", "A rated load is above 0 kg.");
                ask.Facts.Add(new GearSet(c.Gear));
                break;
            case SetInstrument c:
                CheckId(ask, c.Instrument.Id);
                if (c.Instrument.Uncertainty < 0 || c.Instrument.UncertaintyPercent < 0) ask.Bad("uncertainty", "0 or more.");
                if (Engineering.Measures.Units.Find(c.Instrument.Unit) is null) ask.Bad("unit", Engineering.Measures.Units.UnknownWords(c.Instrument.Unit, "unit"));
                ask.Facts.Add(new InstrumentSet(c.Instrument));
                break;
            case SetHazard c:
                CheckId(ask, c.Hazard.Id);
                ask.Facts.Add(new HazardSet(c.Hazard));
                break;
            case SetShopItem c:
                CheckId(ask, c.Item.Id);
                if (!c.Item.Conditions.Contains(c.Item.Condition)) ask.Bad("condition", "It is in one of its conditions.");
                ask.Facts.Add(new ShopItemSet(c.Item));
                break;
            default: TakingOut(ask, command); break;
        }
    }

    private static void TakingOut(Ask ask, Command command)
    {
        switch (command)
        {
            case TakeOutPlace c:
                if (!ask.Shop.Places.ContainsKey(c.Place)) ask.Bad("place", $"There is no place '{c.Place}'.");
                if (ask.Shop.Cars.Values.Any(car => car.Place == c.Place || car.Tasks.Values.Any(t => t.Place == c.Place))) ask.Refuse(RuleBook.Ids.Place, "Something stands or is in hand there.", about: c.Place);
                ask.Facts.Add(new PlaceTakenOut(c.Place));
                break;
            case TakeOutKeepApart c:
                if (!ask.Shop.KeepApart.ContainsKey(c.Rule)) ask.Bad("rule", $"There is no keep-apart rule '{c.Rule}'.");
                if (string.IsNullOrWhiteSpace(c.Why)) ask.Bad("why", "Say why.");
                ask.Facts.Add(new KeepApartTakenOut(c.Rule, c.Why?.Trim() ?? ""));
                break;
            default: throw new InvalidOperationException($"No decision for {command.GetType().Name}.");
        }
    }
}
