using System.Net;
using Microsoft.AspNetCore.Connections;
using Microsoft.Extensions.Logging;

namespace Heaveline.Web.Guard;

/// <summary>
/// Bounds how many connections there are at once: in all, from one other machine, and from those that have not paired, so that nobody who holds
/// connections open shuts out the owner at this machine or a reader who has typed the code. Those that are turned away are counted and told at
/// most once a minute: whoever knocks a thousand times must not fill the owner's terminal.
/// </summary>
/// <param name="clock">The clock.</param>
/// <param name="log">Where it is told.</param>
internal sealed partial class Connections(TimeProvider clock, ILogger log)
{
    /// <summary>Most connections at once, those of open pages and what they load.</summary>
    public const int Most = 4 * Crowd.Most;

    /// <summary>Most from one other machine.</summary>
    public const int MostOfOne = Most / 4;

    /// <summary>Most from all machines that have not paired.</summary>
    public const int MostOfStrangers = Most / 2;

    /// <summary>Most from all other machines; the rest is this machine's own.</summary>
    public const int MostOfOthers = Most * 3 / 4;

    private static readonly TimeSpan Quiet = TimeSpan.FromMinutes(1);
    private readonly Lock only = new();
    private readonly Dictionary<IPAddress, int> others = [];
    private readonly HashSet<IPAddress> known = [];
    private int open;
    private int turnedAway;
    private long? told;

    /// <summary>Serves a connection, or closes it when there are too many.</summary>
    public async Task Serve(ConnectionContext connection, ConnectionDelegate next)
    {
        var from = From(connection);
        var room = Enter(from);
        Tell(room ? 0 : 1);
        if (!room)
        {
            connection.Abort();
            return;
        }

        try
        {
            await next(connection);
        }
        finally
        {
            Leave(from);
        }
    }

    /// <summary>Remembers a machine from which a reader has paired: strangers take no room from it.</summary>
    public void Know(IPAddress? address)
    {
        lock (only)
        {
            if (address is not null && known.Count < Most)
            {
                known.Add(PairingTries.OneOf(address));
            }
        }
    }

    // Null for this machine itself, by whichever of its addresses.
    private static IPAddress? From(ConnectionContext connection) =>
        connection.RemoteEndPoint is IPEndPoint { Address: var from } && !IPAddress.IsLoopback(from)
            && !from.Equals((connection.LocalEndPoint as IPEndPoint)?.Address)
            ? PairingTries.OneOf(from)
            : null;

    private bool Enter(IPAddress? from)
    {
        lock (only)
        {
            if (open >= Most || (from is not null && !HasRoom(from)))
            {
                return false;
            }

            open++;
            if (from is not null)
            {
                others[from] = others.GetValueOrDefault(from) + 1;
            }

            return true;
        }
    }

    private bool HasRoom(IPAddress from) => others.GetValueOrDefault(from) < MostOfOne && others.Values.Sum() < MostOfOthers
        && (known.Contains(from) || others.Where(o => !known.Contains(o.Key)).Sum(o => o.Value) < MostOfStrangers);

    private void Leave(IPAddress? from)
    {
        lock (only)
        {
            open--;
            if (from is not null && --others[from] == 0)
            {
                others.Remove(from);
            }
        }
    }

    // What came within a minute of the last telling is told with the first connection after it.
    private void Tell(int more)
    {
        lock (only)
        {
            turnedAway += more;
            var now = clock.GetTimestamp();
            if (turnedAway > 0 && (told is not { } last || clock.GetElapsedTime(last, now) >= Quiet))
            {
                TurnedAway(log, Most, MostOfOne, turnedAway);
                (told, turnedAway) = (now, 0);
            }
        }
    }

    [LoggerMessage(
        EventId = 1,
        Level = LogLevel.Warning,
        Message = "No room for more connections ({Most} at once, {MostOfOne} of one other machine): {Count} turned away since it was last said, "
            + "at most once a minute.")]
    private static partial void TurnedAway(ILogger log, int most, int mostOfOne, int count);
}
