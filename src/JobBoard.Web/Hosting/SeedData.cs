namespace JobBoard.Web.Hosting;

/// <summary>Where the published templates and seed files are: beside the program, whatever folder it was started from.</summary>
internal static class SeedData
{
    public static string Folder { get; } = Path.Combine(AppContext.BaseDirectory, "seed-data");

    public static string Templates { get; } = Path.Combine(Folder, "plans");
}
