using System.Diagnostics;
using System.Net.Sockets;

namespace JobBoard.EndToEnd.Browsers;

/// <summary>Getting a browser where there is none.</summary>
internal static class Installing
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(6);

    /// <summary>What a person types to get one on Debian.</summary>
    public const string Command = "apt-get install chromium fonts-liberation fonts-dejavu-core";

    /// <summary>Whether this is root on Linux.</summary>
    public static bool IsRoot => OperatingSystem.IsLinux() && Environment.UserName == "root";

    /// <summary>Playwright's own download; as root on Ubuntu with the libraries it needs. Given up at once where there is no internet.</summary>
    public static async Task<bool> ByPlaywright(List<string> tried)
    {
        if (!await Reaches("cdn.playwright.dev"))
        {
            tried.Add("Playwright's download: no way to it");
            return false;
        }

        string[] arguments = IsRoot && Is("ubuntu") ? ["install", "--with-deps", "chromium"] : ["install", "chromium"];
        var install = Task.Run(() => Microsoft.Playwright.Program.Main(arguments));
        if (await Task.WhenAny(install, Task.Delay(Patience)) == install && await install == 0) return true;
        tried.Add($"playwright {string.Join(' ', arguments)}: did not work");
        return false;
    }

    /// <summary>The system's packages: as root on Debian alone, where the package is a browser.</summary>
    public static async Task<bool> ByPackages(List<string> tried)
    {
        if (!IsRoot || !Is("debian") || !File.Exists("/usr/bin/apt-get")) return false;
        var done = await Run("apt-get", "update -qq") && await Run("apt-get", "install -y -qq chromium fonts-liberation fonts-dejavu-core");
        if (!done) tried.Add($"{Command}: did not work");
        return done;
    }

    private static bool Is(string system) =>
        File.Exists("/etc/os-release") && File.ReadLines("/etc/os-release").Any(line => line.Replace("\"", "", StringComparison.Ordinal) == "ID=" + system);

    private static async Task<bool> Reaches(string host)
    {
        try
        {
            using var client = new TcpClient();
            using var soon = new CancellationTokenSource(TimeSpan.FromSeconds(4));
            await client.ConnectAsync(host, 443, soon.Token);
            return true;
        }
        catch (Exception e) when (e is SocketException or OperationCanceledException)
        {
            return false;
        }
    }

    private static async Task<bool> Run(string program, string arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var read = Task.WhenAll(process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        using var late = new CancellationTokenSource(Patience);
        try
        {
            await process.WaitForExitAsync(late.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            return false;
        }

        await read;
        return process.ExitCode == 0;
    }
}
