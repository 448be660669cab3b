using Heaveline.Drives;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>What must be said beside a log's numbers.</summary>
internal static class DriveWords
{
    /// <summary>One line for the end of a printout.</summary>
    public const string Safety =
        "Drive tests off public roads, or as traffic and law allow; a passenger handles the phone; fix it so that it cannot fly.";

    /// <summary>The same of a two-wheeler.</summary>
    public const string RiderSafety =
        "Drive tests off public roads, or as traffic and law allow; nobody touches the phone while riding; fix it so that it cannot fly.";

    /// <summary>Where the log must be doubted, a sentence each.</summary>
    public static IEnumerable<string> Cautions(Drive drive, Trust trust, DriveAdvice advice)
    {
        var (clock, mount) = (drive.Clock, drive.Mount);
        if (clock.IsBatched)
        {
            yield return "Stamps came in batches: the instants were drawn again as straight lines between silences.";
        }

        foreach (var back in clock.StepsBack.Take(3))
        {
            yield return Text($"The clock stepped back by {back:G3} s; what follows was moved on.");
        }

        if (clock.Repeats > 0 && !clock.IsBatched)
        {
            yield return Text(
                $"{clock.Repeats} samples bear the stamp of the one before: written twice they count once, else they were spread evenly.");
        }

        if (clock.StepsBack.Length > 3)
        {
            yield return Text($"So did it {clock.StepsBack.Length - 3} times more.");
        }

        foreach (var gap in clock.Gaps.Take(3))
        {
            yield return Text($"No samples between {gap.From:F1} and {gap.To:F1} s; nothing is read across.");
        }

        if (clock.Gaps.Length > 3)
        {
            yield return Text($"That is 3 of {clock.Gaps.Length} gaps; the others are told {advice.Gaps}.");
        }

        if (Math.Abs(mount.Gain - 1.0) > 0.05)
        {
            yield return Text(
                $"Gravity came out {100.0 * ((1.0 / mount.Gain) - 1.0):+0.0;-0.0} % off: the accelerometer's scale is far out, or its unit another.");
        }

        if (mount.Forward is not null && mount.Turning is { } turning && mount.Explained > 0.3 && turning is > 0.0 and (< 0.5 or > 2.0))
        {
            yield return Text($"Turning counts for {turning:G2} of what speed and turn rate say: the turn rate's unit or axes may be wrong.");
        }

        if (mount is { Forward: not null, SpeedLag: null } && !drive.Speed.IsEmpty)
        {
            yield return "By how much the speed comes late was not found: it is used as it is stamped.";
        }

        if (drive.Log.Of(SensorKind.Speed) is { UnitSaid: "" } speed && !drive.Speed.IsEmpty && !Agrees(drive))
        {
            yield return $"The speed's unit is not said: {speed.UnitTaken} was taken.";
        }

        if (trust.IsFolded)
        {
            yield return Text($"Vibration above half the sampling rate may have folded down: the top fifth of the band holds ")
                + Text($"{trust.TopPower:F2} of the power of the next.");
        }

        if (trust.ClippedShare > 0.0)
        {
            yield return "The accelerometer reached its full scale; nothing is read about those instants.";
        }
        else if (trust.Dropped.Any(d => d.Reason == "clipped"))
        {
            yield return "The gyro reached its full scale; nothing is read about those instants.";
        }

        if (trust.Flights is [var first, ..])
        {
            yield return Text($"The phone left the floor, first at t = {first:F1} s; fix it with putty or tape.");
        }

        if (mount.Forward is not null && mount.HalfWidth > Mount.Doubtful && mount.HalfWidth <= Mount.Refused)
        {
            yield return Text($"Forward is known to ± {In.Degrees.Of(mount.HalfWidth.Value):F0}° only: brake firmly once and take two turns.");
        }
    }

    // Braking felt by the accelerometer tells the unit, and so does the user.
    private static bool Agrees(Drive drive) => drive.Story.Any(s => s.About == "speed-unit") || drive.Log.Overrulings.Any(o => o.About == "speed")
        || (drive.Mount is { Explained: > 0.3, Braking: > 0.74 and < 1.35 });
}
