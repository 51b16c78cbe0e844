namespace JobBoard.Web.Hosting;

/// <summary>A folder of its own among the system's temporary ones, deleted when disposed.</summary>
internal sealed class ThrowAwayFolder : IAsyncDisposable
{
    private ThrowAwayFolder(string path) => Path = path;

    public string Path { get; }

    public static ThrowAwayFolder Make() => new(Directory.CreateTempSubdirectory("jobboard-").FullName);

    public ValueTask DisposeAsync()
    {
        Directory.Delete(Path, recursive: true);
        return ValueTask.CompletedTask;
    }
}
