using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Tests.Drives.Lanes;

namespace Heaveline.Tests.Drives;

/// <summary>Bumps looked for anew with what an earlier look has left, against bumps looked for from nothing.</summary>
public class SeenBumpsTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static EventSettings Usual { get; } = new() { Wheelbase = LaneReading.Wheelbase };

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_second_look_finds_the_same_to_the_bit_whatever_was_decided_since(bool knowsMore)
    {
        var drive = LaneReading.Before.Drive;
        var trust = Trust.Of(drive, Stop);
        var first = DriveEvents.Of(drive, trust, Usual, Stop);
        var at = first.Kept.First().Onset;
        var decided = Usual with { Rejected = [at], Sites = [("well", first.Kept.Last().Onset)] };
        decided = knowsMore ? decided with { Wheelbase = 2.6, Added = [at + 5.0], Phone = new PhonePlace { BehindFrontAxle = 1.2 } } : decided;
        var (again, anew) = (DriveEvents.Of(drive, trust, decided, first, Stop), DriveEvents.Of(drive, trust, decided, null, Stop));
        Assert.Equal(Text(anew), Text(again));
        Assert.NotEqual(Text(first), Text(again));
        Assert.Equal(!knowsMore, ReferenceEquals(first.Seen, again.Seen));
    }

    [Fact]
    public void What_was_seen_of_another_drive_serves_nothing()
    {
        var (one, other) = (LaneReading.Before.Drive, LaneReading.After.Drive);
        var first = DriveEvents.Of(one, Trust.Of(one, Stop), Usual, Stop);
        var trust = Trust.Of(other, Stop);
        Assert.Equal(Text(DriveEvents.Of(other, trust, Usual, Stop)), Text(DriveEvents.Of(other, trust, Usual, first, Stop)));
    }

    // Every number with all its digits.
    private static IEnumerable<string> Text(DriveEvents events) => events.Events.Select(e => FormattableString.Invariant(
        $"{e.Number} {e.Site} {e.Seen:R} {e.Onset:R} {e.OnsetHalfWidth:R} {e.Speed:R} {e.Length:R} {e.HitUntil:R} {e.Kind} {e.ByHand} {e.Reason} ")
        + string.Join(' ', e.Numbers.All.Select(n => FormattableString.Invariant($"{n.Value:R} {n.HalfWidth:R}"))));
}
