using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Heaveline.Web.Guard;

/// <summary>The addresses that this machine has, and by which other machines reach it.</summary>
public static class MachineAddress
{
    /// <summary>Whether an address stands for all those of the machine.</summary>
    public static bool IsAll(IPAddress address)
    {
        ArgumentNullException.ThrowIfNull(address);
        return address.Equals(IPAddress.Any) || address.Equals(IPAddress.IPv6Any);
    }

    /// <summary>All that the machine has, its loopback too.</summary>
    public static IReadOnlyList<IPAddress> All() =>
    [
        .. NetworkInterface.GetAllNetworkInterfaces()
            .SelectMany(one => one.GetIPProperties().UnicastAddresses)
            .Select(one => one.Address)
            .Distinct(),
    ];

    /// <summary>
    /// Those by which others reach what listens: without the loopback, and without addresses that mean something on one line alone and in no browser
    /// (fe80::, [RFC 4291 §2.5.6]).
    /// </summary>
    /// <param name="listening">The address that is listened at: 0.0.0.0 is reached by IPv4 alone, :: by both.</param>
    public static IReadOnlyList<IPAddress> Reached(IPAddress listening) => !IsAll(listening) ? [listening] :
    [
        .. All()
            .Where(one => !IPAddress.IsLoopback(one) && !one.IsIPv6LinkLocal)
            .Where(one => listening.AddressFamily == AddressFamily.InterNetworkV6 || one.AddressFamily == AddressFamily.InterNetwork),
    ];
}
