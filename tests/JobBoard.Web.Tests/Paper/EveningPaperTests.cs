using System.Net;
using JobBoard.Domain.Commands;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Running;
using JobBoard.Web.Hosting;
using JobBoard.Web.Paper;
using JobBoard.Web.Verbs;

namespace JobBoard.Web.Tests.Paper;

/// <summary>Sheets by hand and every evening by themselves.</summary>
public class EveningPaperTests
{
    private static readonly DateTimeOffset Wednesday = new(2030, 3, 6, 0, 0, 0, TimeSpan.Zero);

    [Theory]
    [InlineData("2030-03-06T16:59Z", "2030-03-05")]
    [InlineData("2030-03-06T17:00Z", "2030-03-06")]
    [InlineData("2030-03-06T12:15Z", "2030-03-05")]
    [InlineData("2030-03-10T12:00Z", "2030-03-08")]
    public async Task Sheets_are_due_when_the_shop_closes_for_the_day(string now, string day)
    {
        await using var server = await Open();

        Assert.Equal(DateOnly.Parse(day, null), PaperTimes.Read(null).LastDue(server.Runner.State, DateTimeOffset.Parse(now, null)));
    }

    [Theory]
    [InlineData("2030-03-06T15:29Z", "2030-03-05")]
    [InlineData("2030-03-06T15:30Z", "2030-03-06")]
    public async Task Or_at_the_time_given(string now, string day)
    {
        await using var server = await Open();

        Assert.Equal(DateOnly.Parse(day, null), PaperTimes.Read("15:30").LastDue(server.Runner.State, DateTimeOffset.Parse(now, null)));
    }

    [Theory]
    [InlineData("25:00")]
    [InlineData("half five")]
    [InlineData("")]
    public void A_time_that_is_none_is_named(string text) => Assert.Contains("HH:MM", Assert.Throws<CommandLineException>(() => PaperTimes.Read(text)).Message, StringComparison.Ordinal);

    [Fact]
    public async Task Evenings_are_written_once_and_a_missed_one_is_caught_up()
    {
        await using var server = await Open();
        var (clock, evening) = (server.Service<ShopClock>(), server.Service<EveningPaper>());
        clock.Set(Wednesday.AddHours(16));
        await evening.Look();
        var tuesday = Path.Combine(evening.Root, "2030-03-05");
        var written = File.GetLastWriteTimeUtc(Path.Combine(tuesday, "shop.html"));
        await evening.Look();
        clock.Set(Wednesday.AddHours(17));
        await evening.Look();

        Assert.Equal(written, File.GetLastWriteTimeUtc(Path.Combine(tuesday, "shop.html")));
        var sheet = await File.ReadAllTextAsync(Path.Combine(evening.Root, "2030-03-06", "car-heron.html"), TestContext.Current.CancellationToken);
        Assert.Contains("Heron coupe", sheet, StringComparison.Ordinal);
        Assert.Contains("Fuel line", sheet, StringComparison.Ordinal);
        Assert.Contains("State of Wed 6 Mar 2030 17:00, entry", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("http", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("href=\"/", sheet, StringComparison.Ordinal);
        Assert.Equal(["car-heron.html", "paper.css", "shop.html"], Directory.GetFiles(tuesday).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.DoesNotContain(Directory.GetDirectories(evening.Root), d => d.EndsWith(".writing", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Thirty_days_are_kept()
    {
        await using var server = await Open();
        var evening = server.Service<EveningPaper>();
        for (var i = 1; i <= 40; i++) Directory.CreateDirectory(PaperFolder.Of(evening.Root, new DateOnly(2029, 1, 1).AddDays(i)));
        var foreign = Directory.CreateDirectory(Path.Combine(evening.Root, "mine"));
        server.Service<ShopClock>().Set(Wednesday.AddHours(18));
        await evening.Look();

        var days = Directory.GetDirectories(evening.Root).Select(Path.GetFileName).Where(d => d != "mine").Order(StringComparer.Ordinal).ToArray();
        Assert.Equal(PaperFolder.DaysKept, days.Length);
        Assert.Equal("2030-03-06", days[^1]);
        Assert.True(foreign.Exists);
    }

    [Fact]
    public async Task What_cannot_be_written_is_said_to_the_owner_until_it_can()
    {
        await using var server = await Open();
        using var owner = await server.SignIn("ada");
        var evening = server.Service<EveningPaper>();
        if (Directory.Exists(evening.Root)) Directory.Delete(evening.Root, recursive: true);
        await File.WriteAllTextAsync(evening.Root, "in the way", TestContext.Current.CancellationToken);
        server.Service<ShopClock>().Set(Wednesday.AddHours(18));
        await evening.Look();
        var failed = await owner.Text("/access");
        File.Delete(evening.Root);
        await evening.Look();
        var well = await owner.Text("/access");

        Assert.Contains("could not be written", failed, StringComparison.Ordinal);
        Assert.DoesNotContain("could not be written", well, StringComparison.Ordinal);
        Assert.Contains("when the shop closes for the day", well, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(evening.Root, "2030-03-06", "shop.html")));
    }

    [Fact]
    public async Task A_cars_sheet_is_a_page_for_everybody_signed_in()
    {
        await using var server = await Open();
        using var browser = await server.SignIn("inga");

        var page = await browser.Text("/cars/heron/paper");

        Assert.Contains("printed by Inga", page, StringComparison.Ordinal);
        Assert.Contains("write here", page, StringComparison.Ordinal);
        Assert.Contains(server.Service<EveningPaper>().Root, WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.Contains("href=\"/cars/heron/paper\"", await browser.Text("/cars/heron"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await browser.Get("/cars/none/paper")).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await server.Open().Get("/cars/heron/paper")).StatusCode);
    }

    [Fact]
    public async Task The_verb_writes_them_while_no_server_runs()
    {
        var (data, to) = (Directory.CreateTempSubdirectory("jobboard-test-").FullName, Directory.CreateTempSubdirectory("jobboard-test-").FullName);
        await using (var server = await Open())
        {
            Assert.Contains("in use by another", (await Run("paper", "--data", server.Folder, Path.Combine(to, "sheets"))).Errors, StringComparison.Ordinal);
        }

        await using (var shop = RunningShop.Open(data, TimeProvider.System))
        {
            await shop.Runner.Send(new(Guid.CreateVersion7(), "ada", shop.Runner.Now, null, new SetPerson("ada", "Ada", Position.Owner)));
            var plan = new Plan { Id = "p", Name = "p", Stages = [new("s", "Stage")], Tasks = [new() { Id = "a", Name = "Fuel line", Stage = "s", Estimate = new(30, 60, 90) }] };
            await shop.Runner.Send(new(Guid.CreateVersion7(), "ada", shop.Runner.Now, null, new TakeInCar("Heron coupe", plan, null) { Car = "heron" }));
        }

        var (code, output, _) = await Run("paper", "--data", data, Path.Combine(to, "sheets"));
        var (again, _, _) = await Run("paper", "--data", data, Path.Combine(to, "sheets"));
        var (other, _, errors) = await Run("paper", "--data", data, data);

        Assert.Equal((0, 0, CommandLine.Misused), (code, again, other));
        Assert.Contains("2 sheets", output, StringComparison.Ordinal);
        Assert.Contains("has other things in it", errors, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(to, "sheets", "car-heron.html")));
        Assert.Contains("folder to write into", (await Run("paper")).Errors, StringComparison.Ordinal);
        Directory.Delete(to, recursive: true);
        Directory.Delete(data, recursive: true);
    }

    private static async Task<Server> Open()
    {
        var server = await Server.Start();
        OpenHours[] hours = [.. Enumerable.Range(1, 5).SelectMany(d => new OpenHours[] { new((DayOfWeek)d, new(8, 0), new(12, 0)), new((DayOfWeek)d, new(12, 30), new(17, 0)) })];
        await server.Does("ada", new SetShop("The shop", "Etc/UTC", [.. hours], []));
        return server;
    }

    private static async Task<(int Code, string Output, string Errors)> Run(params string[] args)
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        return (await CommandLine.Run(args, output, errors), output.ToString(), errors.ToString());
    }
}
