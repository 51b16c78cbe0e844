using Microsoft.Data.Sqlite;

namespace JobBoard.Storage;

/// <summary>Something kept on disk could not be read or written. The message says what and what to do about it.</summary>
public class StorageException : Exception
{
    /// <summary>A failure in words, with the driver's own error inside.</summary>
    public StorageException(string message, Exception? inner = null)
        : base(message, inner)
    {
    }
}

/// <summary>The data folder cannot be used, most often because another server holds it.</summary>
public sealed class DataFolderException(string message, Exception? inner = null) : StorageException(message, inner);

/// <summary>The file was written by a newer program than this one.</summary>
public sealed class SchemaTooNewException(string file, int found, int known) : StorageException(
    $"{file} was written by a newer Job Board: its tables are at number {found}, this program knows up to {known}. " +
    "Start the newer program, or restore a copy made before it first ran.")
{
    /// <summary>The number recorded in the file.</summary>
    public int Found => found;

    /// <summary>The newest number this program knows.</summary>
    public int Known => known;
}

/// <summary>The durable point of a group was not reached: nothing of the group is kept, no command in it has an outcome.</summary>
public sealed class CommitFailedException(Exception inner) : StorageException(
    "The day book could not be written; nothing of this group was kept: " + inner.Message, inner);

/// <summary>The one place that turns the driver's errors into words.</summary>
internal static class DriverErrors
{
    // SQLite result codes, https://www.sqlite.org/rescode.html
    private const int Busy = 5;
    private const int IoError = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NotADatabase = 26;

    public static StorageException Translate(SqliteException error, string file) => new(error.SqliteErrorCode switch
    {
        Busy => $"{file} is locked by another program. Close what else has it open and try again.",
        IoError => $"{file} could not be read or written (disk error). Check the disk; the shop's own copy is only as good as its last backup.",
        Corrupt => $"{file} is damaged. Stop the server and restore the last good copy.",
        Full => $"The disk that holds {file} is full. Make room and try again; nothing was half written.",
        CannotOpen => $"{file} cannot be opened. Check that the folder exists and that this user may write in it.",
        NotADatabase => $"{file} is not a Job Board database. Move it away, or start with another folder.",
        _ => $"{file}: {error.Message}",
    }, error);
}
