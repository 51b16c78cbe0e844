using System.Data;
using Dapper;
using JobBoard.Storage.Schema;
using Microsoft.Data.Sqlite;

namespace JobBoard.Storage;

/// <summary>
/// One shop's SQLite file: brought to the newest schema when opened, then a source of connections.
/// The journal keeps one connection to write with; readers take their own and see committed state only (write-ahead log).
/// </summary>
public sealed class ShopDatabase : IDisposable
{
    private const int BusyMilliseconds = 5000;

    private readonly SqliteConnection _anchor;

    private ShopDatabase(string file, SqliteConnection anchor, Guid journalId)
    {
        File = file;
        JournalId = journalId;
        _anchor = anchor;
    }

    /// <summary>Full path of the file.</summary>
    public string File { get; }

    /// <summary>Made at random when the file is made; a stamp from another journal is known by it.</summary>
    public Guid JournalId { get; }

    /// <summary>Opens the file, makes it if it is not there, and applies schema scripts that are missing.</summary>
    /// <param name="file">Path of the file; its folder must exist.</param>
    /// <param name="newId">Makes the journal's id; random by default.</param>
    /// <param name="scripts">The schema to reach; this program's own by default.</param>
    /// <exception cref="SchemaTooNewException">The file was written by a newer program.</exception>
    /// <exception cref="StorageException">The file cannot be opened, or is not ours.</exception>
    public static ShopDatabase Open(string file, Func<Guid>? newId = null, IReadOnlyList<SchemaScript>? scripts = null)
    {
        var path = Path.GetFullPath(file);
        var anchor = new SqliteConnection(ConnectionString(path, pooled: false));
        try
        {
            Prepare(anchor);
            SchemaScripts.Apply(anchor, scripts ?? SchemaScripts.Known, newId ?? Guid.NewGuid);
            return new ShopDatabase(path, anchor, Guid.Parse(SchemaScripts.GetMeta(anchor, "journal_id")!));
        }
        catch (SqliteException error)
        {
            anchor.Dispose();
            throw DriverErrors.Translate(error, path);
        }
        catch
        {
            anchor.Dispose();
            throw;
        }
    }

    /// <summary>A connection that can read and not write. The caller disposes it.</summary>
    public IDbConnection OpenReader() => Reader();

    /// <summary>Closes the pooled connections; those handed out must be disposed by then.</summary>
    public void Dispose()
    {
        ClearPool(ReaderString);
        ClearPool(WriterString);
        _anchor.Dispose();
    }

    internal SqliteConnection Reader()
    {
        var connection = new SqliteConnection(ReaderString);
        connection.Open();
        connection.Execute($"PRAGMA busy_timeout = {BusyMilliseconds}; PRAGMA query_only = ON;");
        return connection;
    }

    /// <summary>One question over a connection that can only read.</summary>
    internal T Read<T>(Func<SqliteConnection, T> read) => Translated(() =>
    {
        using var connection = Reader();
        return read(connection);
    });

    /// <summary>One short transaction that is not an append, over a connection that is not the journal's.</summary>
    internal T Write<T>(Func<SqliteConnection, T> write) => Translated(() =>
    {
        using var connection = new SqliteConnection(WriterString);
        Prepare(connection);
        using var transaction = connection.BeginTransaction(deferred: false);
        var result = write(connection);
        transaction.Commit();
        return result;
    });

    /// <summary>Turns the driver's errors into words.</summary>
    internal T Translated<T>(Func<T> call)
    {
        try
        {
            return call();
        }
        catch (SqliteException error)
        {
            throw DriverErrors.Translate(error, File);
        }
    }

    /// <summary>The journal's own connection, held as long as the journal is open.</summary>
    internal SqliteConnection JournalWriter()
    {
        var connection = new SqliteConnection(ConnectionString(File, pooled: false));
        Prepare(connection);
        return connection;
    }

    internal static void Prepare(SqliteConnection connection)
    {
        connection.Open();
        connection.Execute(
            $"""
             PRAGMA busy_timeout = {BusyMilliseconds};
             PRAGMA journal_mode = WAL;
             PRAGMA synchronous = FULL;
             PRAGMA foreign_keys = ON;
             PRAGMA recursive_triggers = ON;
             PRAGMA secure_delete = ON;
             """);
    }

    // Two texts that differ keep two pools, so that a read-only handle is never handed to a writer.
    private string ReaderString => ConnectionString(File, pooled: true) + ";Command Timeout=6";

    private string WriterString => ConnectionString(File, pooled: true);

    private static string ConnectionString(string file, bool pooled) => new SqliteConnectionStringBuilder
    {
        DataSource = file,
        Mode = SqliteOpenMode.ReadWriteCreate,
        Pooling = pooled,
        DefaultTimeout = BusyMilliseconds / 1000,
    }.ToString();

    private static void ClearPool(string connectionString)
    {
        using var connection = new SqliteConnection(connectionString);
        SqliteConnection.ClearPool(connection);
    }
}
