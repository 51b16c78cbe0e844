using JobBoard.Benchmarks.Kill;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Rules;
using JobBoard.Shop.Demo;
using JobBoard.Shop.Running;
using JobBoard.Shop.Tests.Demo;
using JobBoard.Storage.History;

namespace JobBoard.Shop.Tests.Running;

/// <summary>Two shops with the same letters at the same times: one goes on, one is killed and started again in between.</summary>
public sealed class RestartTests(ITestOutputHelper output) : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("jobboard-test-").FullName;

    [Fact]
    public async Task Killed_and_restarted_equals_one_that_went_on()
    {
        var letters = await Script();
        var (wentOn, killed) = (Path.Combine(_folder, "went-on"), Path.Combine(_folder, "killed"));
        await using var on = Open(wentOn);
        var answers = await Send(on, letters);

        Assert.Equal(answers, await SendAndKill(killed, letters, kills: 5));

        await using var again = Open(killed);
        var book = DayBookText.Of(again.Database.File);
        output.WriteLine($"{letters.Count} letters, {answers.Count(a => a.Contains("reasons", StringComparison.Ordinal))} refused, {on.Runner.State.Seq} entries, tables: {string.Join(", ", book.Keys)}");
        Assert.Equal(LiveShop.Picture(on.Runner.State), LiveShop.Picture(again.Runner.State));
        Assert.Equal(DayBookText.Of(on.Database.File), book);
        Assert.All(["journal", "commands", "history_entries", "history_readings"], t => Assert.NotEmpty(book[t]));

        Assert.Equal(answers, await Send(again, letters));
        Assert.Equal(on.Runner.State.Seq, again.Journal.Head());
        Assert.Equal(book, DayBookText.Of(again.Database.File));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>Two days of one car by the scripted crew, and now and then something the rules refuse.</summary>
    private static async Task<List<Letter>> Script()
    {
        var (shop, monday) = await Seeds.WithOneCar("heron");
        await new ScriptedCrew(shop.Door, new() { Cars = [new("heron")] }, monday).CarryOn(monday.AddHours(30));
        var last = shop.State.Cars["heron"].Plan.Tasks[^1].Id;
        var letters = new List<Letter>();
        foreach (var (envelope, at) in shop.Accepted)
        {
            letters.Add(new(envelope.Id, envelope.Actor, envelope.Command, at));
            if (letters.Count % 16 == 0) letters.Add(new(new Guid(letters.Count, 0, 0, new byte[8]), envelope.Actor, new SignOffTask { Car = "heron", Task = last }, at));
        }

        return letters;
    }

    private static OpenShop Open(string folder) => OpenShop.Open(folder, RuleBook.Full, TimeProvider.System, (_, _) => null, Histories.All);

    private static async Task<List<string>> Send(OpenShop shop, List<Letter> letters)
    {
        var answers = new List<string>();
        foreach (var letter in letters)
        {
            shop.Clock.Hold(letter.At!.Value);
            answers.Add((await shop.Runner.Send(new(letter.Id, letter.Actor, letter.At.Value, null, letter.Command))).ToJson());
        }

        return answers;
    }

    /// <summary>At each kill a letter is under way; written down or not, it is sent again to the next process.</summary>
    private static async Task<List<string>> SendAndKill(string folder, List<Letter> letters, int kills)
    {
        var (answers, sent) = (new List<string>(), 0);
        for (var life = 0; life <= kills; life++)
        {
            using var shop = await ShopProcess.Start(folder);
            using var line = await shop.Connect();
            var until = letters.Count * (life + 1) / (kills + 1);
            for (; sent < until; sent++) answers.Add((await line.Ask(letters[sent]))!.Kept!);
            var underWay = sent < letters.Count ? line.Ask(letters[sent]) : Task.FromResult<Reply?>(null);
            await Task.Delay(life * 3);
            await shop.Kill();
            await underWay;
        }

        return answers;
    }
}
