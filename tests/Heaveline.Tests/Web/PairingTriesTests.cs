using System.Net;
using Heaveline.Web.Guard;

namespace Heaveline.Tests.Web;

/// <summary>Wrong codes slow down the address that types them, and no other.</summary>
public class PairingTriesTests
{
    private static readonly IPAddress Guesser = IPAddress.Parse("192.0.2.7");
    private static readonly IPAddress Owner = IPAddress.Parse("192.0.2.8");
    private readonly HandClock clock = new();

    [Fact]
    public void Each_wrong_code_after_the_fifth_waits_twice_as_long_and_ten_minutes_at_most()
    {
        var tries = new PairingTries(clock);
        for (var n = 0; n < PairingTries.Free; n++)
        {
            Assert.Equal(TimeSpan.Zero, tries.Begin(Guesser));
        }

        foreach (var seconds in new[] { 1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 600, 600 })
        {
            Assert.Equal(TimeSpan.FromSeconds(seconds), tries.Begin(Guesser));
            clock.Now += TimeSpan.FromSeconds(seconds - 0.5);
            Assert.Equal(TimeSpan.FromSeconds(0.5), tries.Begin(Guesser));
            Assert.Equal(TimeSpan.Zero, tries.Begin(Owner));
            tries.Succeed(Owner);
            clock.Now += TimeSpan.FromSeconds(0.5);
            Assert.Equal(TimeSpan.Zero, tries.Begin(Guesser));
        }

        // An hour of peace is a new beginning.
        clock.Now += TimeSpan.FromHours(1.1);
        Assert.Equal(TimeSpan.Zero, tries.Begin(Guesser));
        Assert.Equal(TimeSpan.Zero, tries.Begin(Guesser));
    }

    [Fact]
    public void Many_tries_at_once_are_counted_as_many()
    {
        var tries = new PairingTries(clock);
        var looked = 0;
        Parallel.For(0, 1000, new ParallelOptions { MaxDegreeOfParallelism = 16 }, _ =>
        {
            if (tries.Begin(Guesser) == TimeSpan.Zero)
            {
                Interlocked.Increment(ref looked);
            }
        });
        Assert.Equal(PairingTries.Free, looked);
    }

    [Fact]
    public void A_crowd_of_strange_addresses_fills_no_memory_and_gains_no_tries_once_the_table_is_full()
    {
        var tries = new PairingTries(clock);
        for (var n = 0; n < PairingTries.Free; n++)
        {
            Assert.Equal(TimeSpan.Zero, tries.Begin(Guesser));
        }

        var looked = Enumerable.Range(0, 100_000).Count(n => tries.Begin(new IPAddress(n + (10L << 24))) == TimeSpan.Zero);
        Assert.Equal(PairingTries.MostAddresses - 1 + PairingTries.Free, looked);
        Assert.NotEqual(TimeSpan.Zero, tries.Begin(Guesser));

        // Whoever was remembered an hour ago makes room.
        clock.Now += TimeSpan.FromHours(1.1);
        Assert.Equal(TimeSpan.Zero, tries.Begin(Owner));
    }

    [Fact]
    public void A_network_of_64_bits_is_one_address_and_IPv4_is_itself_in_other_clothes()
    {
        var tries = new PairingTries(clock);
        for (var n = 0; n < PairingTries.Free; n++)
        {
            Assert.Equal(TimeSpan.Zero, tries.Begin(IPAddress.Parse($"2001:db8::{n}")));
            Assert.Equal(TimeSpan.Zero, tries.Begin(n % 2 == 0 ? Guesser : Guesser.MapToIPv6()));
        }

        Assert.NotEqual(TimeSpan.Zero, tries.Begin(IPAddress.Parse("2001:db8::ffff")));
        Assert.NotEqual(TimeSpan.Zero, tries.Begin(Guesser));
        Assert.Equal(TimeSpan.Zero, tries.Begin(IPAddress.Parse("2001:db8:0:1::1")));
    }

    private sealed class HandClock : TimeProvider
    {
        public TimeSpan Now { get; set; } = TimeSpan.FromDays(1);

        public override long GetTimestamp() => Now.Ticks;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;
    }
}
