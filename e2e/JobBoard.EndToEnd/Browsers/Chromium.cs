using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(JobBoard.EndToEnd.Browsers.Chromium))]
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]

namespace JobBoard.EndToEnd.Browsers;

/// <summary>
/// The one browser of the tests: the one named by JOBBOARD_CHROMIUM, one that is installed, the one Playwright fetches, or as
/// root on Debian the packaged one. Every one is proved by launching it. Without any the tests that need it are skipped;
/// with JOBBOARD_REQUIRE_BROWSER=1 they fail.
/// </summary>
public sealed class Chromium : IAsyncDisposable
{
    private readonly SemaphoreSlim _once = new(1);
    private readonly List<string> _tried = [];
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private bool _looked;

    /// <summary>The browser; skips or fails the test when there is none.</summary>
    public async Task<IBrowser> Browser()
    {
        await _once.WaitAsync();
        try
        {
            if (!_looked) _browser = await Find();
            _looked = true;
        }
        finally
        {
            _once.Release();
        }

        if (_browser is not null) return _browser;
        var words = $"No browser could be launched: install Chromium ({Installing.Command}), or name one in JOBBOARD_CHROMIUM. Tried: {string.Join("; ", _tried)}";
        if (Environment.GetEnvironmentVariable("JOBBOARD_REQUIRE_BROWSER") == "1") Assert.Fail(words);
        Assert.Skip(words);
        throw new InvalidOperationException(words);
    }

    private async Task<IBrowser?> Find()
    {
        _playwright = await Playwright.CreateAsync();
        if (Environment.GetEnvironmentVariable("JOBBOARD_CHROMIUM") is { Length: > 0 } named) return await Launch(named);
        foreach (var path in KnownPaths.All.Where(File.Exists))
        {
            if (await Launch(path) is { } found) return found;
        }

        if (await Launch(null) is { } own) return own;
        if (await Installing.ByPlaywright(_tried) && await Launch(null) is { } fetched) return fetched;
        if (!await Installing.ByPackages(_tried)) return null;
        foreach (var path in KnownPaths.All.Where(File.Exists))
        {
            if (await Launch(path) is { } installed) return installed;
        }

        return null;
    }

    private async Task<IBrowser?> Launch(string? path)
    {
        try
        {
            return await _playwright!.Chromium.LaunchAsync(new() { ExecutablePath = path, Headless = true, Args = Arguments, ChromiumSandbox = false, Timeout = 60_000 });
        }
        catch (PlaywrightException e)
        {
            _tried.Add($"{path ?? "Playwright's own"}: {e.Message.Split('\n')[0]}");
            return null;
        }
    }

    /// <summary>Without its sandbox only for root, for whom it does not work; its pages share memory in a file, as /dev/shm of a small machine fills and its pages crash.</summary>
    private static string[] Arguments =>
    [
        .. Installing.IsRoot ? ["--no-sandbox"] : Array.Empty<string>(),
        "--disable-gpu", "--disable-dev-shm-usage", "--mute-audio", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-first-run",
    ];

    /// <summary>Closes it.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_browser is not null) await _browser.CloseAsync();
        _playwright?.Dispose();
        _once.Dispose();
    }
}

/// <summary>Where Chromium or a browser built on it usually is.</summary>
internal static class KnownPaths
{
    public static IEnumerable<string> All =>
    [
        "/usr/bin/chromium",
        "/usr/bin/chromium-browser",
        "/usr/lib/chromium/chromium",
        "/snap/bin/chromium",
        "/usr/bin/google-chrome-stable",
        "/usr/bin/google-chrome",
        "/usr/bin/microsoft-edge",
        "/Applications/Chromium.app/Contents/MacOS/Chromium",
        "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
        "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
        .. Windows("Google/Chrome/Application/chrome.exe"),
        .. Windows("Microsoft/Edge/Application/msedge.exe"),
    ];

    private static IEnumerable<string> Windows(string program) =>
        new[] { Environment.SpecialFolder.ProgramFiles, Environment.SpecialFolder.ProgramFilesX86, Environment.SpecialFolder.LocalApplicationData }
            .Select(Environment.GetFolderPath).Where(folder => folder.Length > 0).Select(folder => Path.Combine(folder, program));
}
