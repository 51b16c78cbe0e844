using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace JobBoard.EndToEnd.Servers;

/// <summary>The built server in a process of its own, over a data folder of its own; ended and deleted with the fixture.</summary>
internal sealed partial class Server : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(4);

    private readonly Process _process;
    private readonly StringBuilder _said = new();
    private readonly TaskCompletionSource _ready = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly string _lastWords;

    private Server(Process process, string lastWords) => (_process, _lastWords) = (process, lastWords);

    /// <summary>Where it listens.</summary>
    public Uri Url { get; private set; } = new("http://127.0.0.1/");

    /// <summary>Everything it has said.</summary>
    public string Said
    {
        get
        {
            lock (_said) return _said.ToString();
        }
    }

    /// <summary>Starts the server on a shop's folder, at an address as <c>--listen</c> takes it.</summary>
    public static Task<Server> Serve(string folder, string listen = "http://127.0.0.1:0") => Start("Data in ", "serve", "--data", folder, "--listen", listen);

    /// <summary>Starts the demo shop.</summary>
    public static Task<Server> Demo() => Start("Wall: ", "--demo", "--listen", "http://127.0.0.1:0");

    /// <summary>PINs and ids of the people that the demo prints.</summary>
    public IReadOnlyDictionary<string, string> Pins => PinLine().Matches(Said).ToDictionary(m => m.Groups[1].Value.ToLowerInvariant(), m => m.Groups[2].Value);

    /// <summary>The wall link that the demo prints.</summary>
    public Uri Wall => new(WallLine().Match(Said).Groups[1].Value);

    /// <summary>The customer's link that the demo prints.</summary>
    public Uri Customer => new(CustomerLine().Match(Said).Groups[1].Value);

    private static async Task<Server> Start(string lastWords, params string[] arguments)
    {
        var dotnet = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet";
        var start = new ProcessStartInfo(dotnet) { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Path.GetTempPath() };
        foreach (var argument in new[] { Program }.Concat(arguments)) start.ArgumentList.Add(argument);
        var server = new Server(new Process { StartInfo = start, EnableRaisingEvents = true }, lastWords);
        server._process.OutputDataReceived += (_, line) => server.Heard(line.Data);
        server._process.ErrorDataReceived += (_, line) => server.Heard(line.Data);
        server._process.Exited += (_, _) => server._ready.TrySetException(new InvalidOperationException("The server ended: " + server.Said));
        server._process.Start();
        server._process.BeginOutputReadLine();
        server._process.BeginErrorReadLine();
        await server._ready.Task.WaitAsync(Patience);
        return server;
    }

    /// <summary>The program as the web project's build left it, with the same configuration as these tests.</summary>
    private static string Program
    {
        get
        {
            var here = new DirectoryInfo(AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar));
            var (framework, configuration) = (here.Name, here.Parent!.Name);
            for (var folder = here; folder is not null; folder = folder.Parent)
            {
                var built = Path.Combine(folder.FullName, "src", "JobBoard.Web", "bin", configuration, framework, "jobboard.dll");
                if (File.Exists(built)) return built;
            }

            throw new FileNotFoundException("jobboard.dll is not built beside these tests.");
        }
    }

    private void Heard(string? line)
    {
        if (line is null) return;
        lock (_said) _said.AppendLine(line);
        if (line.StartsWith("Job Board at ", StringComparison.Ordinal)) Url = new Uri(line["Job Board at ".Length..]);
        if (line.StartsWith(_lastWords, StringComparison.Ordinal)) _ready.TrySetResult();
    }

    /// <summary>Tells it to end where the system knows how, so that the demo takes its folder along; else pulls the plug.</summary>
    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited && !OperatingSystem.IsWindows())
        {
            using var told = Process.Start("kill", ["-TERM", _process.Id.ToString(CultureInfo.InvariantCulture)]);
            await told.WaitForExitAsync();
            _process.WaitForExit(TimeSpan.FromSeconds(20));
        }

        if (!_process.HasExited) _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
    }

    [GeneratedRegex(@"^  (\S+) +\S+ +PIN (\d+)", RegexOptions.Multiline)]
    private static partial Regex PinLine();

    [GeneratedRegex(@"^Customer's page: (\S+)", RegexOptions.Multiline)]
    private static partial Regex CustomerLine();

    [GeneratedRegex(@"^Wall: (\S+)", RegexOptions.Multiline)]
    private static partial Regex WallLine();
}
