using JobBoard.Storage.History;
using JobBoard.Storage.Outcomes;
using Microsoft.Data.Sqlite;

namespace JobBoard.Storage.Journal;

/// <summary>One immediate transaction with a savepoint for each command in it.</summary>
internal sealed class SqliteAppendGroup : IAppendGroup
{
    private const string Savepoint = "command";

    private readonly SqliteJournal _journal;
    private readonly SqliteConnection _connection;
    private readonly SqliteTransaction _transaction;
    private readonly JournalWriter _writer;
    private readonly HistoryBook _history;
    private JournalWriter.Mark? _last;
    private bool _blanked;
    private bool _broken;
    private bool _ended;

    public SqliteAppendGroup(SqliteJournal journal, SqliteConnection connection, HistoryBook history, Action<byte[]> fillSalt)
    {
        _journal = journal;
        _connection = connection;
        _history = history;
        _transaction = connection.BeginTransaction(deferred: false);
        _writer = new JournalWriter(connection, journal.ShopId, fillSalt);
    }

    public long Head => _writer.Head;

    public OutcomeLookup Find(Guid commandId, byte[] hash)
    {
        Usable();
        return _journal.Database.Translated(() => OutcomeTable.Find(_connection, commandId, hash));
    }

    public IReadOnlyList<JournalRow> Append(CommandOutcome command, IReadOnlyList<NewEntry> entries) =>
        AsOneCommand(command, () => WriteAccepted(command, entries));

    public void RecordRefusal(CommandOutcome command) => AsOneCommand(command, () =>
    {
        OutcomeTable.Insert(_connection, command, accepted: false, null, null);
        return 0;
    });

    public JournalRow Blank(CommandOutcome command, NewEntry entry, IReadOnlyList<long> seqs) => AsOneCommand(command, () =>
    {
        Blanking.Check(_connection, entry, seqs);
        var row = WriteAccepted(command, [entry])[0];
        Blanking.Write(_connection, row.Seq, seqs);
        _history.RebuildWithin(_connection);
        _blanked = true;
        return row;
    });

    public void DropLast()
    {
        Usable();
        if (_last is null)
        {
            throw new InvalidOperationException("There is nothing in this group to take back.");
        }

        RollBackLast();
    }

    public void Commit()
    {
        Usable();
        try
        {
            _transaction.Commit();
        }
        catch (Exception error) when (error is SqliteException or InvalidOperationException)
        {
            End(committed: false);
            throw new CommitFailedException(error is SqliteException driver ? DriverErrors.Translate(driver, _journal.Database.File) : error);
        }

        End(committed: true);
    }

    public void Dispose()
    {
        if (!_ended)
        {
            End(committed: false);
        }
    }

    private List<JournalRow> WriteAccepted(CommandOutcome command, IReadOnlyList<NewEntry> entries)
    {
        var rows = new List<JournalRow>(entries.Count);
        foreach (var entry in entries)
        {
            rows.Add(_writer.Write(command, entry));
        }

        OutcomeTable.Insert(_connection, command, accepted: true, rows.Count == 0 ? null : rows[0].Seq, rows.Count == 0 ? null : rows[^1].Seq);
        rows.ForEach(row => _history.Apply(_connection, row));
        return rows;
    }

    private T AsOneCommand<T>(CommandOutcome command, Func<T> write)
    {
        if (Find(command.CommandId, command.Hash).Match != OutcomeMatch.Unknown)
        {
            throw new InvalidOperationException($"Command {command.CommandId} already has an outcome.");
        }

        return _journal.Database.Translated(() =>
        {
            KeepLast();
            try
            {
                return write();
            }
            catch
            {
                RollBackLast();
                throw;
            }
        });
    }

    /// <summary>From here on the command before can no longer be dropped, and the next one can.</summary>
    private void KeepLast()
    {
        if (_last is not null)
        {
            _transaction.Release(Savepoint);
            _last = null;
        }

        _transaction.Save(Savepoint);
        _last = _writer.Here(_blanked);
    }

    private void RollBackLast()
    {
        try
        {
            _transaction.Rollback(Savepoint);
            _transaction.Release(Savepoint);
            _blanked = _last!.Value.Blanked;
            _writer.GoBackTo(_last.Value);
            _last = null;
        }
        catch (Exception error) when (error is SqliteException or InvalidOperationException)
        {
            // A full disk or a disk error makes SQLite drop the whole transaction, savepoints and all.
            _broken = true;
        }
    }

    private void End(bool committed)
    {
        _ended = true;
        try
        {
            _transaction.Dispose();
        }
        finally
        {
            _journal.GroupEnded(committed, _blanked);
        }
    }

    private void Usable()
    {
        ObjectDisposedException.ThrowIf(_ended, this);
        if (_broken)
        {
            throw new CommitFailedException(new StorageException("an earlier write of this group failed and took the group with it."));
        }
    }
}
