using System.Net.WebSockets;
using System.Text;
using System.Text.Json;

namespace JobBoard.Web.Tests.Customer;

/// <summary>A customer's feed to the last byte: everything the server sends over the socket, as it comes.</summary>
internal sealed class RawFeed : IAsyncDisposable
{
    private const char End = '\u001e';
    private readonly ClientWebSocket _socket = new();
    private readonly StringBuilder _heard = new();
    private readonly CancellationTokenSource _end = new(TimeSpan.FromMinutes(2));
    private Task _hearing = Task.CompletedTask;

    /// <summary>Everything heard so far.</summary>
    public string Heard
    {
        get
        {
            lock (_heard) return _heard.ToString();
        }
    }

    /// <summary>Ends when the server has closed the line.</summary>
    public Task Closed => _hearing.WaitAsync(TimeSpan.FromSeconds(30));

    public static async Task<RawFeed> Of(Server server, string token)
    {
        var feed = new RawFeed();
        await feed._socket.ConnectAsync(new UriBuilder(new Uri(server.Url, "/live")) { Scheme = "ws", Query = "access_token=" + token }.Uri, feed._end.Token);
        feed._hearing = feed.Hear();
        await feed.Send("""{"protocol":"json","version":1}""");
        return feed;
    }

    public Task Join(params string[] ids) => Send($$"""{"type":1,"invocationId":"1","target":"Join","arguments":[{{JsonSerializer.Serialize(ids)}}]}""");

    public Task Send(string message) => _socket.SendAsync(Encoding.UTF8.GetBytes(message + End), WebSocketMessageType.Text, true, _end.Token);

    /// <summary>Waits until something was heard.</summary>
    public async Task<string> Until(Func<string, bool> heard)
    {
        while (!heard(Heard)) await Task.Delay(20, _end.Token);
        return Heard;
    }

    public async ValueTask DisposeAsync()
    {
        _socket.Abort();
        await _hearing.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _socket.Dispose();
        _end.Dispose();
    }

    private async Task Hear()
    {
        var buffer = new byte[64 * 1024];
        try
        {
            while (await _socket.ReceiveAsync(buffer, _end.Token) is { MessageType: not WebSocketMessageType.Close } part)
            {
                lock (_heard) _heard.Append(Encoding.UTF8.GetString(buffer, 0, part.Count));
            }
        }
        catch (WebSocketException)
        {
            // The line was cut.
        }
    }
}
