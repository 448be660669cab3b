using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Drives;

/// <summary>
/// A drive along the axes of the car (ISO 8855), on one even grid of instants. Where it is not covered its signals are 0 and mean nothing.
/// </summary>
public sealed record Drive
{
    /// <summary>The least that a drive must hold without a gap, s.</summary>
    public const double Shortest = 10.0;

    /// <summary>The log it comes from.</summary>
    public required Log Log { get; init; }

    /// <summary>How the accelerometer kept time.</summary>
    public required Clock Clock { get; init; }

    /// <summary>How the gyro kept time; null without one.</summary>
    public Clock? TurnClock { get; init; }

    /// <summary>How the phone lay.</summary>
    public required Mount Mount { get; init; }

    /// <summary>Samples a second of the grid, Hz.</summary>
    public required double Rate { get; init; }

    /// <summary>The first instant of the grid, s since the log's start.</summary>
    public required double Start { get; init; }

    /// <summary>Parts of the grid in which every sensor has samples and the phone lay still in its place: first and last instant.</summary>
    public required ImmutableArray<(int First, int Last)> Covered { get; init; }

    /// <summary>Vertical acceleration, up, gravity taken off, m/s², shape (n).</summary>
    public required ImmutableArray<double> Vertical { get; init; }

    /// <summary>Acceleration forward, m/s², shape (n); empty where forward is not known.</summary>
    public ImmutableArray<double> Forward { get; init; } = [];

    /// <summary>Acceleration to the left, m/s², shape (n); empty where forward is not known.</summary>
    public ImmutableArray<double> Left { get; init; } = [];

    /// <summary>Pitch rate, nose down positive, rad/s, shape (n); empty without a gyro or where forward is not known.</summary>
    public ImmutableArray<double> PitchRate { get; init; } = [];

    /// <summary>Roll rate, right side down positive, rad/s, shape (n); empty as the pitch rate.</summary>
    public ImmutableArray<double> RollRate { get; init; } = [];

    /// <summary>Yaw rate, to the left positive, rad/s, shape (n); empty without a gyro.</summary>
    public ImmutableArray<double> YawRate { get; init; } = [];

    /// <summary>Speed, m/s, shape (n), its lag taken out; empty without one.</summary>
    public ImmutableArray<double> Speed { get; init; } = [];

    /// <summary>By how much the log's speed was off, where it has been scaled; null: it stands as it was logged.</summary>
    public SpeedScale? SpeedScale { get; init; }

    /// <summary>Where it went; null without positions.</summary>
    public DrivePath? Path { get; init; }

    /// <summary>What was decided on the way from log to drive.</summary>
    public ImmutableArray<StoryLine> Story { get; init; } = [];

    /// <summary>The accelerometer as it was sampled: faults are looked for there.</summary>
    internal TimedTrack Force { get => field ?? throw new InvalidOperationException("Make a drive by Drive.Of."); init; }

    /// <summary>How long the covered parts are together, s.</summary>
    public double Length => Covered.Sum(c => (c.Last - c.First) / Rate);

    /// <summary>The instant of a sample of the grid, s since the log's start.</summary>
    public double Time(int i) => Start + (i / Rate);

    /// <summary>The same at the speed that the delay between the axles tells.</summary>
    /// <param name="scale">By how much the log's speed is off.</param>
    internal Drive AtTrueSpeed(SpeedScale scale)
    {
        const string about = "speed-scale";
        var whole = scale with { Log = scale.Log + (SpeedScale?.Log ?? 0.0) };
        return this with
        {
            Speed = [.. Speed.Select(v => v / scale.Factor)],
            SpeedScale = whole,
            Story = [.. Story.Where(s => s.About != about), new StoryLine(about, whole.Said, IsDoubtful: true)],
        };
    }

    /// <summary>Puts a log on the car's axes.</summary>
    /// <param name="log">The log.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">Gravity is missing, or nothing is long enough.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Drive Of(Log log, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(log);
        return new DriveMaking(log, stop).Made();
    }
}
