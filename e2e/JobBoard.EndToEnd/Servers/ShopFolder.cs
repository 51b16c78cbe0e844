namespace JobBoard.EndToEnd.Servers;

/// <summary>A folder for one shop, deleted afterwards.</summary>
internal sealed class ShopFolder : IDisposable
{
    /// <summary>Its path.</summary>
    public string Path { get; } = Directory.CreateTempSubdirectory("jobboard-e2e-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
