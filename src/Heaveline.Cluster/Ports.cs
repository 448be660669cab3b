using System.Net;
using System.Net.Sockets;
using Heaveline.Passes;

namespace Heaveline.Cluster;

/// <summary>Where a machine listens.</summary>
internal static class Ports
{
    /// <summary>The same with a free port where it says 0.</summary>
    /// <exception cref="RunFailedException">Nobody can listen there.</exception>
    public static IPEndPoint Free(IPEndPoint at)
    {
        try
        {
            using var listener = new TcpListener(at);
            listener.Start();
            return (IPEndPoint)listener.LocalEndpoint;
        }
        catch (SocketException refused)
        {
            throw new RunFailedException(
                $"Nobody can listen at {at}: {refused.Message}.", "Choose another port, or another address of this machine.");
        }
    }

    /// <summary>The address of this machine by which it reaches another.</summary>
    public static IPAddress Towards(IPEndPoint other)
    {
        using var socket = new Socket(other.AddressFamily, SocketType.Dgram, ProtocolType.Udp);
        socket.Connect(other);
        return ((IPEndPoint)socket.LocalEndPoint!).Address;
    }
}
