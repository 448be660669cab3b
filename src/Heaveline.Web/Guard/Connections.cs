using Microsoft.AspNetCore.Connections;
using Microsoft.Extensions.Logging;

namespace Heaveline.Web.Guard;

/// <summary>
/// Bounds how many connections there are at once. Those that are turned away are counted and told at most once a minute: whoever knocks a thousand
/// times must not fill the owner's terminal.
/// </summary>
/// <param name="clock">The clock.</param>
/// <param name="log">Where it is told.</param>
internal sealed partial class Connections(TimeProvider clock, ILogger log)
{
    /// <summary>Most connections at once, those of open pages and what they load.</summary>
    public const int Most = 4 * Crowd.Most;

    private static readonly TimeSpan Quiet = TimeSpan.FromMinutes(1);
    private readonly Lock only = new();
    private int open;
    private int turnedAway;
    private long? told;

    /// <summary>Serves a connection, or closes it when there are too many.</summary>
    public async Task Serve(ConnectionContext connection, ConnectionDelegate next)
    {
        try
        {
            var room = Interlocked.Increment(ref open) <= Most;
            Tell(room ? 0 : 1);
            if (room)
            {
                await next(connection);
            }
            else
            {
                connection.Abort();
            }
        }
        finally
        {
            Interlocked.Decrement(ref open);
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
                TurnedAway(log, Most, turnedAway);
                (told, turnedAway) = (now, 0);
            }
        }
    }

    [LoggerMessage(
        EventId = 1,
        Level = LogLevel.Warning,
        Message = "More than {Most} connections at once: {Count} turned away since it was last said, at most once a minute.")]
    private static partial void TurnedAway(ILogger log, int most, int count);
}
