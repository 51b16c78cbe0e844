namespace JobBoard.Storage.Folder;

/// <summary>The folder a shop's data lives in, held by one server at a time.</summary>
public sealed class DataFolder : IDisposable
{
    private readonly FileStream _lock;

    private DataFolder(string path, FileStream held)
    {
        Path = path;
        _lock = held;
    }

    /// <summary>Full path of the folder.</summary>
    public string Path { get; }

    /// <summary>Full path of the shop's database inside it.</summary>
    public string DatabaseFile => System.IO.Path.Combine(Path, "shop.db");

    /// <summary><c>jobboard</c> in the user's own application data.</summary>
    /// <exception cref="DataFolderException">The system knows no such place for this user.</exception>
    public static string DefaultPath
    {
        get
        {
            var root = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
            return root.Length > 0
                ? System.IO.Path.Combine(root, "jobboard")
                : throw new DataFolderException("This user has no folder for application data. Name one with --data.");
        }
    }

    /// <summary>Makes the folder if it is not there (for this user alone) and holds it until disposed.</summary>
    /// <param name="path">The folder, absolute or from the working directory.</param>
    /// <exception cref="DataFolderException">Another server holds it, or it cannot be made or written.</exception>
    public static DataFolder Open(string path)
    {
        var full = System.IO.Path.GetFullPath(path);
        Make(full);
        return new DataFolder(full, Hold(full));
    }

    /// <summary>Lets another server have the folder.</summary>
    public void Dispose() => _lock.Dispose();

    private static void Make(string path)
    {
        try
        {
            if (OperatingSystem.IsWindows())
            {
                Directory.CreateDirectory(path);
            }
            else
            {
                Directory.CreateDirectory(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new DataFolderException($"The data folder {path} cannot be made: {error.Message} Choose another with --data.", error);
        }
    }

    private static FileStream Hold(string path)
    {
        try
        {
            return new FileStream(System.IO.Path.Combine(path, "server.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (UnauthorizedAccessException error)
        {
            throw new DataFolderException($"This user may not write in the data folder {path}. Give the rights, or choose another with --data.", error);
        }
        catch (IOException error)
        {
            throw new DataFolderException(
                $"The data folder {path} is in use by another Job Board server. Stop that one first, or start this one with --data and another folder.", error);
        }
    }
}
