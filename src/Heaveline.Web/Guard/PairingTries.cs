using System.Net;
using System.Net.Sockets;

namespace Heaveline.Web.Guard;

/// <summary>
/// Codes that were tried, by the address that tried them: after a few wrong ones each next one has to wait twice as long. Whoever guesses slows down
/// nobody else, and the door is never shut for good. Eight signs of 31 are not found at a try each ten minutes.
/// </summary>
/// <param name="clock">The clock.</param>
internal sealed class PairingTries(TimeProvider clock)
{
    /// <summary>How many wrong codes an address may type before it has to wait.</summary>
    public const int Free = 5;

    /// <summary>Most addresses that are remembered one by one; further ones wait together.</summary>
    public const int MostAddresses = 1024;

    private static readonly TimeSpan Shortest = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan Forgotten = TimeSpan.FromHours(1);
    private readonly Lock only = new();
    private readonly Dictionary<IPAddress, (int Wrong, long Last)> known = [];

    /// <summary>
    /// Asks for a try. It counts as a wrong one until it turns out to be right, so that many at once are no more than one after another.
    /// </summary>
    /// <param name="from">The address.</param>
    /// <returns>How long to wait first; zero: the code may be looked at.</returns>
    public TimeSpan Begin(IPAddress? from)
    {
        lock (only)
        {
            var now = clock.GetTimestamp();
            var key = Key(from, now);
            var (wrong, last) = known.GetValueOrDefault(key);
            var since = clock.GetElapsedTime(last, now);
            if (wrong > 0 && since > Forgotten)
            {
                wrong = 0;
            }

            var wait = wrong < Free ? TimeSpan.Zero : Delay(wrong) - since;
            if (wait > TimeSpan.Zero)
            {
                return wait;
            }

            known[key] = (wrong + 1, now);
            return TimeSpan.Zero;
        }
    }

    /// <summary>Forgets the wrong codes of an address that knew the right one.</summary>
    public void Succeed(IPAddress? from)
    {
        lock (only)
        {
            known.Remove(Key(from, clock.GetTimestamp()));
        }
    }

    private static TimeSpan Delay(int wrong) =>
        wrong - Free < 30 && Shortest * (1 << (wrong - Free)) is var delay && delay < Longest ? delay : Longest;

    private IPAddress Key(IPAddress? from, long now)
    {
        var one = OneOf(from ?? IPAddress.None);
        if (known.ContainsKey(one) || known.Count < MostAddresses)
        {
            return one;
        }

        foreach (var old in known.Where(pair => clock.GetElapsedTime(pair.Value.Last, now) > Forgotten).Select(pair => pair.Key).ToList())
        {
            known.Remove(old);
        }

        return known.Count < MostAddresses ? one : IPAddress.None;
    }

    /// <summary>
    /// What stands for one machine: it commands a whole network of 64 bits in IPv6 [RFC 4291 §2.5.4], and may come as IPv4 in the clothes of IPv6.
    /// </summary>
    internal static IPAddress OneOf(IPAddress from)
    {
        if (from.IsIPv4MappedToIPv6)
        {
            return from.MapToIPv4();
        }

        if (from.AddressFamily != AddressFamily.InterNetworkV6)
        {
            return from;
        }

        var bytes = from.GetAddressBytes();
        bytes.AsSpan(8).Clear();
        return new IPAddress(bytes);
    }
}
