using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace JobBoard.EndToEnd.Servers;

/// <summary>Ports and addresses of this machine.</summary>
internal static class Ports
{
    /// <summary>A port of the loopback address that is free now.</summary>
    public static int Free()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>An address of this machine that is not its loopback one, or nothing.</summary>
    public static IPAddress? OutwardAddress() => NetworkInterface.GetAllNetworkInterfaces()
        .Where(n => n.OperationalStatus == OperationalStatus.Up && n.NetworkInterfaceType != NetworkInterfaceType.Loopback)
        .SelectMany(n => n.GetIPProperties().UnicastAddresses).Select(a => a.Address)
        .FirstOrDefault(a => a.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(a) && !a.ToString().StartsWith("169.254.", StringComparison.Ordinal));
}
