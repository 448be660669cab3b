using System.Collections.Immutable;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives;

/// <summary>What a log is good for: its faults, and a verdict for each use, before any result.</summary>
public sealed record Trust
{
    /// <summary>Below this rate body motion is just seen, Hz. A proposal of this program, tried on planted faults.</summary>
    public const double LeastRate = 20.0;

    /// <summary>Below this rate wheel hop is not seen, Hz. A proposal of this program, tried on planted faults.</summary>
    public const double WheelRate = 45.0;

    /// <summary>Below this rate no weighted acceleration is a value of the standard, Hz. A proposal of this program.</summary>
    public const double LeastComfortRate = 60.0;

    /// <summary>The rate from which weighted acceleration is said without a word of the rate, Hz.</summary>
    public const double ComfortRate = 80.0;

    /// <summary>
    /// Below this root mean square vertical acceleration nothing moves, m/s²: a car that stands with its engine off. A proposal of this program.
    /// </summary>
    public const double LeastMotion = 0.05;

    /// <summary>
    /// Below this root mean square turn rate nothing turns, rad/s: above what a phone's gyro hums at rest. A proposal of this program.
    /// </summary>
    public const double LeastTurn = 0.02;

    /// <summary>Samples a second of the accelerometer, Hz.</summary>
    public required double Rate { get; init; }

    /// <summary>The highest frequency that is read, Hz.</summary>
    public required double Top { get; init; }

    /// <summary>Share of the accelerometer's samples that stand at its full scale.</summary>
    public required double ClippedShare { get; init; }

    /// <summary>Power in the top fifth of the sensor's band over that in the fifth below; null where both are too small to matter.</summary>
    public double? TopPower { get; init; }

    /// <summary>Root mean square vertical acceleration of all that is read, m/s².</summary>
    public required double Motion { get; init; }

    /// <summary>Root mean square turn rate about its mean of all that is read, rad/s; 0 where none is logged.</summary>
    public double Turning { get; init; }

    /// <summary>Whether nothing moves in it.</summary>
    public bool IsStill => !(Motion >= LeastMotion) && !(Turning >= LeastTurn);

    /// <summary>Whether vibration above half the sampling rate may have folded down.</summary>
    public bool IsFolded => TopPower > DriveFaults.FoldedPower;

    /// <summary>The engine's hum; null where none is seen.</summary>
    public EngineLine? Engine { get; init; }

    /// <summary>When the phone left the floor, s since the log's start.</summary>
    public required ImmutableArray<double> Flights { get; init; }

    /// <summary>Whether there is a turn rate.</summary>
    public required bool HasTurnRate { get; init; }

    /// <summary>Parts of the drive that nothing is read from, in order.</summary>
    public required ImmutableArray<DroppedStretch> Dropped { get; init; }

    /// <summary>A verdict for each use.</summary>
    public ImmutableArray<TrustVerdict> Verdicts { get; private init; } = [];

    /// <summary>The verdict for a use.</summary>
    public TrustVerdict For(TrustUse use) => Verdicts.First(v => v.Use == use);

    /// <summary>Judges a drive.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Trust Of(Drive drive, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(drive);
        var faults = new DriveFaults(drive, stop);
        var (power, engine) = faults.Spectrum();
        var clips = faults.Clips(out var share);
        var flights = faults.Flights();
        var trust = new Trust
        {
            Rate = drive.Clock.Rate,
            Top = 0.4 * drive.Rate,
            ClippedShare = share,
            TopPower = power,
            Motion = RmsOf(drive),
            Turning = TurningOf(drive),
            Engine = engine,
            Flights = [.. flights],
            HasTurnRate = drive.TurnClock is not null,
            Dropped = [.. faults.Dropped(clips, flights)],
        };
        return trust with { Verdicts = [trust.Events(drive.Mount), trust.Comfort(drive.Mount), trust.Car(drive.Mount)] };
    }

    private string Still => Text($"Nothing moves in this log: its vertical acceleration is {Motion:F3} m/s² (RMS). Log while the car drives.");

    private static double RmsOf(Drive drive)
    {
        var (sum, count) = (0.0, 0);
        foreach (var (first, last) in drive.Covered)
        {
            for (var i = first; i <= last; i++)
            {
                sum += drive.Vertical[i] * drive.Vertical[i];
            }

            count += last - first + 1;
        }

        return Math.Sqrt(sum / Math.Max(count, 1));
    }

    // Of the sensor's own axes, since forward may not be known.
    private static double TurningOf(Drive drive)
    {
        if (drive.Log.Of(SensorKind.TurnRate) is not { } track)
        {
            return 0.0;
        }

        var (from, to) = (drive.Start, drive.Time(drive.Vertical.Length - 1));
        int[] rows = [.. Enumerable.Range(0, track.Times.Length).Where(i => track.Times[i] >= from && track.Times[i] <= to)];
        return rows.Length == 0 ? 0.0 : Math.Sqrt(track.Values.Sum(column =>
        {
            var mean = rows.Average(i => column[i]);
            return rows.Average(i => (column[i] - mean) * (column[i] - mean));
        }));
    }

    private string Slow => Text($"{Rate:F0} samples a second: body motion is just seen, nothing else.");

    private static string Open(Mount mount) => mount.HalfWidth is { } half && mount.Forward is not null
        ? Text($"Forward is known to ± {In.Degrees.Of(half):F0}° only, so roll mixes into pitch.")
        : mount.NoForward;

    private static string Aside(Mount mount) =>
        Text($"Bumps turn the body about a line {In.Degrees.Of(mount.BumpsAside!.Value):F0}° from the car's left, so roll may be taken for pitch.");

    private TrustVerdict Events(Mount mount)
    {
        TrustVerdict Said(TrustLevel level, string reason) => new(TrustUse.Events, level, reason);
        return IsStill ? Said(TrustLevel.None, Still)
            : Rate < LeastRate ? Said(TrustLevel.None, Slow)
            : mount.IsHandled ? Said(TrustLevel.None, mount.NoForward)
            : !HasTurnRate ? Said(TrustLevel.Limited, "Heave of a bump is seen; without a turn rate there is no pitch.")
            : mount.Forward is null ? Said(TrustLevel.Limited, $"Heave of a bump is seen; pitch is not told from roll. {mount.NoForward}")
            : mount.BumpsAside is not null ? Said(TrustLevel.Limited, $"Heave and pitch of a bump are seen. {Aside(mount)}")
            : mount.HalfWidth > Mount.Doubtful ? Said(TrustLevel.Limited, $"Heave and pitch of a bump are seen. {Open(mount)}")
            : Rate < WheelRate ? Said(TrustLevel.Limited, Text($"Heave and pitch of a bump are seen up to {Top:F0} Hz; wheel hop is not."))
            : Said(TrustLevel.Good, Text($"Heave and pitch of a bump are seen up to {Top:F0} Hz."));
    }

    // Vibration is weighed as it was sampled, not on the grid; the standard ends where the rate that it asks for begins to be enough.
    private double ComfortTop => Math.Min(0.4 * Rate, ComfortRate);

    private TrustVerdict Comfort(Mount mount)
    {
        TrustVerdict Said(TrustLevel level, string reason) => new(TrustUse.Comfort, level, reason);
        var folded = "Vibration above half the sampling rate may have folded down and then counts at a wrong frequency.";
        return IsStill ? Said(TrustLevel.None, Still)
            : Rate < LeastComfortRate
            ? Said(TrustLevel.None, Text($"{Rate:F0} samples a second: a weighted acceleration would be no value of the standard."))
            : mount.IsHandled ? Said(TrustLevel.None, mount.NoForward)
            : IsFolded ? Said(TrustLevel.Limited, folded)
            : Rate < ComfortRate
                ? Said(TrustLevel.Limited, Text($"Not by the standard, which asks for vibration up to 80 Hz; here {ComfortTop:F0} Hz is the end."))
            : ComfortTop >= ComfortRate ? Said(TrustLevel.Good, Text($"Vibration of the floor under the phone is seen up to {ComfortRate:F0} Hz."))
            : Said(
                TrustLevel.Good,
                Text($"Vibration of the floor under the phone is seen up to {ComfortTop:F0} Hz; what lies above, up ")
                + "to the standard's 80 Hz, is missing.");
    }

    private TrustVerdict Car(Mount mount)
    {
        TrustVerdict Said(TrustLevel level, string reason) => new(TrustUse.Car, level, reason);
        return IsStill ? Said(TrustLevel.None, Still)
            : Rate < LeastRate ? Said(TrustLevel.None, Slow)
            : mount.IsHandled ? Said(TrustLevel.None, mount.NoForward)
            : !HasTurnRate ? Said(TrustLevel.None, "Without a turn rate front and rear are not told apart.")
            : mount.Forward is null ? Said(TrustLevel.None, $"Pitch is not told from roll. {mount.NoForward}")
            : mount.BumpsAside is not null ? Said(TrustLevel.Limited, Aside(mount))
            : mount.HalfWidth > Mount.Doubtful ? Said(TrustLevel.Limited, Open(mount))
            : Rate < WheelRate ? Said(TrustLevel.Limited, Text($"Heave and pitch reach up to {Top:F0} Hz; nothing is said of the wheels."))
            : Rate < 75.0 && Engine is not null
                ? Said(
                    TrustLevel.Limited,
                    Text($"The engine hums at {Engine.Frequency:F0} Hz, close to half the sampling rate; ask for 100 samples a second."))
            : Said(TrustLevel.Good, "Heave and pitch rate stand side by side, over the whole band of body and wheels.");
    }
}
