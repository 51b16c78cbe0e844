using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace JobBoard.Web.Verbs;

/// <summary>Where the server listens: plain HTTP on an address and a port.</summary>
/// <param name="Host">An IP address or <c>localhost</c>.</param>
/// <param name="Port">0 for any that is free.</param>
public sealed record ListenAddress(string Host, int Port)
{
    /// <summary>Used when none is given.</summary>
    public static ListenAddress Usual { get; } = new("127.0.0.1", 5080);

    /// <summary>The address as a browser writes it.</summary>
    public string Url => string.Create(CultureInfo.InvariantCulture, $"http://{(Host.Contains(':') ? $"[{Host}]" : Host)}:{Port}");

    /// <summary>Whether only this machine can reach it.</summary>
    public bool IsLoopback => Host == "localhost" || (IPAddress.TryParse(Host, out var ip) && IPAddress.IsLoopback(ip));

    /// <summary>Reads <c>http://0.0.0.0:5080</c>, <c>0.0.0.0:5080</c>, <c>0.0.0.0</c> or <c>5080</c>.</summary>
    /// <exception cref="CommandLineException">It is none of these.</exception>
    public static ListenAddress Read(string text)
    {
        if (text.StartsWith("https:", StringComparison.OrdinalIgnoreCase))
            throw new CommandLineException("This server speaks plain HTTP only. Give --listen an address that begins with http://.");
        var bare = text.StartsWith("http://", StringComparison.OrdinalIgnoreCase) ? text[7..].TrimEnd('/') : text;
        if (IsPort(bare, out var port)) return Usual with { Port = port };
        if (IPAddress.TryParse(bare.Trim('[', ']'), out var alone)) return new(alone.ToString(), Usual.Port);
        var colon = bare.LastIndexOf(':');
        var host = (colon < 0 ? bare : bare[..colon]).Trim('[', ']');
        port = Usual.Port;
        if ((colon >= 0 && !IsPort(bare[(colon + 1)..], out port)) || !IsHost(host))
            throw new CommandLineException($"'{text}' is no address to listen on. Write it as http://192.168.1.20:5080, 0.0.0.0:5080 or 5080.");
        return new(host, port);
    }

    /// <summary>This address, or the same with any free port when its own is taken.</summary>
    public ListenAddress OrFree()
    {
        using var socket = new Socket(SocketType.Stream, ProtocolType.Tcp);
        try
        {
            socket.ExclusiveAddressUse = true;
            socket.Bind(new IPEndPoint(Host == "localhost" ? IPAddress.Loopback : IPAddress.Parse(Host), Port));
            return this;
        }
        catch (SocketException)
        {
            return this with { Port = 0 };
        }
    }

    private static bool IsHost(string host) => host == "localhost" || IPAddress.TryParse(host, out _);

    private static bool IsPort(string text, out int port) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out port) && port is >= 0 and <= 65535;
}
