using System.Security.Cryptography;
using System.Text.Json;

namespace JobBoard.Web.Tests;

public class Libraries
{
    private static readonly string Lib = Path.Combine(Sources.Web, "wwwroot", "lib");

    [Fact]
    public void Hash_is_the_listed_one_for_every_file()
    {
        var wrong = Listed().Where(file => Hash(file.Path) != file.Sha256).Select(file => file.Path);

        Assert.Empty(wrong);
    }

    [Fact]
    public void Every_third_party_file_is_listed()
    {
        var present = Directory.EnumerateFiles(Lib, "*", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(Lib, path).Replace('\\', '/'))
            .Where(path => path != "libraries.json")
            .Order();

        Assert.Equal(Listed().Select(file => file.Path).Order(), present);
    }

    [Fact]
    public void Every_library_names_version_and_licence()
    {
        foreach (var library in Document().RootElement.GetProperty("libraries").EnumerateArray())
        {
            Assert.Matches(@"^\d+\.\d+\.\d+$", library.GetProperty("version").GetString());
            Assert.NotEqual(string.Empty, library.GetProperty("licence").GetString());
            Assert.True(File.Exists(Path.Combine(Lib, library.GetProperty("licenceFile").GetString()!)));
        }
    }

    private static IEnumerable<(string Path, string Sha256)> Listed() =>
        from library in Document().RootElement.GetProperty("libraries").EnumerateArray()
        from file in library.GetProperty("files").EnumerateArray()
        select (file.GetProperty("path").GetString()!, file.GetProperty("sha256").GetString()!);

    private static JsonDocument Document() => JsonDocument.Parse(File.ReadAllText(Path.Combine(Lib, "libraries.json")));

    private static string Hash(string path) =>
        Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(Lib, path))));
}
