using System.Collections.Concurrent;
using JobBoard.Web.SignIn;
using Microsoft.AspNetCore.SignalR;

namespace JobBoard.Web.Live;

/// <summary>Closes feeds whose sign-in no longer stands: what was opened with it sees nothing more.</summary>
public sealed class Doorkeeper(Standing standing)
{
    private readonly ConcurrentDictionary<string, HubCallerContext> _open = new(StringComparer.Ordinal);

    internal void Let(HubCallerContext context) => _open[context.ConnectionId] = context;

    internal void Left(HubCallerContext context) => _open.TryRemove(context.ConnectionId, out _);

    /// <summary>Looks at every open feed.</summary>
    internal void Look()
    {
        foreach (var context in _open.Values.Where(c => c.User is null || !standing.Stands(c.User))) context.Abort();
    }
}
