using System.Net;
using Heaveline.Web.Guard;
using Microsoft.AspNetCore.Connections;
using Microsoft.Extensions.Logging;

namespace Heaveline.Tests.Web;

public class ConnectionsTests
{
    private const string Words = "No room for more connections (256 at once, 64 of one other machine): ";

    [Fact]
    public async Task A_machine_that_holds_connections_open_shuts_out_nobody_else()
    {
        var connections = new Connections(new HandClock(), new Lines());
        var hold = new TaskCompletionSource();
        connections.Know(IPAddress.Parse("198.51.100.9"));
        Assert.Equal(Connections.MostOfOne, await Held("198.51.100.1", Connections.Most));
        // All that have not paired together, in IPv6 a whole network as one.
        Assert.Equal(Connections.MostOfOne, await Held("2001:db8::1", 40) + await Held("2001:db8::2", 40));
        Assert.Equal(0, await Held("198.51.100.3", 1));
        // Who has paired finds room, but no more than one machine's; this machine has the rest, by whichever of its addresses.
        Assert.Equal(Connections.MostOfOne, await Held("198.51.100.9", Connections.Most));
        Assert.Equal(32, await Held("192.0.2.2", 32));
        Assert.Equal(32, await Held("127.0.0.1", Connections.Most));
        hold.SetResult();
        Assert.Equal(1, await Held("198.51.100.3", 1));

        async Task<int> Held(string from, int times)
        {
            var let = 0;
            for (var n = 0; n < times; n++)
            {
                var one = new Knocking
                {
                    RemoteEndPoint = new IPEndPoint(IPAddress.Parse(from), 50_000 + n),
                    LocalEndPoint = new IPEndPoint(IPAddress.Parse("192.0.2.2"), 5090),
                };
                var served = connections.Serve(one, _ => hold.Task);
                let += one.TurnedAway ? 0 : 1;
                if (one.TurnedAway || hold.Task.IsCompleted)
                {
                    await served;
                }
            }

            return let;
        }
    }

    [Fact]
    public async Task Those_turned_away_are_counted_and_told_at_most_once_a_minute()
    {
        var clock = new HandClock();
        var log = new Lines();
        var connections = new Connections(clock, log);
        var hold = new TaskCompletionSource();
        var served = Enumerable.Range(0, Connections.Most).Select(_ => connections.Serve(new DefaultConnectionContext(), _ => hold.Task)).ToList();
        Assert.Empty(log.Said);

        await Knock(1000);
        Assert.Equal([$"{Words}1 turned away since it was last said, at most once a minute."], log.Said);
        clock.Now += TimeSpan.FromSeconds(59.0);
        await Knock(10);
        Assert.Single(log.Said);
        clock.Now += TimeSpan.FromSeconds(1.0);
        await Knock(1);
        Assert.Contains(": 1010 turned away", log.Said[1], StringComparison.Ordinal);
        await Knock(5);
        Assert.Equal(2, log.Said.Count);

        // Room again: served, and what was not told yet is told when its minute has passed.
        hold.SetResult();
        await Task.WhenAll(served);
        var inside = false;
        await connections.Serve(new DefaultConnectionContext(), _ =>
        {
            inside = true;
            return Task.CompletedTask;
        });
        Assert.True(inside);
        Assert.Equal(2, log.Said.Count);
        clock.Now += TimeSpan.FromMinutes(1.0);
        await connections.Serve(new DefaultConnectionContext(), _ => Task.CompletedTask);
        Assert.Contains(": 5 turned away", log.Said[2], StringComparison.Ordinal);

        async Task Knock(int times)
        {
            for (var n = 0; n < times; n++)
            {
                var knocking = new Knocking();
                await connections.Serve(knocking, _ => throw new InvalidOperationException("Let in."));
                Assert.True(knocking.TurnedAway);
            }
        }
    }

    private sealed class Knocking : DefaultConnectionContext
    {
        public bool TurnedAway { get; private set; }

        public override void Abort(ConnectionAbortedException abortReason) => TurnedAway = true;
    }

    private sealed class Lines : ILogger
    {
        public List<string> Said { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            Said.Add(formatter(state, exception));
    }

    private sealed class HandClock : TimeProvider
    {
        public TimeSpan Now { get; set; } = TimeSpan.FromDays(1);

        public override long GetTimestamp() => Now.Ticks;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;
    }
}
