namespace JobBoard.House.Tests;

/// <summary>The source tree these tests look at.</summary>
internal static class Repository
{
    /// <summary>The folder that holds JobBoard.sln.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Source files of the rooms and of the tests, generated ones left out.</summary>
    public static IEnumerable<string> Files(string folder, string pattern) =>
        Directory.EnumerateFiles(Path.Combine(Root, folder), pattern, SearchOption.AllDirectories)
            .Where(f => !f.Split(Path.DirectorySeparatorChar).Any(p => p is "bin" or "obj" or "TestResults"));

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "JobBoard.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("JobBoard.sln is not above the test's folder.");
    }
}
