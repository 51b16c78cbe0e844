using System.Security.Cryptography;
using Dapper;
using JobBoard.Storage.History;
using JobBoard.Storage.Outcomes;
using JobBoard.Storage.Schema;
using Microsoft.Data.Sqlite;

namespace JobBoard.Storage.Journal;

/// <summary>The day book in a SQLite file. Holds the one connection that appends; reads go over connections of their own.</summary>
public sealed class SqliteJournal : IJournal
{
    private readonly ShopDatabase _database;
    private readonly SqliteConnection _writer;
    private readonly HistoryBook _history;
    private readonly Action<byte[]> _fillSalt;
    private long _committed;
    private int _writing;

    private SqliteJournal(ShopDatabase database, string shopId, HistoryBook history, Action<byte[]> fillSalt)
    {
        _database = database;
        _history = history;
        _fillSalt = fillSalt;
        ShopId = shopId;
        _writer = database.JournalWriter();
    }

    /// <inheritdoc/>
    public string ShopId { get; }

    /// <inheritdoc/>
    public Guid JournalId => _database.JournalId;

    /// <inheritdoc/>
    public long GroupsCommitted => Interlocked.Read(ref _committed);

    /// <summary>Opens a shop's book, and brings history tables up to date that other code had filled.</summary>
    /// <param name="database">The file; it outlives the journal.</param>
    /// <param name="shopId">The shop; a file keeps to the first one it was opened for.</param>
    /// <param name="projections">What fills the history tables.</param>
    /// <param name="fillSalt">Fills an entry's salt; the system's random numbers by default.</param>
    /// <exception cref="StorageException">The file belongs to another shop, or cannot be written.</exception>
    public static SqliteJournal Open(
        ShopDatabase database, string shopId, IReadOnlyList<IHistoryProjection>? projections = null, Action<byte[]>? fillSalt = null)
    {
        var journal = new SqliteJournal(database, shopId, new HistoryBook(projections ?? []), fillSalt ?? (salt => RandomNumberGenerator.Fill(salt)));
        try
        {
            journal.ClaimFile();
            journal._history.BringUpToDate(journal._writer);
            return journal;
        }
        catch (Exception error)
        {
            journal.Dispose();
            throw error is SqliteException driver ? DriverErrors.Translate(driver, database.File) : error;
        }
    }

    /// <inheritdoc/>
    public long Head() => _database.Read(connection => connection.ExecuteScalar<long>("SELECT COALESCE(MAX(seq), 0) FROM journal"));

    /// <inheritdoc/>
    public IEnumerable<JournalRow> Read(long fromSeq = 1) =>
        Stream("WHERE seq >= @from ORDER BY seq", new { from = fromSeq }).Select(row => row.ToRow());

    /// <inheritdoc/>
    public IEnumerable<JournalRow> ReadStream(string stream, long fromVersion = 1) =>
        Stream("WHERE stream = @stream AND version >= @from ORDER BY version", new { stream, from = fromVersion }).Select(row => row.ToRow());

    /// <inheritdoc/>
    public OutcomeLookup Find(Guid commandId, byte[] hash) => _database.Read(connection => OutcomeTable.Find(connection, commandId, hash));

    /// <inheritdoc/>
    public IAppendGroup BeginGroup()
    {
        EnterWriting();
        try
        {
            return _database.Translated(() => new SqliteAppendGroup(this, _writer, _history, _fillSalt));
        }
        catch
        {
            LeaveWriting();
            throw;
        }
    }

    /// <inheritdoc/>
    public ChainCheck VerifyChain()
    {
        var blanked = _database.Read(connection => connection.Query<long>(
            "SELECT b.seq FROM blankings b JOIN journal entry ON entry.seq = b.by_seq WHERE b.by_seq > b.seq").ToHashSet());
        return new ChainWalk(ShopId, blanked).Run(Stream("ORDER BY seq", new { }));
    }

    /// <inheritdoc/>
    public int PurgeOutcomes(long before) => Writing(connection => OutcomeTable.Purge(connection, before));

    /// <inheritdoc/>
    public void RebuildHistory() => Writing(connection =>
    {
        _history.RebuildAll(connection);
        return 0;
    });

    /// <summary>What the connection that appends really has, as SQLite itself answers.</summary>
    public WriterPragmas WriterPragmas() => Writing(Journal.WriterPragmas.Read);

    /// <inheritdoc/>
    public void Dispose() => _writer.Dispose();

    internal ShopDatabase Database => _database;

    /// <summary>Called by the group when it has ended, one way or the other.</summary>
    internal void GroupEnded(bool committed, bool blanked)
    {
        LeaveWriting();
        if (committed)
        {
            Interlocked.Increment(ref _committed);
        }

        if (committed && blanked)
        {
            EmptyLog();
        }
    }

    /// <summary>The text that was taken out must not live on in the write-ahead log.</summary>
    private void EmptyLog()
    {
        try
        {
            _writer.Execute("PRAGMA wal_checkpoint(TRUNCATE)");
        }
        catch (SqliteException)
        {
            // The commit stands whatever happens here; the log is emptied again when the file is closed.
        }
    }

    private void ClaimFile()
    {
        var owner = SchemaScripts.GetMeta(_writer, "shop_id");
        if (owner is null)
        {
            SchemaScripts.SetMeta(_writer, "shop_id", ShopId);
        }
        else if (owner != ShopId)
        {
            throw new StorageException($"{_database.File} is the day book of shop {owner}, not of {ShopId}. Open it as {owner}, or choose another folder.");
        }
    }

    private IEnumerable<StoredRow> Stream(string rest, object values)
    {
        using var connection = _database.Translated(_database.Reader);
        using var rows = connection.Query<StoredRow>($"SELECT {StoredRow.Columns} FROM journal {rest}", values, buffered: false).GetEnumerator();
        while (_database.Translated(rows.MoveNext))
        {
            yield return rows.Current;
        }
    }

    private T Writing<T>(Func<SqliteConnection, T> write)
    {
        EnterWriting();
        try
        {
            return _database.Translated(() => write(_writer));
        }
        finally
        {
            LeaveWriting();
        }
    }

    private void EnterWriting()
    {
        if (Interlocked.Exchange(ref _writing, 1) == 1)
        {
            throw new InvalidOperationException("The day book has one writer: the group that is open must end first.");
        }
    }

    private void LeaveWriting() => Volatile.Write(ref _writing, 0);
}
