using System.Threading.Channels;
using JobBoard.Web.Live;
using Microsoft.AspNetCore.SignalR.Client;

namespace JobBoard.Web.Tests.Live;

/// <summary>A reader of the live feed.</summary>
internal sealed class Feed : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly HubConnection _connection;
    private readonly Channel<FragmentPush> _pushes = Channel.CreateUnbounded<FragmentPush>();
    private readonly Channel<Beat> _beats = Channel.CreateUnbounded<Beat>();

    private readonly TaskCompletionSource _closed = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private Feed(HubConnection connection)
    {
        _connection = connection;
        connection.Closed += _ => Task.FromResult(_closed.TrySetResult());
        connection.On<FragmentPush>("fragment", push => _pushes.Writer.TryWrite(push));
        connection.On<Beat>("beat", beat => _beats.Writer.TryWrite(beat));
    }

    /// <summary>Ends when the server has closed the feed.</summary>
    public Task Closed => _closed.Task.WaitAsync(Patience);

    public bool HasPush => _pushes.Reader.Count > 0;

    public static async Task<Feed> Of(Server server, Browser browser)
    {
        var feed = new Feed(new HubConnectionBuilder().WithUrl(new Uri(server.Url, "/live"), o => o.Cookies = browser.Cookies).Build());
        await feed._connection.StartAsync(TestContext.Current.CancellationToken);
        return feed;
    }

    public Task<JoinAnswer> Join(params string[] ids) => _connection.InvokeAsync<JoinAnswer>("Join", ids, TestContext.Current.CancellationToken);

    public async Task<FragmentPush> Next() => await _pushes.Reader.ReadAsync(TestContext.Current.CancellationToken).AsTask().WaitAsync(Patience);

    public async Task<Beat> BeatAt(long seq)
    {
        Beat beat;
        do
        {
            beat = await _beats.Reader.ReadAsync(TestContext.Current.CancellationToken).AsTask().WaitAsync(Patience);
        }
        while (beat.Seq < seq);
        return beat;
    }

    public ValueTask DisposeAsync() => _connection.DisposeAsync();
}
