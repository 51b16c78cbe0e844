using System.Text.RegularExpressions;
using JobBoard.Domain.Commands;

namespace JobBoard.Web.Tests.Pages;

/// <summary>The walk round a car, and its readings by where they are.</summary>
public class WalkTests
{
    private const string Items = "/cars/plover/items";
    private const string Readings = "/cars/plover/readings";

    [Fact]
    public async Task An_item_says_its_condition_and_what_puts_it_right()
    {
        await using var server = await Workshop.Open();
        using var inga = await server.SignIn("inga");
        var before = await inga.Text(Items);

        await server.Does("inga", new StartTask([new("inga")]) { Car = Workshop.Car, Task = "open-line" });
        var inHand = await inga.Text(Items);
        await server.Does("inga", new SignOffTask { Car = Workshop.Car, Task = "open-line" });
        var open = await inga.Text(Items);

        Assert.Contains("All 2 items are as for the road.", before, StringComparison.Ordinal);
        Assert.Contains("changed now by Line opened, in hand, Inga", inHand, StringComparison.Ordinal);
        Assert.Contains("One of 2 items is still off or temporary.", open, StringComparison.Ordinal);
        Assert.Matches("""id="item-line-is">open<(?s:.*?)Inga, Line opened(?s:.*?)by <a href="/cars/plover/task/close-line">Line closed</a>""", open);
        Assert.DoesNotContain("walk-forgotten", open, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_no_task_puts_right_stands_in_plain_sight()
    {
        await using var server = await Workshop.AtTheHold();
        using var sol = await server.SignIn("sol");

        await sol.Command("change-item", ("car", Workshop.Car), ("item", "cap"), ("to", "off"), ("why", "cap broke"));
        var html = await sol.Text(Items);

        Assert.Contains("""<a href="#item-cap">Tank cap</a>: off, for the road on""", html, StringComparison.Ordinal);
        Assert.Contains("outside a task", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reading_of_work_in_hand_names_its_tool()
    {
        await using var server = await Workshop.Closing();
        using var inga = await server.SignIn("inga");

        var html = await inga.Text(Readings);

        Assert.Contains("0 of 1 are taken and stand", html, StringComparison.Ordinal);
        Assert.Matches("""id="fetch-fuel-gauge"(?s:.*?)Fall in ten minutes, rear, under: <a href="/cars/plover/task/close-line">Line closed</a>, in hand, Inga""", html);
        Assert.Matches("""id="readings-rear"(?s:.*?)id="reading-close-line-fall"(?s:.*?)limit 0 to 35 kPa(?s:.*?)not taken""", html);
    }

    [Theory]
    [InlineData("80", "80 kPa, out", "0 of 1", true)]
    [InlineData("12", "12 kPa, in limits", "1 of 1", false)]
    public async Task A_reading_taken_says_whether_it_is_in_limits(string value, string words, string standing, bool stillWanted)
    {
        await using var server = await Workshop.Closing();
        using var inga = await server.SignIn("inga");

        await server.Does("inga", new LogReading("fall", value, "kPa") { Car = Workshop.Car, Task = "close-line" });
        var html = await inga.Text(Readings);

        Assert.Contains(words, html, StringComparison.Ordinal);
        Assert.Contains(standing + " are taken and stand", html, StringComparison.Ordinal);
        Assert.Equal(stillWanted, html.Contains("id=\"fetch-fuel-gauge\"", StringComparison.Ordinal));
        Assert.Equal(!stillWanted, Regex.IsMatch(html, "id=\"readings-rear-fine\"(?s:.*)id=\"reading-close-line-fall\""));
    }

    [Fact]
    public async Task A_reading_that_lapsed_is_wanted_again()
    {
        await using var server = await Workshop.AtTheHold();
        using var sol = await server.SignIn("sol");
        var before = await sol.Text(Readings);

        await server.Does("sol", new ChangeItem("line", "open", "clip broke") { Car = Workshop.Car, Aspects = ["tight"] });
        var after = await sol.Text(Readings);

        Assert.Contains("12 kPa, in limits", before, StringComparison.Ordinal);
        Assert.Contains("12 kPa, lapsed", after, StringComparison.Ordinal);
        Assert.Matches("lapsed: (?s:.*?)Sol", after);
    }
}
