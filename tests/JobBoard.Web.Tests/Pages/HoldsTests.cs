using JobBoard.Domain.Commands;
using JobBoard.Domain.Holds;
using JobBoard.Domain.Work;

namespace JobBoard.Web.Tests.Pages;

/// <summary>What the holds ask of whom, and that it goes away when it is done.</summary>
public class HoldsTests
{
    [Fact]
    public async Task A_released_hold_disappears()
    {
        await using var server = await Workshop.AtTheHold();
        using var browser = await server.SignIn("fritz");
        var before = await browser.Text("/holds");

        var answer = await browser.Command("release-hold", ("car", Workshop.Car), ("hold", "leak-seen"), ("why", "dry"), ("evidence", "looked with a lamp"));
        var after = await browser.Text("/holds");

        Assert.True(answer.IsSuccessStatusCode);
        Assert.Contains("form-release-plover-leak-seen", before, StringComparison.Ordinal);
        Assert.Contains("Dry at every joint.", before, StringComparison.Ordinal);
        Assert.DoesNotContain("No leak seen", after, StringComparison.Ordinal);
        Assert.Contains("Nothing needs you now.", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_hold_is_offered_only_to_those_who_may_release()
    {
        await using var server = await Workshop.AtTheHold();
        using var technician = await server.SignIn("sol");

        var html = await technician.Text("/holds");

        Assert.False(Workshop.Offers(html, "release-hold"));
        Assert.Contains("Ada or Fritz may release it.", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_hold_not_reached_says_what_it_waits_on()
    {
        await using var server = await Workshop.Open();
        using var browser = await server.SignIn("fritz");

        var html = await browser.Text("/holds");

        Assert.Contains("Plover saloon: Line closed is not done.", html, StringComparison.Ordinal);
        Assert.False(Workshop.Offers(html, "release-hold"));
    }

    [Fact]
    public async Task A_second_check_is_offered_to_another_person_only()
    {
        await using var server = await Workshop.ForSecondCheck();
        using var inga = await server.SignIn("inga");
        using var sol = await server.SignIn("sol");
        using var mirek = await server.SignIn("mirek");

        var (own, other, apprentice) = (await inga.Text("/holds"), await sol.Text("/holds"), await mirek.Text("/holds"));

        Assert.False(Workshop.Offers(own, "second-check"));
        Assert.Contains("Checked by another person: Ada or Fritz or Sol.", own, StringComparison.Ordinal);
        Assert.True(Workshop.Offers(other, "second-check"));
        Assert.Contains("Fall in ten minutes: 12 kPa, in limits", other, StringComparison.Ordinal);
        Assert.False(Workshop.Offers(apprentice, "second-check"));
    }

    [Fact]
    public async Task A_reading_out_is_released_by_the_foreman()
    {
        await using var server = await Workshop.Closing();
        await server.Does("inga", new LogReading("fall", "80", "kPa") { Car = Workshop.Car, Task = "close-line" });
        using var inga = await server.SignIn("inga");
        using var fritz = await server.SignIn("fritz");
        var own = await inga.Text("/holds");
        var before = await fritz.Text("/holds");

        await fritz.Command("release-reading", ("car", Workshop.Car), ("task", "close-line"), ("reading", "fall"), ("why", "gauge known to fall"));
        var after = await fritz.Text("/holds");

        Assert.False(Workshop.Offers(own, "release-reading"));
        Assert.Contains("80 kPa, out", own, StringComparison.Ordinal);
        Assert.True(Workshop.Offers(before, "release-reading"));
        Assert.DoesNotContain("80 kPa", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_stop_goes_from_heard_to_safe_to_released()
    {
        await using var server = await Workshop.Closing();
        await server.Does("sol", new RaiseStop(StopScope.Car, "smell of fuel") { Car = Workshop.Car });
        var stop = Assert.Single(server.Runner.State.Stops).Key;
        using var inga = await server.SignIn("inga");
        using var fritz = await server.SignIn("fritz");

        var told = await inga.Text("/holds");
        await inga.Command("hear-stop", ("stop", stop));
        var heard = await fritz.Text("/holds");
        await inga.Command("make-safe", ("stop", stop), ("how", "line capped"));
        var (ownSafe, safe) = (await inga.Text("/holds"), await fritz.Text("/holds"));
        await fritz.Command("release-stop", ("stop", stop), ("why", "line changed"), ("evidence", "looked"));

        Assert.Contains("form-heard-" + stop, told, StringComparison.Ordinal);
        Assert.Contains("<dd>Inga</dd>", heard, StringComparison.Ordinal);
        Assert.False(Workshop.Offers(heard, "release-stop"));
        Assert.False(Workshop.Offers(ownSafe, "release-stop"));
        Assert.True(Workshop.Offers(safe, "release-stop"));
        Assert.Contains("Made safe by Inga: line capped", safe, StringComparison.Ordinal);
        Assert.DoesNotContain("smell of fuel", await fritz.Text("/holds"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_undone_task_asks_again_or_not()
    {
        await using var server = await Workshop.AtTheHold();
        await server.Does("sol", new MarkUndone("flare is split") { Car = Workshop.Car, Task = "open-line" });
        using var fritz = await server.SignIn("fritz");
        var asked = await fritz.Text("/holds");

        await fritz.Command("answer-again", ("car", Workshop.Car), ("task", "close-line"), ("again", "true"), ("why", "the line was open again"));

        Assert.Contains("Line closed: again or not?", asked, StringComparison.Ordinal);
        Assert.DoesNotContain("again or not?", await fritz.Text("/holds"), StringComparison.Ordinal);
        Assert.Equal(WorkStatus.Undone, server.Runner.State.Cars[Workshop.Car].Tasks["close-line"].Status);
    }

    [Fact]
    public async Task One_task_is_let_through_one_hold()
    {
        await using var server = await Workshop.AtTheHold();
        using var fritz = await server.SignIn("fritz");

        Assert.Contains("<option value=\"pump-on\">Pump on</option>", await fritz.Text("/holds"), StringComparison.Ordinal);
        await fritz.Command("let-through", ("car", Workshop.Car), ("hold", "leak-seen"), ("task", "pump-on"), ("why", "pump has to run for the test"));

        Assert.Contains("leak-seen|pump-on", server.Runner.State.Cars[Workshop.Car].LetThrough.Keys);
    }

    [Fact]
    public async Task A_danger_is_made_safe_by_word()
    {
        await using var server = await Workshop.AtTheHold();
        await server.Does("fritz", new ReleaseHold("leak-seen", "dry", "lamp") { Car = Workshop.Car });
        server.Clock.Set(DateTimeOffset.UtcNow.AddMinutes(40));
        await server.Does("sol", new StartTask([new CrewMember("sol")]) { Car = Workshop.Car, Task = "pump-on" });
        await server.Does("sol", new SignOffTask { Car = Workshop.Car, Task = "pump-on" });
        using var browser = await server.SignIn("sol");

        Assert.Contains("Fuel under pressure", await browser.Text("/holds"), StringComparison.Ordinal);
        await browser.Command("make-hazard-safe", ("car", Workshop.Car), ("hazard", "pump-on/fuel-pressure"), ("how", "bled at the rail"));

        Assert.DoesNotContain("Fuel under pressure", await browser.Text("/holds"), StringComparison.Ordinal);
    }
}
