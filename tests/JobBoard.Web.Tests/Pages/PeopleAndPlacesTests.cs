using System.Net;
using System.Text.RegularExpressions;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Hazards;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Commands;
using JobBoard.Web.Pages.PeopleAndPlaces.Change;
using JobBoard.Web.Posting;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Tests.Pages;

/// <summary>Every form of people and places is sent from the page's own markup; the page says what hangs on one person.</summary>
public partial class PeopleAndPlacesTests
{
    private const string Page = "/people-and-places";

    [Theory]
    [InlineData("inga", false, false)]
    [InlineData("fritz", true, false)]
    [InlineData("ada", true, true)]
    public async Task Each_position_sees_its_own_forms(string person, bool saysForOthers, bool sets)
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn(person);

        var html = await browser.Text(Page);
        var form = await browser.Get(Page + "/change/person");

        Assert.Contains($"id=\"form-out-{person}\"", html, StringComparison.Ordinal);
        Assert.Contains("Heron coupe", html, StringComparison.Ordinal);
        Assert.Equal(saysForOthers, html.Contains("id=\"form-out-sol\"", StringComparison.Ordinal));
        Assert.Equal(sets, html.Contains("/people-and-places/change/", StringComparison.Ordinal));
        Assert.Equal(sets, form.StatusCode == HttpStatusCode.OK);
        Assert.DoesNotContain(FormSeal.Blank, html, StringComparison.Ordinal);
        var ids = Ids().Matches(html).Select(m => m.Value).ToArray();
        Assert.Equal(ids.Distinct().Order(), ids.Order());
    }

    [Fact]
    public async Task An_apprentice_sees_the_page()
    {
        await using var server = await Server.Start();
        await server.Does("ada", new SetPerson("mirek", "Mirek", Position.Apprentice) { WorksUnder = "sol" });
        server.Service<PinBook>().Set("mirek", Server.Pin);
        using var browser = await server.SignIn("mirek");

        var html = await browser.Text(Page);

        Assert.Contains("apprentice, works beside Sol", html, StringComparison.Ordinal);
        Assert.Contains("id=\"form-in-mirek\"", html, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"form-out-sol\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Out_in_and_away_are_said()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("fritz");
        var sol = () => server.Runner.State.People["sol"];

        await Sent(browser, Page, "form-out-sol");
        Assert.Null(sol().InSince);
        await Sent(browser, Page, "form-in-sol");
        Assert.NotNull(sol().InSince);
        await Sent(browser, Page, "form-away-sol", ("from", "2030-01-07T08:00"), ("to", "2030-01-09T17:00"), ("why", "welding course"));
        Assert.Equal("welding course", Assert.Single(sol().Absences).Why);
        Assert.Contains("Away Mon 7 Jan 08:00 to Wed 9 Jan 17:00: welding course", await browser.Text(Page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_shop_is_set_with_its_hours()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");
        (string, string)[] monday = [("hours[0].from", "08:00"), ("hours[0].to", "12:00"), ("hours[1].from", "12:30"), ("hours[1].to", "17:00")];

        await Sent(browser, Page + "/change/shop", "form-shop", [("name", "Tarn Lane"), ("zone", "Europe/Berlin"), ("closed", "2030-12-24"), .. monday]);
        var html = await browser.Text(Page);
        var again = FormInPage.Of(await browser.Text(Page + "/change/shop"), "form-shop");

        var shop = server.Runner.State;
        Assert.Equal(("Tarn Lane", "Europe/Berlin"), (shop.Name, shop.Zone));
        Assert.Equal([(DayOfWeek.Monday, new TimeOnly(8, 0), new TimeOnly(12, 0)), (DayOfWeek.Monday, new TimeOnly(12, 30), new TimeOnly(17, 0))], shop.Hours.Select(h => (h.Day, h.From, h.To)));
        Assert.Equal([new DateOnly(2030, 12, 24)], shop.Closed.AsEnumerable());
        Assert.Contains("Monday: 08:00 to 12:00, 12:30 to 17:00", html, StringComparison.Ordinal);
        Assert.Contains("Tuesday to Sunday: closed", html, StringComparison.Ordinal);
        Assert.Equal(["12:30"], again.Held("hours[1].from"));
    }

    [Fact]
    public async Task A_person_is_made_changed_and_leaves()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");
        var form = Page + "/change/person";

        await Sent(browser, form, "form-person", ("name", "Noor Öst"), ("position", "technician"), ("qualifications[0].for", "fuel"), ("qualifications[0].until", "2030-06-01"));
        var made = server.Runner.State.People["noor-ost"];
        await Sent(browser, form + "?id=noor-ost", "form-person", ("position", "apprentice"), ("worksUnder", "inga"), ("outside", "true"), ("hours[2].from", "09:00"), ("hours[2].to", "13:00"));
        var changed = server.Runner.State.People["noor-ost"];
        await Sent(browser, form + "?id=noor-ost", "form-leave");

        Assert.Equal(("Noor Öst", Position.Technician, "fuel"), (made.Name, made.Position, Assert.Single(made.Qualifications).For));
        Assert.Equal(("Noor Öst", "inga", true), (changed.Name, changed.WorksUnder, changed.Outside));
        Assert.Equal(made.Qualifications[0], Assert.Single(changed.Qualifications));
        Assert.Equal(DayOfWeek.Tuesday, Assert.Single(changed.Hours).Day);
        Assert.True(server.Runner.State.People["noor-ost"].Left);
    }

    [Fact]
    public async Task A_place_is_set_and_taken_out()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");
        (string, string)[] area = [("place.area.x", "5,5"), ("place.area.y", "0"), ("place.area.width", "4"), ("place.area.depth", "6.5")];

        await Sent(browser, Page + "/change/place", "form-place", [("place.name", "Bay 1"), ("place.kind", "bay"), ("place.capacity", "2"), .. area]);
        var place = server.Runner.State.Places["bay-1-2"];
        var html = await browser.Text(Page);
        await Sent(browser, Page + "/change/place?id=bay-1-2", "form-take-out");

        Assert.Equal((new Area(5.5m, 0, 4, 6.5m), 2), (place.Area, place.Capacity));
        Assert.Contains("id=\"shop-map-bay-1-2\" x=\"580\" y=\"30\" width=\"400\" height=\"650\"", html, StringComparison.Ordinal);
        Assert.DoesNotContain("bay-1-2", server.Runner.State.Places.Keys);
    }

    [Fact]
    public async Task Gear_and_instruments_are_set_and_overdue_is_said()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");
        (string, string)[] sweep = [("gear.sweep.x", "0"), ("gear.sweep.y", "0"), ("gear.sweep.width", "9"), ("gear.sweep.depth", "7")];

        await Sent(browser, Page + "/change/gear", "form-gear", [("gear.name", "Gantry"), ("gear.kind", "hoist"), ("gear.ratedKg", "1000"), ("gear.inspectedUntil", "2020-01-06"), .. sweep]);
        await Sent(browser, Page + "/change/gear?id=gantry", "form-gear", ("gear.outOfUse", "hook bent"));
        await Sent(browser, Page + "/change/instrument", "form-instrument", ("instrument.name", "Fuel gauge"), ("instrument.unit", "kPa"), ("instrument.uncertainty", "4"), ("instrument.calibratedUntil", "2020-01-07"));
        var html = await browser.Text(Page);

        var gantry = server.Runner.State.Gear["gantry"];
        Assert.Equal((1000m, new Area(0, 0, 9, 7), "hook bent"), (gantry.RatedKg, gantry.Sweep, gantry.OutOfUse));
        Assert.Equal(4m, server.Runner.State.Instruments["fuel-gauge"].Uncertainty);
        foreach (var words in new[] { "hoist, rated load 1000 kg", "inspection overdue since Mon 6 Jan 2020", "Out of use: hook bent", "uncertainty U 4 kPa", "calibration overdue since Tue 7 Jan 2020" })
            Assert.Contains(words, html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Hazards_and_rules_are_set_and_taken_out()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");
        var rules = Page + "/change/keep-apart";

        await Sent(browser, Page + "/change/hazard", "form-hazard", ("hazard.name", "Suspended load"), ("hazard.sign", "W015"), ("hazard.ends", "with-the-condition"), ("hazard.caution", "Nobody below."), ("hazard.pinsCar", "true"));
        await Sent(browser, Page + "/change/hazard", "form-hazard", ("hazard.name", "Somebody under the car"));
        await Sent(browser, rules, "form-rule", ("rule.a.hazard", "suspended-load"), ("rule.b.hazard", "somebody-under-the-car"), ("rule.scope", "sweep"), ("rule.reason", "A load can fall."));
        var html = await browser.Text(Page);
        await Sent(browser, rules + "?id=suspended-load-and-somebody-under-the-car", "form-rule", ("rule.scope", "distance"), ("rule.metres", "11"));
        var changed = Assert.Single(server.Runner.State.KeepApart).Value;
        await Sent(browser, rules + "?id=suspended-load-and-somebody-under-the-car", "form-take-out", ("why", "another gantry"));

        Assert.Equal(("W015", HazardEnd.WithTheCondition, true), Facts(server.Runner.State.Hazards["suspended-load"]));
        Assert.Contains("Suspended load and somebody under the car: not in the same sweep; a load can fall.", html, StringComparison.Ordinal);
        Assert.Equal((Scope.Distance, 11m, "A load can fall."), (changed.Scope, changed.Metres, changed.Reason));
        Assert.Empty(server.Runner.State.KeepApart);
    }

    [Fact]
    public async Task A_thing_of_the_shop_is_set_and_turned_off()
    {
        await using var server = await Server.Start();
        await server.Does("ada", new SetHazard(new() { Id = "no-extraction", Name = "No extraction", Sign = "W016", Ends = HazardEnd.WithTheCondition }));
        using var owner = await server.SignIn("ada");
        using var browser = await server.SignIn("inga");
        (string, string)[] thing = [("item.name", "Extraction"), ("item.conditions", "on"), ("item.dangers[0].condition", "off"), ("item.dangers[0].hazard", "no-extraction")];
        var form = async (string condition) => FormInPage.Of(await owner.Text(Page + "/change/item"), "form-shop-item").Fill([.. thing, ("item.condition", condition)]).And("item.conditions", "off");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await (await form("broken")).Post(owner)).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await (await form("on")).Post(owner)).StatusCode);
        await Sent(browser, Page, "form-item-extraction", ("to", "off"), ("why", "filter change"));

        var item = server.Runner.State.Items["extraction"];
        Assert.Equal(["on", "off"], item.Conditions.AsEnumerable());
        Assert.Equal(("off", "no-extraction"), (item.Condition, Assert.Single(item.Dangers).Hazard));
        Assert.Contains("Extraction: off", await browser.Text(Page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_hangs_on_one_person_is_said()
    {
        await using var server = await Server.Start();
        await server.Does("ada", new SetPerson("sol", "Sol", Position.Technician) { Qualifications = [new("fuel"), new("lifting"), new("welding")] });
        await server.Does("ada", new SetPerson("inga", "Inga", Position.Technician) { Qualifications = [new("lifting")] });
        await server.Does("fritz", new TakeInCar("Wren", Asks("fuel", "lifting"), null) { Car = "wren" });
        using var browser = await server.SignIn("inga");

        var html = await browser.Text(Page);

        Assert.Contains("Sol alone is qualified for fuel", html, StringComparison.Ordinal);
        Assert.Contains("Wren asks for it. While Sol is away that work waits.", html, StringComparison.Ordinal);
        Assert.DoesNotContain("alone is qualified for lifting", html, StringComparison.Ordinal);
        Assert.DoesNotContain("alone is qualified for welding", html, StringComparison.Ordinal);

        await server.Does("ada", new SetPerson("sol", "Sol", Position.Technician) { Qualifications = [new("lifting")] });
        Assert.Contains("Nobody is qualified for fuel", await browser.Text(Page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_somebody_has_in_hand_is_shown()
    {
        await using var server = await Server.Start();
        await server.Does("inga", new StartTask([new("inga")]) { Car = "heron", Task = "a" });
        using var browser = await server.SignIn("sol");

        Assert.Matches("""id="person-inga"(?s:.*?)<a href="/cars/heron/task/a">Fuel line</a>, Heron coupe""", await browser.Text(Page));
    }

    [Fact]
    public async Task A_bad_field_is_named_and_what_was_typed_is_kept()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");
        var shop = FormInPage.Of(await browser.Text(Page + "/change/shop"), "form-shop").Fill(("name", "Tarn <Lane>"), ("zone", "Europe/Berlin"), ("hours[4].from", "half past eight"), ("hours[4].to", "12:00"));
        var place = FormInPage.Of(await browser.Text(Page + "/change/place"), "form-place").Fill(("place.name", "Bay 9"), ("place.area.x", "left"), ("place.area.y", "1"), ("place.area.width", "4"));

        var (badHours, badPlace) = (await shop.Post(browser), await place.Post(browser));
        var (hours, area) = (await Html(badHours), await Html(badPlace));

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (badHours.StatusCode, badPlace.StatusCode));
        foreach (var words in new[] { "data-field=\"hours[4].from\"", "Hours, line 5: from", "half past eight", "Tarn &lt;Lane&gt;" }) Assert.Contains(words, hours, StringComparison.Ordinal);
        foreach (var words in new[] { "data-field=\"place.area.x\"", "data-field=\"place.area.depth\"", "Bay 9" }) Assert.Contains(words, area, StringComparison.Ordinal);
        Assert.DoesNotContain("bay-9", server.Runner.State.Places.Keys);
    }

    [Fact]
    public async Task A_new_thing_sent_twice_is_one_thing()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");
        var form = FormInPage.Of(await browser.Text(Page + "/change/gear"), "form-gear").Fill(("gear.name", "Load beam"), ("gear.kind", "load beam"));

        Assert.Equal(HttpStatusCode.Redirect, (await form.Post(browser)).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await form.Post(browser)).StatusCode);

        Assert.Equal(["load-beam"], server.Runner.State.Gear.Keys);
    }

    /// <summary>Every command about the shop's own things has a form somewhere in this screen.</summary>
    [Fact]
    public async Task Every_command_of_the_shop_has_a_form()
    {
        await using var server = await Server.Start();
        await server.Does("ada", new SetHazard(new() { Id = "h", Name = "H", Sign = "W001", Ends = HazardEnd.WithTheWork }));
        await server.Does("ada", new SetKeepApart(new() { Id = "r", A = new("h"), B = new("h"), Scope = Scope.Car, Reason = "x" }));
        await server.Does("ada", new SetShopItem(new() { Id = "i", Name = "I", Conditions = ["on", "off"], Condition = "on" }));
        await server.Does("ada", new GoOut("sol"));
        using var browser = await server.SignIn("ada");
        var pages = ChangeForms.All.Select(w => $"{Page}/change/{w}").Concat(["person?id=sol", "place?id=bay-1", "keep-apart?id=r"]).Select(p => p.StartsWith('/') ? p : $"{Page}/change/{p}");

        var html = await browser.Text(Page);
        foreach (var page in pages) html += await browser.Text(page);

        Type[] commands =
        [
            typeof(SetShop), typeof(SetPerson), typeof(ComeIn), typeof(GoOut), typeof(BeAway), typeof(LeaveShop), typeof(SetPlace), typeof(TakeOutPlace), typeof(SetGear),
            typeof(SetInstrument), typeof(SetHazard), typeof(SetKeepApart), typeof(TakeOutKeepApart), typeof(SetShopItem), typeof(ChangeShopItem),
        ];
        foreach (var command in commands) Assert.Contains($"action=\"/do/{CommandJson.KindOf(command)}\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_not_there_is_not_found()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");

        foreach (var what in new[] { "place?id=nowhere", "unicorn", "person?id=" + new string('x', 70) })
            Assert.Equal(HttpStatusCode.NotFound, (await browser.Get($"{Page}/change/{what}")).StatusCode);
    }

    private static (string Sign, HazardEnd Ends, bool Pins) Facts(HazardKind h) => (h.Sign, h.Ends, h.PinsCar);

    private static async Task Sent(Browser browser, string page, string form, params (string, string)[] typed)
    {
        var answer = await FormInPage.Of(await browser.Text(page), form).Fill(typed).Post(browser);
        Assert.True(answer.StatusCode == HttpStatusCode.Redirect, await Html(answer));
    }

    private static Task<string> Html(HttpResponseMessage answer) => answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    private static Plan Asks(params string[] qualifications) => new()
    {
        Id = "p",
        Name = "p",
        Stages = [new("s", "Stage")],
        Tasks = [.. qualifications.Select(q => new PlanTask { Id = q, Name = q, Stage = "s", Estimate = new(30, 60, 90), Crew = [new("lead", q)] })],
    };

    [GeneratedRegex(" id=\"[^\"]*\"")]
    private static partial Regex Ids();
}
