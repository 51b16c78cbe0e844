using JobBoard.Benchmarks.Kill;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Rules;
using JobBoard.Shop.Running;
using JobBoard.Storage.History;

namespace JobBoard.Shop.Tests.Running;

/// <summary>SIGKILL of a shop in a process of its own at random moments under fifty clients.</summary>
public sealed class KillTests(ITestOutputHelper output) : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("jobboard-test-").FullName;

    [Fact]
    public async Task Nothing_acknowledged_is_lost_or_doubled()
    {
        var (_, result) = await Run(new(Rounds: 30, Clients: 50, Shortest: 0, Longest: 150, Seed: Random.Shared.Next()));

        Assert.Equal((0, 0, 0), (result.Lost, result.Duplicated, result.Torn));
        Assert.True(result.ChainHolds);
        Assert.Equal("full", result.Synchronous);
        Assert.Equal(30, result.Restarts.Count);
        Assert.True(result.Acknowledged > 54 + 30);
    }

    [Fact]
    public async Task A_writer_opened_otherwise_is_found()
    {
        var (_, result) = await Run(new(Rounds: 1, Clients: 5, Shortest: 0, Longest: 50, Seed: 1, Synchronous: "normal"));

        Assert.Equal("normal", result.Synchronous);
    }

    [Fact]
    public async Task An_answer_that_is_not_in_the_book_is_found()
    {
        var (rounds, _) = await Run(new(Rounds: 1, Clients: 5, Shortest: 0, Longest: 50, Seed: 2));
        var never = new Letter(Guid.NewGuid(), "ada", new ComeIn("ada"));

        rounds.Ledger.Note(never, Reply.Of(new Outcome.Accepted(1, 1), 1, "full"));

        Assert.Equal(new Comparison(1, 0, 0), rounds.Ledger.Compare(File));
    }

    [Fact]
    public async Task A_note_written_twice_is_found()
    {
        var (rounds, _) = await Run(new(Rounds: 1, Clients: 5, Shortest: 0, Longest: 50, Seed: 3));
        await using (var shop = OpenShop.Open(Path.GetDirectoryName(File)!, RuleBook.Full, TimeProvider.System, (_, _) => null, Histories.All))
        {
            for (var i = 0; i < 2; i++)
                Assert.IsType<Outcome.Accepted>(await shop.Runner.Send(new(Guid.NewGuid(), "ada", shop.Runner.Now, null, new WriteNote("the same") { Car = "heron" })));
        }

        Assert.Equal(new Comparison(0, 1, 0), rounds.Ledger.Compare(File));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string File => Path.Combine(_folder, "shop", "shop.db");

    private async Task<(KillRounds Rounds, KillResult Result)> Run(KillPlan plan)
    {
        output.WriteLine(plan.ToString());
        var ran = await KillRounds.Run(plan, Path.Combine(_folder, "shop"), output.WriteLine);
        output.WriteLine(ran.Result.ToString());
        return ran;
    }
}
