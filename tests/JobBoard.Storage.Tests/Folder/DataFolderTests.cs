using JobBoard.Storage.Folder;

namespace JobBoard.Storage.Tests.Folder;

public sealed class DataFolderTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_folder_that_is_not_there_is_made()
    {
        var path = _folder.File("a/b");

        using var data = DataFolder.Open(path);

        Assert.True(Directory.Exists(path));
        Assert.Equal(path, data.Path);
        Assert.Equal(Path.Combine(path, "shop.db"), data.DatabaseFile);
    }

    [Fact]
    public void A_folder_is_made_for_its_user_alone()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows keeps rights in another way.");
        using var data = DataFolder.Open(_folder.File("data"));

        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(data.Path));
        }
    }

    [Fact]
    public void A_second_server_is_refused_with_the_folder_and_the_way_out()
    {
        using var first = DataFolder.Open(_folder.File("data"));

        var error = Assert.Throws<DataFolderException>(() => DataFolder.Open(_folder.File("data")));

        Assert.Contains(first.Path, error.Message, StringComparison.Ordinal);
        Assert.Contains("in use", error.Message, StringComparison.Ordinal);
        Assert.Contains("--data", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_let_go_can_be_taken_again()
    {
        DataFolder.Open(_folder.File("data")).Dispose();

        DataFolder.Open(_folder.File("data")).Dispose();
    }

    [Fact]
    public void A_path_that_is_a_file_is_refused_in_words()
    {
        File.WriteAllText(_folder.File("taken"), "");

        var error = Assert.Throws<DataFolderException>(() => DataFolder.Open(_folder.File("taken")));

        Assert.Contains(_folder.File("taken"), error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_default_is_in_the_users_application_data() =>
        Assert.Equal("jobboard", Path.GetFileName(DataFolder.DefaultPath));
}
