using Dapper;
using Microsoft.Data.Sqlite;

namespace JobBoard.Storage.Journal;

/// <summary>Settings of the connection that appends, read from it.</summary>
/// <param name="JournalMode">wal, when readers and the writer do not wait for each other.</param>
/// <param name="Synchronous">off, normal, full or extra; full means a commit is on the disk when it returns.</param>
/// <param name="ForeignKeys">True when references are checked.</param>
/// <param name="RecursiveTriggers">True when a replacing insert fires delete triggers.</param>
/// <param name="SecureDelete">True when deleted text is overwritten in the file.</param>
/// <param name="BusyMilliseconds">How long a lock is waited for.</param>
public sealed record WriterPragmas(
    string JournalMode, string Synchronous, bool ForeignKeys, bool RecursiveTriggers, bool SecureDelete, long BusyMilliseconds)
{
    // The numbers of https://www.sqlite.org/pragma.html#pragma_synchronous
    private static readonly string[] Levels = ["off", "normal", "full", "extra"];

    internal static WriterPragmas Read(SqliteConnection connection)
    {
        long Number(string pragma) => connection.ExecuteScalar<long>("PRAGMA " + pragma);
        return new WriterPragmas(
            connection.ExecuteScalar<string>("PRAGMA journal_mode")!,
            Levels[Number("synchronous")],
            Number("foreign_keys") == 1,
            Number("recursive_triggers") == 1,
            Number("secure_delete") == 1,
            Number("busy_timeout"));
    }
}
