using System.Text.Json;

namespace JobBoard.Benchmarks.Kill;

/// <summary>
/// SIGKILL of a shop at random moments under many clients. What is killed is a process that runs the shop on a data folder as
/// the web server does, behind a loopback socket in the place of pages. A kill takes the process and not the machine: what the
/// system holds in memory is not lost by it, so that the writer is also asked for its <c>synchronous</c> and its syncs are
/// counted against its groups, in a run of its own under <c>strace</c> and not killed; where there is none the count is null.
/// </summary>
internal static class KillVerb
{
    private static readonly TimeSpan Counted = TimeSpan.FromSeconds(3);

    public static async Task<int> Run(Options options)
    {
        var plan = new KillPlan(options.Number("rounds", 30), options.Number("clients", 50), 0, 400, options.Number("seed", 1));
        var folder = Directory.CreateTempSubdirectory("jobboard-kill-").FullName;
        try
        {
            var (rounds, result) = await KillRounds.Run(plan, Path.Combine(folder, "shop"), Console.Error.WriteLine);
            Console.Error.WriteLine($"kill: chain holds: {result.ChainHolds}; counting syncs for {Counted.TotalSeconds} s");
            Print(plan, result, await CountSyncs(rounds, Path.Combine(folder, "syncs")));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        return 0;
    }

    /// <summary>Syncs of the write-ahead log, and groups committed meanwhile.</summary>
    private static async Task<(int? Syncs, long Groups)> CountSyncs(KillRounds rounds, string log)
    {
        var traced = HasStrace();
        if (!traced) Console.Error.WriteLine("kill: there is no strace here: syncs are not counted");
        var groups = await rounds.RunOn(Counted, traced ? log : null);
        return (traced ? File.ReadLines(log).Count(l => l.Contains("shop.db-wal>", StringComparison.Ordinal) && !l.Contains("resumed", StringComparison.Ordinal)) : null, groups);
    }

    private static bool HasStrace() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(p => File.Exists(Path.Combine(p, "strace")));

    private static void Print(KillPlan plan, KillResult result, (int? Syncs, long Groups) counted) => Console.WriteLine(JsonSerializer.Serialize(new
    {
        rounds = plan.Rounds,
        clients = plan.Clients,
        acknowledged = result.Acknowledged,
        lost = result.Lost,
        duplicated = result.Duplicated,
        torn = result.Torn,
        chain_holds = result.ChainHolds,
        restart_p50_ms = At(result.Restarts, 0.5),
        restart_p99_ms = At(result.Restarts, 0.99),
        synchronous = result.Synchronous,
        syncs = counted.Syncs,
        groups = counted.Groups,
    }));

    private static double At(IReadOnlyList<double> sorted, double part) => Math.Round(sorted[Math.Min(sorted.Count - 1, (int)(sorted.Count * part))], 1);
}
