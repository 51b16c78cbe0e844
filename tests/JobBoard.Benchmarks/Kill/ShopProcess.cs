using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace JobBoard.Benchmarks.Kill;

/// <summary>A shop in a process of its own, seen from outside: started, spoken to, killed.</summary>
internal sealed class ShopProcess : IDisposable
{
    /// <summary>The verb of this program that is that process.</summary>
    public const string Verb = "kill-shop";

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly Process _process;
    private readonly int _port;

    private ShopProcess(Process process, int port) => (_process, _port) = (process, port);

    /// <summary>Starts it and waits until it takes letters.</summary>
    /// <param name="folder">The data folder.</param>
    /// <param name="synchronous">Another setting of the writer than the program's own, or nothing.</param>
    /// <param name="syncLog">Where every call that syncs a file is logged by <c>strace</c>, or nothing.</param>
    public static async Task<ShopProcess> Start(string folder, string? synchronous = null, string? syncLog = null)
    {
        List<string> words = ["dotnet", "exec", typeof(ShopProcess).Assembly.Location, Verb, "--folder", folder];
        if (synchronous is not null) words.AddRange(["--synchronous", synchronous]);
        if (syncLog is not null) words.InsertRange(0, ["strace", "-f", "-y", "-e", "trace=fsync,fdatasync", "-o", syncLog]);
        var process = Process.Start(new ProcessStartInfo(words[0], words[1..]) { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        try
        {
            return new(process, (int)await Said(process, "port"));
        }
        catch
        {
            process.Kill(entireProcessTree: true);
            throw;
        }
    }

    /// <summary>A connection of its own.</summary>
    public Task<ShopLine> Connect() => ShopLine.Open(new(IPAddress.Loopback, _port));

    /// <summary>SIGKILL: nothing in it runs any more.</summary>
    public async Task Kill()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
    }

    /// <summary>Lets it close in order; gives the groups it committed.</summary>
    public async Task<long> Close()
    {
        _process.StandardInput.Close();
        var groups = await Said(_process, "groups");
        await _process.WaitForExitAsync();
        return groups;
    }

    public void Dispose()
    {
        if (!_process.HasExited) _process.Kill(entireProcessTree: true);
        _process.Dispose();
    }

    private static async Task<long> Said(Process process, string word)
    {
        var line = await process.StandardOutput.ReadLineAsync().WaitAsync(Patience);
        return line?.Split(' ') is [var said, var number] && said == word
            ? long.Parse(number, CultureInfo.InvariantCulture)
            : throw new InvalidOperationException($"The shop's process said '{line}' instead of its {word}.");
    }
}

/// <summary>One connection to a shop in another process.</summary>
internal sealed class ShopLine : IDisposable
{
    private readonly TcpClient _client;
    private readonly StreamReader _reader;
    private readonly StreamWriter _writer;

    private ShopLine(TcpClient client) =>
        (_client, _reader, _writer) = (client, new(client.GetStream()), new(client.GetStream()) { AutoFlush = true, NewLine = "\n" });

    public static async Task<ShopLine> Open(IPEndPoint to)
    {
        var client = new TcpClient { NoDelay = true };
        await client.ConnectAsync(to);
        return new(client);
    }

    /// <summary>Sends a letter and waits for the answer; nothing when the other side died before it came.</summary>
    public async Task<Reply?> Ask(Letter letter)
    {
        try
        {
            await _writer.WriteLineAsync(letter.ToLine());
            return await _reader.ReadLineAsync() is { } line ? Reply.Read(line) : null;
        }
        catch (IOException)
        {
            return null;
        }
    }

    public void Dispose()
    {
        try
        {
            _writer.Dispose();
        }
        catch (IOException)
        {
            // What was still to be written has nobody to go to.
        }

        _client.Dispose();
    }
}
