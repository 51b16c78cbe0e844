using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace JobBoard.EndToEnd.Servers;

/// <summary>A device's line to the server, which can be cut and mended: bytes are carried both ways, and while it is cut nothing is.</summary>
internal sealed class Line : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly ConcurrentDictionary<TcpClient, byte> _open = new();
    private readonly CancellationTokenSource _end = new();
    private readonly Uri _server;
    private readonly Task _accepting;
    private volatile bool _cut;

    public Line(Uri server)
    {
        _server = server;
        _listener.Start();
        _accepting = Accept();
    }

    /// <summary>The server, seen through the line.</summary>
    public Uri Url => new($"http://127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}/");

    /// <summary>Drops what is open and lets nothing through.</summary>
    public void Cut()
    {
        _cut = true;
        foreach (var client in _open.Keys) client.Dispose();
    }

    /// <summary>Lets new connections through again.</summary>
    public void Mend() => _cut = false;

    private async Task Accept()
    {
        try
        {
            while (!_end.IsCancellationRequested)
            {
                var client = await _listener.AcceptTcpClientAsync(_end.Token);
                if (_cut) client.Dispose();
                else _ = Carry(client);
            }
        }
        catch (OperationCanceledException)
        {
            // The line is taken down.
        }
    }

    private async Task Carry(TcpClient client)
    {
        using var server = new TcpClient();
        _open[client] = _open[server] = 0;
        try
        {
            await server.ConnectAsync(IPAddress.Loopback, _server.Port);
            await Task.WhenAny(Copy(client, server), Copy(server, client));
        }
        catch (Exception e) when (e is IOException or SocketException or ObjectDisposedException or InvalidOperationException)
        {
            // Cut, or the other side went away.
        }
        finally
        {
            client.Dispose();
            server.Dispose();
            _open.TryRemove(client, out _);
            _open.TryRemove(server, out _);
        }
    }

    private static async Task Copy(TcpClient from, TcpClient to)
    {
        try
        {
            await from.GetStream().CopyToAsync(to.GetStream());
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or InvalidOperationException)
        {
            // Cut, or the other side went away.
        }
    }

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        _listener.Stop();
        Cut();
        await _accepting;
        _end.Dispose();
    }
}
