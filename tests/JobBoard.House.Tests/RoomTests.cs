using System.Xml.Linq;

namespace JobBoard.House.Tests;

/// <summary>Every room knows only the rooms below it.</summary>
public class RoomTests
{
    private static readonly Dictionary<string, string[]> MayUse = new()
    {
        ["JobBoard.Engineering"] = [],
        ["JobBoard.Scheduling"] = [],
        ["JobBoard.Domain"] = ["JobBoard.Engineering"],
        ["JobBoard.Storage"] = ["JobBoard.Domain"],
        ["JobBoard.Shop"] = ["JobBoard.Domain", "JobBoard.Scheduling", "JobBoard.Storage"],
        ["JobBoard.Web"] = ["JobBoard.Domain", "JobBoard.Engineering", "JobBoard.Scheduling", "JobBoard.Shop", "JobBoard.Storage"],
    };

    private static readonly Dictionary<string, string[]> Packages = new()
    {
        ["JobBoard.Engineering"] = ["UnitsNet"],
        ["JobBoard.Scheduling"] = [],
        ["JobBoard.Domain"] = [],
        ["JobBoard.Storage"] = ["Dapper", "Microsoft.Data.Sqlite"],
        ["JobBoard.Shop"] = [],
        ["JobBoard.Web"] = ["QRCoder"],
    };

    [Fact]
    public void There_are_no_rooms_but_those_of_the_house() =>
        Assert.Equal(MayUse.Keys.Order(), Directory.GetDirectories(Path.Combine(Repository.Root, "src")).Select(d => Path.GetFileName(d)!).Order());

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_refers_only_to_rooms_below_it(string room)
    {
        var used = Items(room, "ProjectReference").Select(Path.GetFileNameWithoutExtension);

        Assert.Empty(used.Except(MayUse[room]));
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_takes_only_the_packages_it_may(string room) =>
        Assert.Empty(Items(room, "PackageReference").Except(Packages[room]));

    [Theory]
    [InlineData("JobBoard.Domain", "System.IO", "File.", "HttpContext", "DateTime.Now", "DateTime.UtcNow", "DateTimeOffset.Now", "DateTimeOffset.UtcNow", "SqliteConnection", "Guid.NewGuid")]
    [InlineData("JobBoard.Scheduling", "DateTime.Now", "DateTime.UtcNow", "DateTimeOffset.Now", "DateTimeOffset.UtcNow", "new Random(")]
    public void A_pure_room_does_not_reach_outside(string room, params string[] words)
    {
        var found = from file in Repository.Files(Path.Combine("src", room), "*.cs")
                    where !Path.GetFileName(file).Contains("Command", StringComparison.Ordinal) || room != "JobBoard.Scheduling"
                    from line in File.ReadLines(file)
                    from word in words
                    where line.Contains(word, StringComparison.Ordinal) && !line.TrimStart().StartsWith("//", StringComparison.Ordinal)
                    select $"{Path.GetFileName(file)}: {line.Trim()}";

        Assert.Empty(found);
    }

    [Fact]
    public void Folders_are_nouns_of_the_shop()
    {
        string[] never = ["Helpers", "Helper", "Managers", "Utils", "Utilities", "Common", "Misc"];

        var bad = Repository.Files("src", "*.cs").SelectMany(f => Path.GetRelativePath(Repository.Root, f).Split(Path.DirectorySeparatorChar)).Intersect(never);

        Assert.Empty(bad);
    }

    [Fact]
    public void Top_level_is_exactly_what_the_house_says()
    {
        var top = Directory.GetFileSystemEntries(Repository.Root).Select(p => Path.GetFileName(p)!).Where(n => !n.StartsWith('.') && n != "TestResults");

        Assert.Equal(new[] { "DEVELOPERS.md", "Dockerfile", "JobBoard.sln", "README.md", "e2e", "seed-data", "src", "tests" }.Order(StringComparer.Ordinal), top.Order(StringComparer.Ordinal));
    }

    public static TheoryData<string> Rooms => [.. MayUse.Keys];

    private static IEnumerable<string> Items(string room, string kind) =>
        XDocument.Load(Path.Combine(Repository.Root, "src", room, room + ".csproj")).Descendants(kind).Select(e => ((string?)e.Attribute("Include"))!.Replace('\\', '/'));
}
