using System.Collections.Immutable;

namespace Heaveline.Films;

/// <summary>A pass as a film shows it: heights in metres above the level road, in even steps of the car's own time.</summary>
public sealed record SeenPass
{
    /// <summary>Time of the first sample, s since the film's first frame.</summary>
    public required double Start { get; init; }

    /// <summary>Time from one sample to the next, s.</summary>
    public required double Step { get; init; }

    /// <summary>Height of the front hub above where it runs on level road, m, up positive, shape (n).</summary>
    public required ImmutableArray<double> FrontWheel { get; init; }

    /// <summary>The same of the rear hub.</summary>
    public required ImmutableArray<double> RearWheel { get; init; }

    /// <summary>Height of the body over the front hub above where it rides on level road, m, shape (n).</summary>
    public required ImmutableArray<double> FrontBody { get; init; }

    /// <summary>The same over the rear hub.</summary>
    public required ImmutableArray<double> RearBody { get; init; }

    /// <summary>Wheelbase, m.</summary>
    public required double Wheelbase { get; init; }

    /// <summary>Speed over the bump, m/s.</summary>
    public required double Speed { get; init; }

    /// <summary>Half-width of its 90 % interval, m/s.</summary>
    public required double SpeedDoubt { get; init; }

    /// <summary>Speed by wheelbase and delay of the axles over the bump alone, m/s: it needs no scale.</summary>
    public required double SpeedByDelay { get; init; }

    /// <summary>When the front wheels first touch the bump, s.</summary>
    public required double FirstTouch { get; init; }

    /// <summary>When the rear wheels have left it, s.</summary>
    public required double RearLeaves { get; init; }

    /// <summary>Half-width of the 90 % interval of each, s.</summary>
    public required double InstantDoubt { get; init; }

    /// <summary>Greatest height that a hub is lifted to, signed, mean of both axles, m: below zero in a dip.</summary>
    public required double Lift { get; init; }

    /// <summary>Scale over the bump, px/m.</summary>
    public required double PixelsPerMetre { get; init; }

    /// <summary>Half-width of the 90 % interval of the wheelbase as a share of it: one error in all films of a car, and none in an angle.</summary>
    public required double WheelbaseDoubt { get; init; }

    /// <summary>The same of every length by the marks of the hubs: this film's own, and none in an angle.</summary>
    public required double MarksDoubt { get; init; }

    /// <summary>The same of what is upright beside what lies along the road, by the view aslant: heights and angles have it alike.</summary>
    public required double SlantDoubt { get; init; }

    /// <summary>Half-width of the 90 % interval of every height as a share of it: marks, wheelbase, view.</summary>
    public double ScaleDoubt =>
        Math.Sqrt((WheelbaseDoubt * WheelbaseDoubt) + (MarksDoubt * MarksDoubt) + (SlantDoubt * SlantDoubt));

    /// <summary>By how much heights are taken larger beside lengths along the road because the car is seen aslant: 0.015 is 1.5 %.</summary>
    public required double Slant { get; init; }

    /// <summary>Standard deviation of a hub's height from frame to frame, m.</summary>
    public required double WheelNoise { get; init; }

    /// <summary>Standard deviation of a body's height from frame to frame, m.</summary>
    public required double BodyNoise { get; init; }

    /// <summary>Standard deviation of the pitch from frame to frame, rad.</summary>
    public required double PitchNoise { get; init; }

    /// <summary>Half-width of the 90 % interval of the level of each body's height, m.</summary>
    public required double LevelDoubt { get; init; }

    /// <summary>How many times slower the film is played than it was taken.</summary>
    public required double Slowness { get; init; }

    /// <summary>
    /// Whether somebody, or the film itself, says how fast it went or how many times slower it is played; false: the film's time is taken for the
    /// car's own, and slow motion would not be noticed.
    /// </summary>
    public bool IsTimeSaid { get; init; } = true;

    /// <summary>Frames a second as they were taken.</summary>
    public required double FrameRate { get; init; }

    /// <summary>Whether the camera's own motion was taken off.</summary>
    public required bool CameraFollowed { get; init; }

    /// <summary>Middle number of the body's points that were followed.</summary>
    public required int Points { get; init; }

    /// <summary>What ought to be known of the film before its numbers are used, in sentences.</summary>
    public ImmutableArray<string> Remarks { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Number of samples.</summary>
    public int Count => FrontBody.Length;

    /// <summary>Time of the last sample, s.</summary>
    public double End => Start + ((Count - 1) * Step);

    /// <summary>How long the car is seen after the rear wheels have left the bump, s.</summary>
    public double Reach => Math.Max(0.0, End - RearLeaves);

    /// <summary>Pitch, nose down positive, rad, shape (n).</summary>
    public ImmutableArray<double> Pitch => [.. RearBody.Zip(FrontBody, (rear, front) => Math.Atan((rear - front) / Wheelbase))];

    /// <summary>Height of the body midway between the axles, m, shape (n).</summary>
    public ImmutableArray<double> Heave => [.. RearBody.Zip(FrontBody, (rear, front) => 0.5 * (rear + front))];

    /// <summary>The instant of a sample, s.</summary>
    public double Time(int i) => Start + (i * Step);

    /// <summary>The pass with other levels and slow slopes of the body taken off.</summary>
    /// <param name="levels">Front and rear level, m, front and rear slope from the first touch on, m/s.</param>
    internal SeenPass Less(ImmutableArray<double> levels) => this with
    {
        FrontBody = [.. FrontBody.Select((h, i) => h - levels[0] - (levels[2] * (Time(i) - FirstTouch)))],
        RearBody = [.. RearBody.Select((h, i) => h - levels[1] - (levels[3] * (Time(i) - FirstTouch)))],
    };

    /// <summary>The sample nearest to an instant.</summary>
    internal int Near(double time) => Math.Clamp((int)Math.Round((time - Start) / Step), 0, Count - 1);

    /// <summary>Reads a pass off a track.</summary>
    /// <param name="track">The track.</param>
    /// <param name="given">What is known besides.</param>
    /// <exception cref="Quantities.RefusedValueException">The car is not seen long enough, or crosses no bump.</exception>
    public static SeenPass Of(FilmTrack track, FilmGiven given)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(given);
        return new SeenPassMaking(track, given).Made();
    }
}
