namespace JobBoard.Web.Tests;

/// <summary>Where the sources under test lie.</summary>
internal static class Sources
{
    /// <summary>The folder of the web project.</summary>
    public static string Web { get; } = Path.Combine(Root(), "src", "JobBoard.Web");

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "JobBoard.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("JobBoard.sln");
    }
}
