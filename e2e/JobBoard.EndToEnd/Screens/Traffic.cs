using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace JobBoard.EndToEnd.Screens;

/// <summary>
/// Listens to every request of the browsers of a story. Allowed are page loads, their static files, the live feed, signing
/// in, making a customer's link, a plan's draft looked at while it is typed, and one post of a command for each tap that sends one; nothing else, and nothing to any other place.
/// </summary>
internal sealed class Traffic
{
    private readonly ConcurrentBag<string> _others = [];
    private readonly ConcurrentDictionary<string, byte> _places = new();
    private int _posts;
    private int _taps;

    /// <summary>Requests that nobody asked for by a tap or a page load.</summary>
    public IReadOnlyCollection<string> Others => _others;

    /// <summary>Commands posted.</summary>
    public int Posts => _posts;

    /// <summary>Taps that send a command.</summary>
    public int Taps => _taps;

    /// <summary>Allows a server's address.</summary>
    public void Allow(Uri url) => _places[url.Authority] = 0;

    /// <summary>Notes a tap that sends a command.</summary>
    public void Tapped() => Interlocked.Increment(ref _taps);

    /// <summary>Listens to a context.</summary>
    public void ListenTo(IBrowserContext context)
    {
        context.Request += (_, request) => Judge(request);
        context.Page += (_, page) => page.WebSocket += (_, socket) => JudgeSocket(socket.Url);
    }

    private void Judge(IRequest request)
    {
        var url = new Uri(request.Url);
        if (url.Scheme is "data" or "blob") return;
        if (!_places.ContainsKey(url.Authority)) _others.Add($"{request.Method} {request.Url}");
        else if (request.Method == "POST" && url.AbsolutePath.StartsWith("/do/", StringComparison.Ordinal)) Interlocked.Increment(ref _posts);
        else if (!IsAllowed(request.Method, request.ResourceType, url.AbsolutePath)) _others.Add($"{request.Method} {request.Url} ({request.ResourceType})");
    }

    private static bool IsAllowed(string method, string type, string path) =>
        path.StartsWith("/live", StringComparison.Ordinal)
        || (method == "POST" && type == "document" && path.EndsWith("/customer", StringComparison.Ordinal))
        || (type == "fetch" && path.StartsWith("/plans/", StringComparison.Ordinal))
        || (method == "POST" && path == "/sign-in" && type == "document")
        || (method == "GET" && type is "document" or "stylesheet" or "script" or "font" or "image" or "other");

    private void JudgeSocket(string text)
    {
        var url = new Uri(text);
        if (!_places.ContainsKey(url.Authority) || url.AbsolutePath != "/live") _others.Add("socket " + text);
    }
}
