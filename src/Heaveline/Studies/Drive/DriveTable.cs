using Heaveline.Answers;
using Heaveline.Drives;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The numbers of a log.</summary>
public static class DriveTable
{
    private const string Page = "guide/what-a-log-is-good-for.md";

    private static readonly Measure<(Drive Drive, Trust Trust)>[] All =
    [
        Of(
            "drive-length",
            "length that is read",
            In.Seconds,
            1,
            d => d.Drive.Length,
            "How long all sensors have samples and the phone lies still in its place."),
        Of("drive-rate", "sampling rate", In.Hertz, 1, d => d.Drive.Clock.Rate, "One over the median step between samples of the accelerometer."),
        Of("drive-jitter", "jitter of the stamps", In.Milliseconds, 2, d => d.Drive.Clock.Jitter,
            "1.4826 times the median distance of the steps between samples from their median."),
        Of("drive-gaps", "gaps", In.Plain, 0, d => d.Drive.Clock.Gaps.Length, "Steps longer than four median steps."),
        Of("drive-repeats", "repeated stamps", In.Plain, 0, d => d.Drive.Clock.Repeats, "Samples that bear the stamp of the one before."),
        Of("drive-steps-back", "steps back", In.Plain, 0, d => d.Drive.Clock.StepsBack.Length, "How often the clock was set back."),
        Of(
            "drive-top",
            "highest frequency that is read",
            In.Hertz,
            1,
            d => d.Trust.Top,
            "0.4 of the rate to which all sensors are brought by one filter."),
        Of("drive-tilt", "tilt of the phone", In.Degrees, 1, d => d.Drive.Mount.Tilt, "Angle between up and the nearest of the phone's axes."),
        Of("drive-up-half-width", "up is known to ±", In.Degrees, 2, d => d.Drive.Mount.UpHalfWidth,
            "Half-width of the 90 % interval of up, from its means over sixteenths of the drive."),
        Of("drive-forward", "forward from the phone's flattest axis", In.Degrees, 0, d => d.Drive.Mount.ForwardAngle ?? double.NaN,
            "Angle of forward about up from that axis of the phone which lies flattest, counter-clockwise seen from above."),
        Of("drive-wander", "wander of gravity", In.Degrees, 1, d => d.Drive.Mount.Wander,
            "Angle to its mean within which gravity, averaged over a second, lies nine tenths of the time."),
        Of("drive-gain", "gain that gravity asks for", In.Plain, 4, d => d.Drive.Mount.Gain,
            "9.80665 m/s² over the length of the mean specific force: by it the accelerometer's values are multiplied."),
        Of("drive-forward-half-width", "forward is known to ±", In.Degrees, 1, d => d.Drive.Mount.HalfWidth ?? double.NaN,
            "Half-width of the 90 % interval of the direction of forward about up."),
        Of("drive-explained", "explained by braking and turning", In.Percent, 0, d => d.Drive.Mount.Explained ?? double.NaN,
            "Share of the slow horizontal acceleration (0.03 to 0.35 Hz) that the change of speed and speed times yaw rate explain."),
        Of("drive-speed-lag", "speed comes late by", In.Seconds, 1, d => d.Drive.Mount.SpeedLag ?? double.NaN,
            "The shift of the speed at which braking and turning explain most."),
        Of(
            "drive-fastest",
            "fastest",
            In.KilometresPerHour,
            0,
            d => d.Drive.Speed.IsEmpty ? double.NaN : d.Drive.Speed.Max(),
            "Greatest speed of the log."),
        Of("drive-clipped", "samples at full scale", In.Percent, 3, d => d.Trust.ClippedShare,
            "Share of the accelerometer's samples in runs of three or more at its full scale: 2, 4, 8 or 16 g, or the log's own farthest, "
            + "met twice or for long."),
        Of("drive-top-power", "power of the top fifth over the next", In.Plain, 2, d => d.Trust.TopPower ?? double.NaN,
            "Power of the vertical acceleration in the top fifth of the sensor's band over that in the fifth below; "
            + "above 0.3 vibration may have folded down."),
        Of(
            "drive-engine",
            "hum of the engine at",
            In.Hertz,
            1,
            d => d.Trust.Engine?.Frequency ?? double.NaN,
            "Frequency of a narrow line between 22 and 45 Hz."),
        Of("drive-engine-amplitude", "its amplitude", In.MetresPerSecondSquared, 2, d => d.Trust.Engine?.Amplitude ?? double.NaN,
            "Amplitude of that line.") with { Name = "amplitude of the engine's hum" },
        Of(
            "drive-flights",
            "times off the floor",
            In.Plain,
            0,
            d => d.Trust.Flights.Length,
            "How often the specific force along up fell below 0.05 g."),
    ];

    /// <summary>All that the table holds, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. All];

    /// <summary>The table.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="trust">What it is good for.</param>
    public static FactTable Of(Drive drive, Trust trust) => new FactTable("Log", ["value"]).Add(All, [(drive, trust)]);

    /// <summary>The few that matter most.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="trust">What it is good for.</param>
    public static FactTable Short(Drive drive, Trust trust) =>
        Of(drive, trust).Only(new HashSet<string> { "drive-length", "drive-rate", "drive-forward-half-width", "drive-fastest" });

    private static Measure<(Drive Drive, Trust Trust)> Of(
        string key, string label, ShownUnit unit, int digits, Func<(Drive Drive, Trust Trust), double> of, string says) =>
        new(key, label, unit, digits, of, says) { Page = Page };
}
