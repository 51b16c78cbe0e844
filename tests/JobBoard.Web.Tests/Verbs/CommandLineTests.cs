using JobBoard.Web.Verbs;

namespace JobBoard.Web.Tests.Verbs;

/// <summary>Verbs and options.</summary>
public class CommandLineTests
{
    [Theory]
    [InlineData("paint", "There is no verb 'paint'")]
    [InlineData("serve --colour red", "'serve' does not know '--colour'")]
    [InlineData("--colour", "'serve' does not know '--colour'")]
    [InlineData("serve extra", "'serve' does not know 'extra'")]
    [InlineData("serve --data", "--data needs a value")]
    [InlineData("serve --demo=yes", "--demo takes no value")]
    [InlineData("serve --demo --demo", "--demo is given twice")]
    [InlineData("serve --demo --data x", "leave --data out")]
    [InlineData("serve --demo --listen 0.0.0.0", "loopback")]
    [InlineData("serve --demo-pace 60", "give --demo too")]
    [InlineData("serve --demo --demo-pace 0", "whole number from 1 to 3600")]
    [InlineData("serve --demo --demo-pace -5", "whole number from 1 to 3600")]
    [InlineData("serve --demo --demo-pace 1.5", "whole number from 1 to 3600")]
    [InlineData("serve --demo --demo-pace 99999999999999", "whole number from 1 to 3600")]
    [InlineData("serve --demo --demo-pace=", "whole number from 1 to 3600")]
    [InlineData("serve --demo --demo-pace", "--demo-pace needs a value")]
    [InlineData("serve --listen https://localhost", "plain HTTP only")]
    [InlineData("serve --listen nonsense:port", "no address to listen on")]
    [InlineData("health --data x", "'health' does not know '--data'")]
    public async Task What_is_not_understood_is_named(string line, string words)
    {
        var (code, _, errors) = await Run(line);

        Assert.Equal(CommandLine.Misused, code);
        Assert.Contains(words, errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_lists_every_verb()
    {
        var (code, output, _) = await Run("help");

        Assert.Equal(0, code);
        foreach (var verb in new[] { "serve", "dates", "rebuild", "verify", "health" }) Assert.Contains("jobboard " + (verb == "serve" ? "[serve]" : verb), output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rebuild")]
    [InlineData("verify")]
    public async Task A_folder_without_a_shop_is_not_made_into_one(string verb)
    {
        var folder = Directory.CreateTempSubdirectory("jobboard-test-").FullName;

        var (code, _, errors) = await Run($"{verb} --data {folder}");

        Assert.Equal(1, code);
        Assert.Contains("no shop", errors, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(folder, "shop.db")));
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Health_of_nothing_is_bad()
    {
        var (code, output, _) = await Run("health --listen 127.0.0.1:1");

        Assert.Equal(1, code);
        Assert.Contains("does not answer", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_running_server_is_well_and_holds_its_folder()
    {
        await using var server = await Server.Start();

        var (code, output, _) = await Run($"health --listen {server.Url}");
        var (verify, _, errors) = await Run($"verify --data {server.Folder}");

        Assert.Equal((0, "well"), (code, output.Trim()));
        Assert.Equal(1, verify);
        Assert.Contains("in use by another", errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("5080", "127.0.0.1", 5080)]
    [InlineData("0.0.0.0", "0.0.0.0", 5080)]
    [InlineData("0.0.0.0:81", "0.0.0.0", 81)]
    [InlineData("http://192.168.1.20:5080/", "192.168.1.20", 5080)]
    [InlineData("localhost:0", "localhost", 0)]
    [InlineData("[::1]:5080", "::1", 5080)]
    [InlineData("::1", "::1", 5080)]
    public void Reads_addresses(string text, string host, int port) => Assert.Equal(new ListenAddress(host, port), ListenAddress.Read(text));

    private static async Task<(int Code, string Output, string Errors)> Run(string line)
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        var code = await CommandLine.Run(line.Split(' ', StringSplitOptions.RemoveEmptyEntries), output, errors);
        return (code, output.ToString(), errors.ToString());
    }
}
