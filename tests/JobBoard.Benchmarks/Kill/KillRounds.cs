using System.Diagnostics;
using JobBoard.Shop.Running;
using JobBoard.Storage;
using JobBoard.Storage.Journal;

namespace JobBoard.Benchmarks.Kill;

/// <summary>How the rounds are run.</summary>
/// <param name="Rounds">How often the shop is killed.</param>
/// <param name="Clients">Who send at once.</param>
/// <param name="Shortest">The shortest time from the first answer to a client to the kill, in milliseconds.</param>
/// <param name="Longest">The longest.</param>
/// <param name="Seed">Of what the clients send and when the shop is killed.</param>
/// <param name="Synchronous">Another setting of the writer than the program's own, or nothing.</param>
internal sealed record KillPlan(int Rounds, int Clients, int Shortest, int Longest, int Seed, string? Synchronous = null);

/// <summary>What the rounds came to.</summary>
/// <param name="Acknowledged">Letters answered with an outcome.</param>
/// <param name="Lost">Answered, and not in the day book as answered, or answered otherwise when sent again.</param>
/// <param name="Duplicated">In the day book more than once.</param>
/// <param name="Torn">Answered to nobody, and there in part.</param>
/// <param name="Restarts">Milliseconds from the start of a process after a kill to its first answer, by size.</param>
/// <param name="Synchronous">What the live writers said of themselves; nothing when none did.</param>
/// <param name="ChainHolds">Whether the chain of hashes over the whole day book holds at the end.</param>
internal sealed record KillResult(
    int Acknowledged, int Lost, int Duplicated, int Torn, IReadOnlyList<double> Restarts, string? Synchronous, bool ChainHolds);

/// <summary>Kills a shop at random moments while its clients send, starts it again, and holds every answer against the day book.</summary>
internal sealed class KillRounds
{
    private readonly KillPlan _plan;
    private readonly string _folder;
    private readonly Random _random;
    private readonly Letter[] _setUp;
    private readonly KillClient[] _clients;
    private readonly List<double> _restarts = [];
    private Comparison _worst = new(0, 0, 0);

    private KillRounds(KillPlan plan, string folder)
    {
        (_plan, _folder, _random, _setUp) = (plan, folder, new(plan.Seed), [.. KillClient.Shop(plan.Clients)]);
        _clients = [.. Enumerable.Range(0, plan.Clients).Select(i => new KillClient(i, plan.Seed, Ledger))];
    }

    /// <summary>What the clients were told.</summary>
    public Ledger Ledger { get; } = new();

    private string File => Path.Combine(_folder, "shop.db");

    /// <summary>Runs all rounds in a new folder.</summary>
    /// <param name="plan">How.</param>
    /// <param name="folder">An empty folder.</param>
    /// <param name="say">Told how each round went.</param>
    public static async Task<(KillRounds Rounds, KillResult Result)> Run(KillPlan plan, string folder, Action<string> say)
    {
        var rounds = new KillRounds(plan, folder);
        for (var round = 1; round <= plan.Rounds; round++)
        {
            using var shop = await rounds.Start(first: round == 1);
            var after = rounds._random.Next(plan.Shortest, plan.Longest);
            await rounds.KillAmid(shop, after);
            say($"round {round}: killed {after} ms after its first answer to a client; {rounds.Ledger.Acknowledged} acknowledged so far, {rounds._worst}");
        }

        using (var last = await rounds.Start(first: false)) await last.Close();
        return (rounds, rounds.Result());
    }

    /// <summary>The clients send for a while to a shop that is not killed; gives the groups it committed.</summary>
    public async Task<long> RunOn(TimeSpan time, string? syncLog)
    {
        using var shop = await ShopProcess.Start(_folder, _plan.Synchronous, syncLog);
        using var stop = new CancellationTokenSource(time);
        await Task.WhenAll(_clients.Select(c => c.Work(shop, again: false, stop.Token)));
        return await shop.Close();
    }

    private async Task<ShopProcess> Start(bool first)
    {
        var began = Stopwatch.GetTimestamp();
        var shop = await ShopProcess.Start(_folder, _plan.Synchronous);
        using var line = await shop.Connect();
        foreach (var letter in first ? _setUp : _setUp[..1])
        {
            if (await line.Ask(letter) is not { } reply || !Ledger.Note(letter, reply)) throw new InvalidOperationException("The shop could not be set up.");
        }

        if (first) return shop;
        _restarts.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
        Keep(Ledger.Compare(File));
        return shop;
    }

    private async Task KillAmid(ShopProcess shop, int milliseconds)
    {
        var before = Ledger.Acknowledged;
        var sending = Task.WhenAll(_clients.Select(c => c.Work(shop, again: true, CancellationToken.None)));
        while (Ledger.Acknowledged == before && !sending.IsCompleted) await Task.Delay(1);
        await Task.Delay(milliseconds);
        await shop.Kill();
        await sending;
    }

    // A later comparison holds the same answers again, so that the worst one counts each fault once.
    private void Keep(Comparison now) =>
        _worst = new(Math.Max(_worst.Lost, now.Lost), Math.Max(_worst.Duplicated, now.Duplicated), Math.Max(_worst.Torn, now.Torn));

    private KillResult Result()
    {
        Keep(Ledger.Compare(File));
        using var database = ShopDatabase.Open(File);
        using var journal = SqliteJournal.Open(database, OpenShop.ShopId);
        var chain = journal.VerifyChain().Holds;
        return new(
            Ledger.Acknowledged, _worst.Lost + Ledger.AnsweredOtherwise, _worst.Duplicated, _worst.Torn, [.. _restarts.Order()], Ledger.Synchronous, chain);
    }
}
