using System.Net;
using System.Net.Sockets;
using System.Runtime.CompilerServices;
using JobBoard.Domain.Rules;
using JobBoard.Shop.Running;
using JobBoard.Storage.History;
using JobBoard.Storage.Journal;
using Microsoft.Data.Sqlite;

namespace JobBoard.Benchmarks.Kill;

/// <summary>
/// The process that is killed: the running shop on a data folder, exactly as the web server opens it, behind a plain loopback
/// socket with a letter a line. Ends by itself when its standard input does.
/// </summary>
internal sealed class ShopServer : IAsyncDisposable
{
    private readonly OpenShop _shop;
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private volatile string? _synchronous;

    private ShopServer(string folder)
    {
        _shop = OpenShop.Open(folder, RuleBook.Full, TimeProvider.System, Evaluation.NextChangeAt, Histories.All);
        _shop.Runner.HeadMoved += ReadWriter;
    }

    /// <summary>Opens the folder, says <c>port N</c>, serves until the input ends, closes and says <c>groups N</c>.</summary>
    /// <param name="options"><c>--folder F</c>; <c>--synchronous normal</c> opens the writer otherwise, to see that this is found.</param>
    public static async Task<int> Run(Options options)
    {
        var server = new ShopServer(options.Text("folder") ?? throw new ArgumentException("--folder names the data folder."));
        await using (server)
        {
            if (options.Text("synchronous") is { } level) OpenOtherwise(server._shop.Journal, level);
            server._listener.Start(128);
            Console.WriteLine($"port {((IPEndPoint)server._listener.LocalEndpoint).Port}");
            _ = server.Accept();
            while (await Console.In.ReadLineAsync() is not null)
            {
            }
        }

        Console.WriteLine($"groups {server._shop.Journal.GroupsCommitted}");
        return 0;
    }

    public async ValueTask DisposeAsync()
    {
        _listener.Stop();
        await _shop.DisposeAsync();
    }

    private async Task Accept()
    {
        while (true)
        {
            var client = await _listener.AcceptTcpClientAsync();
            client.NoDelay = true;
            _ = Serve(client);
        }
    }

    private async Task Serve(TcpClient client)
    {
        using (client)
        {
            using var reader = new StreamReader(client.GetStream());
            await using var writer = new StreamWriter(client.GetStream()) { AutoFlush = true, NewLine = "\n" };
            try
            {
                while (await reader.ReadLineAsync() is { } line) await writer.WriteLineAsync((await Answer(Letter.Read(line))).ToLine());
            }
            catch (IOException)
            {
                // The other side has gone.
            }
        }
    }

    private async Task<Reply> Answer(Letter letter)
    {
        if (letter.At is { } at) _shop.Clock.Hold(at);
        var outcome = await _shop.Runner.Send(new(letter.Id, letter.Actor, letter.At ?? _shop.Runner.Now, null, letter.Command));
        return Reply.Of(outcome, _shop.Journal.GroupsCommitted, _synchronous);
    }

    /// <summary>After each commit, on the writer's own thread, where no group is open; the pulse raises the same signal on others.</summary>
    private void ReadWriter()
    {
        if (Thread.CurrentThread.Name == "day book") _synchronous = _shop.Journal.WriterPragmas().Synchronous;
    }

    private static void OpenOtherwise(SqliteJournal journal, string level)
    {
        using var command = Writer(journal).CreateCommand();
        command.CommandText = level == "normal" ? "PRAGMA synchronous = NORMAL" : throw new ArgumentException("--synchronous knows normal.");
        command.ExecuteNonQuery();
    }

    [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_writer")]
    private static extern ref SqliteConnection Writer(SqliteJournal journal);
}
