using JobBoard.Domain.Boards;
using JobBoard.Domain.Rules;
using JobBoard.Storage;
using JobBoard.Storage.Folder;
using JobBoard.Storage.History;
using JobBoard.Storage.Journal;

namespace JobBoard.Shop.Running;

/// <summary>A shop opened from its data folder: held, read, folded and running until disposed.</summary>
public sealed class OpenShop : IAsyncDisposable
{
    /// <summary>Name of the one shop a data folder holds.</summary>
    public const string ShopId = "shop";

    private OpenShop(DataFolder folder, ShopDatabase database, SqliteJournal journal, ShopRunner runner, Pulse pulse, ShopClock clock) =>
        (Folder, Database, Journal, Runner, Pulse, Clock) = (folder, database, journal, runner, pulse, clock);

    /// <summary>The folder, held by this server alone.</summary>
    public DataFolder Folder { get; }

    /// <summary>Its database.</summary>
    public ShopDatabase Database { get; }

    /// <summary>The day book.</summary>
    public SqliteJournal Journal { get; }

    /// <summary>Takes the commands.</summary>
    public ShopRunner Runner { get; }

    /// <summary>Wakes when time alone changes the picture.</summary>
    public Pulse Pulse { get; }

    /// <summary>The shop's time.</summary>
    public ShopClock Clock { get; }

    /// <summary>Opens the shop in a folder; a new folder is an empty shop.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="rules">The rules in force.</param>
    /// <param name="system">The system's time.</param>
    /// <param name="nextChange">When time alone next changes the picture.</param>
    /// <param name="history">What fills the history tables.</param>
    /// <exception cref="StorageException">The folder is held by another server, or cannot be read or written.</exception>
    /// <exception cref="Domain.Entries.UnknownEntryException">The day book was written by a newer program.</exception>
    public static OpenShop Open(
        string path, RuleBook rules, TimeProvider system, Func<ShopState, DateTimeOffset, DateTimeOffset?> nextChange, IReadOnlyList<IHistoryProjection> history)
    {
        var opened = new Stack<IDisposable>();
        try
        {
            var folder = Keep(opened, DataFolder.Open(path));
            var database = Keep(opened, ShopDatabase.Open(folder.DatabaseFile));
            var journal = Keep(opened, SqliteJournal.Open(database, ShopId, history));
            var clock = new ShopClock(system);
            var runner = ShopRunner.Start(journal, rules, clock);
            return new OpenShop(folder, database, journal, runner, new Pulse(runner, nextChange, system, () => clock.Pace), clock);
        }
        catch
        {
            while (opened.TryPop(out var last)) last.Dispose();
            throw;
        }
    }

    /// <summary>Answers what waits, then lets go of the folder.</summary>
    public async ValueTask DisposeAsync()
    {
        Pulse.Dispose();
        await Runner.DisposeAsync().ConfigureAwait(false);
        Journal.Dispose();
        Database.Dispose();
        Folder.Dispose();
    }

    private static T Keep<T>(Stack<IDisposable> opened, T one)
        where T : IDisposable
    {
        opened.Push(one);
        return one;
    }
}
