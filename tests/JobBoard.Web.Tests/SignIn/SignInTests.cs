using System.Net;
using JobBoard.Domain.Commands;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Tests.SignIn;

/// <summary>Name and PIN; a wrong PIN slows the device, never the person.</summary>
public class SignInTests
{
    [Fact]
    public async Task Nobody_sees_a_page_without_signing_in()
    {
        await using var server = await Server.Start();
        using var browser = server.Open();

        var answer = await browser.Get("/access");

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.StartsWith("/sign-in?back=%2Faccess", answer.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Signing_in_leads_back_to_where_one_was()
    {
        await using var server = await Server.Start();
        using var browser = server.Open();

        var answer = await browser.Post("/sign-in", "/sign-in", ("person", "ada"), ("pin", Server.Pin), ("back", "/access"));
        var away = await browser.Post("/sign-in", "/sign-in", ("person", "ada"), ("pin", Server.Pin), ("back", "//elsewhere.example/"));

        Assert.Equal("/access", answer.Headers.Location!.ToString());
        Assert.Equal("/", away.Headers.Location!.ToString());
        Assert.Equal(HttpStatusCode.OK, (await browser.Get("/access")).StatusCode);
    }

    [Fact]
    public async Task A_page_of_the_owner_is_closed_to_others()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("fritz");

        Assert.Equal(HttpStatusCode.Redirect, (await browser.Get("/access")).StatusCode);
    }

    [Fact]
    public async Task Wrong_pins_slow_the_device_but_not_the_person()
    {
        await using var server = await Server.Start();
        using var tablet = await server.SignIn("sol");
        using var phone = await server.SignIn("inga");
        for (var i = 0; i < DevicePatience.Free; i++) Assert.Contains("not the PIN", await TryPin(tablet, "inga", "0000"), StringComparison.Ordinal);

        var right = await TryPin(tablet, "inga", Server.Pin);
        var elsewhere = await phone.Post("/sign-in", "/sign-in", ("person", "inga"), ("pin", Server.Pin));
        server.Clock.Set(DateTimeOffset.UtcNow + DevicePatience.WaitAfter(DevicePatience.Free) + TimeSpan.FromSeconds(1));
        var later = await tablet.Post("/sign-in", "/sign-in", ("person", "inga"), ("pin", Server.Pin));

        Assert.Contains("Wait ", right, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, elsewhere.StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, later.StatusCode);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(2, 0)]
    [InlineData(3, 5)]
    [InlineData(4, 10)]
    [InlineData(7, 80)]
    [InlineData(9, 300)]
    [InlineData(90, 300)]
    public void Each_wrong_pin_costs_more_up_to_five_minutes(long wrong, int seconds) =>
        Assert.Equal(seconds, DevicePatience.WaitAfter(wrong).TotalSeconds);

    [Fact]
    public async Task A_new_pin_ends_what_was_begun_with_the_old_one()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");
        using var other = await server.SignIn("ada");

        var given = await browser.Post("/access?handler=Pin", "/access", ("person", "ada"), ("pin", "8642"));

        Assert.Equal(HttpStatusCode.Redirect, given.StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await browser.Get("/access")).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await other.Get("/access")).StatusCode);
    }

    [Fact]
    public async Task Who_left_is_signed_out_and_not_on_the_list()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("sol");
        await server.Does("ada", new LeaveShop("sol"));

        var command = await browser.Command("go-out", ("person", "sol"));
        var list = await server.Open().Text("/sign-in");

        Assert.Equal(HttpStatusCode.Unauthorized, command.StatusCode);
        Assert.DoesNotContain(">Sol<", list, StringComparison.Ordinal);
        Assert.Contains(">Inga<", list, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Signing_out_needs_the_token_and_ends_it()
    {
        await using var server = await Server.Start();
        using var browser = await server.SignIn("ada");

        var bare = await browser.PostBare("/sign-in?handler=Out", []);
        Assert.Equal(HttpStatusCode.OK, (await browser.Get("/access")).StatusCode);
        await browser.Post("/sign-in?handler=Out", "/sign-in");

        Assert.Equal(HttpStatusCode.BadRequest, bare.StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await browser.Get("/access")).StatusCode);
    }

    [Theory]
    [InlineData("123", "4 to 8")]
    [InlineData("123456789", "4 to 8")]
    [InlineData("12a4", "digits only")]
    [InlineData("7777", "over and over")]
    [InlineData("4711", null)]
    public void A_pin_is_four_to_eight_digits(string pin, string? fault)
    {
        var found = PinBook.Fault(pin);

        if (fault is null) Assert.Null(found);
        else Assert.Contains(fault, found, StringComparison.Ordinal);
    }

    private static async Task<string> TryPin(Browser browser, string person, string pin)
    {
        var answer = await browser.Post("/sign-in", "/sign-in?person=" + person, ("person", person), ("pin", pin));
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
    }
}
