using JobBoard.Domain.Commands;
using JobBoard.Domain.Items;

namespace JobBoard.Web.Tests.Pages;

/// <summary>Cars, one task, parts and snags.</summary>
public class CarTests
{
    [Fact]
    public async Task Forms_follow_the_state_of_the_task()
    {
        await using var server = await Workshop.Closing();
        using var inga = await server.SignIn("inga");
        using var mirek = await server.SignIn("mirek");

        var (inHand, done, coming) = (await inga.Text("/cars/plover/task/close-line"), await inga.Text("/cars/plover/task/open-line"), await inga.Text("/cars/plover/task/pump-on"));
        var apprentice = await mirek.Text("/cars/plover/task/close-line");

        Assert.True(Workshop.Offers(inHand, "sign-off-task") && Workshop.Offers(inHand, "leave-part-done") && Workshop.Offers(inHand, "log-reading"));
        Assert.False(Workshop.Offers(inHand, "start-task") || Workshop.Offers(inHand, "change-plan"));
        Assert.True(Workshop.Offers(done, "mark-undone"));
        Assert.False(Workshop.Offers(done, "start-task"));
        Assert.True(Workshop.Offers(coming, "start-task") && Workshop.Offers(coming, "revise-estimate"));
        Assert.True(Workshop.Offers(apprentice, "join-task") && !Workshop.Offers(apprentice, "sign-off-task"));
    }

    [Fact]
    public async Task A_task_says_everything_it_waits_on()
    {
        await using var server = await Workshop.Open();
        using var browser = await server.SignIn("inga");

        var html = await browser.Text("/cars/plover/task/close-line");

        Assert.Contains("Line opened is not done.", html, StringComparison.Ordinal);
        Assert.Contains("Seal ring: not ordered", html, StringComparison.Ordinal);
        Assert.Contains("Fuel line: open, then closed", html, StringComparison.Ordinal);
        Assert.Contains("starts after it is finished", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Links_are_spelled_out_and_taken_out_by_the_foreman()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");

        Assert.Contains("starts after it is finished, 30 min by the clock later", await fritz.Text("/cars/plover/task/pump-on"), StringComparison.Ordinal);
        var added = await fritz.Command("change-plan", ("car", Workshop.Car), ("addLinks[0].task", "pump-on"), ("addLinks[0].after", "close-line"), ("addLinks[0].kind", "start-start"), ("addLinks[0].lag", "15"), ("addLinks[0].clock", "working"), ("why", "after a look"));
        var html = await fritz.Text("/cars/plover/task/pump-on");
        var gone = await fritz.Command("change-plan", ("car", Workshop.Car), ("takeOutLinks[0].task", "pump-on"), ("takeOutLinks[0].after", "close-line"), ("takeOutLinks[0].kind", "start-start"), ("takeOutLinks[0].lag", "15"), ("takeOutLinks[0].clock", "working"), ("why", "not needed"));

        Assert.True(added.IsSuccessStatusCode);
        Assert.Contains("starts after it is started, 15 min of shop hours later", html, StringComparison.Ordinal);
        Assert.True(gone.IsSuccessStatusCode);
        Assert.Equal(Workshop.Plan.Links.Length, server.Runner.State.Cars[Workshop.Car].Plan.Links.Length);
    }

    [Fact]
    public async Task A_part_goes_from_ordered_to_checked_right()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");
        using var mirek = await server.SignIn("mirek");
        var first = await fritz.Text("/parts");

        await fritz.Command("order-part", ("car", Workshop.Car), ("part", "seal"), ("expected", "2000-01-01T10:00"));
        var overdue = await fritz.Text("/parts");
        await mirek.Command("arrive-part", ("car", Workshop.Car), ("part", "seal"), ("shelf", "B2"));
        var (arrived, apprentice) = (await fritz.Text("/parts"), await mirek.Text("/parts"));
        await fritz.Command("check-part", ("car", Workshop.Car), ("part", "seal"), ("right", "true"));

        Assert.Contains("not ordered, usually 2 days", first, StringComparison.Ordinal);
        Assert.Contains("overdue, was expected Sat 1 Jan", overdue, StringComparison.Ordinal);
        Assert.Contains("the date rests on it", overdue, StringComparison.Ordinal);
        Assert.Contains("arrived, B2, to be checked", arrived, StringComparison.Ordinal);
        Assert.True(Workshop.Offers(arrived, "check-part") && !Workshop.Offers(apprentice, "check-part") && !Workshop.Offers(apprentice, "order-part"));
        Assert.Equal(PartStatus.CheckedRight, server.Runner.State.Cars[Workshop.Car].Parts["seal"].Status);
        Assert.Contains("checked right, B2", await fritz.Text("/parts"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Dates_that_rest_on_a_part_say_so()
    {
        await using var server = await Workshop.Open();
        await server.Does("fritz", new OrderPart("seal", null) { Car = Workshop.Car });
        using var browser = await server.SignIn("inga");

        Assert.Contains("not known, rests on Seal ring", await browser.Text("/cars"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_date_given_stands_against_the_earliest()
    {
        await using var server = await Workshop.Open();
        using var fritz = await server.SignIn("fritz");

        await server.Does("fritz", new GiveDate(server.Runner.Now.AddDays(30), "") { Car = Workshop.Car });
        var far = await fritz.Text("/cars/plover");
        await server.Does("fritz", new GiveDate(server.Runner.Now.AddHours(1), "") { Car = Workshop.Car });
        var near = await fritz.Text("/cars/plover");

        Assert.Contains("days to spare", far, StringComparison.Ordinal);
        Assert.Contains("cannot be kept as things stand, short by", near, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_snag_is_raised_and_put_right()
    {
        await using var server = await Workshop.Open();
        using var inga = await server.SignIn("inga");
        var id = System.Text.RegularExpressions.Regex.Match(await inga.Text("/snags"), "name=\"snag\" value=\"([^\"]+)\"").Groups[1].Value;

        await inga.Command("raise-snag", ("car", Workshop.Car), ("snag", id), ("words", "scratch on the sill"));
        var raised = await inga.Text("/cars/plover");
        await inga.Command("finish-snag", ("car", Workshop.Car), ("snag", id), ("how", "polished out"));

        Assert.Equal("inga-1", id);
        Assert.Contains("scratch on the sill", raised, StringComparison.Ordinal);
        Assert.Contains("polished out (Inga, ", await inga.Text("/snags"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_item_changed_outside_a_task_is_shown_still_off()
    {
        await using var server = await Workshop.Open();
        using var sol = await server.SignIn("sol");

        await sol.Command("change-item", ("car", Workshop.Car), ("item", "line"), ("to", "open"), ("why", "clip broke"), ("aspects", "tight"));
        var (car, walk) = (await sol.Text("/cars/plover"), await sol.Text("/cars/plover/items"));

        Assert.Contains("Still off or temporary: Fuel line open.", car, StringComparison.Ordinal);
        Assert.Contains("Sol, outside a task", walk, StringComparison.Ordinal);
        Assert.Matches("""<dt>For the road</dt>(?s:.*?)closed(?s:.*?)Line closed</a>(?s:.*?)<dt>Next changed</dt><dd><a href="/cars/plover/task/open-line">Line opened</a>""", walk);
    }

    [Fact]
    public async Task A_car_is_moved_and_its_notes_are_kept()
    {
        await using var server = await Workshop.Open();
        using var sol = await server.SignIn("sol");

        await sol.Command("move-car", ("car", Workshop.Car), ("place", ""));
        await sol.Command("write-note", ("car", Workshop.Car), ("words", "left key in the door"), ("forCustomer", "true"));
        var html = await sol.Text("/cars/plover");

        Assert.Contains("nobody has said where it stands", html, StringComparison.Ordinal);
        Assert.Contains("left key in the door", html, StringComparison.Ordinal);
        Assert.Contains("may be shown to the customer", html, StringComparison.Ordinal);
    }
}
