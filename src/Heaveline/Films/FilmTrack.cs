using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Films;

/// <summary>A film of a passing car once it has been followed: points in pixels, no picture any more.</summary>
public sealed record FilmTrack
{
    /// <summary>The fewest frames that say anything about a pass.</summary>
    public const int FewestFrames = 12;

    /// <summary>Width of the picture, px.</summary>
    public required int Width { get; init => field = (int)Checked.Within(value, 1, 100_000); }

    /// <summary>Height of the picture, px.</summary>
    public required int Height { get; init => field = (int)Checked.Within(value, 1, 100_000); }

    /// <summary>How long a row of the picture is read after the one above it, s; 0: all at once, or not known.</summary>
    public double RowTime { get; init => field = Checked.Within(value, -1e-3, 1e-3); }

    /// <summary>
    /// How far aslant the car was seen, rad, where that is taken off its points already, by a lens that is guessed; 0: nothing is taken off.
    /// </summary>
    public double Slant { get; init => field = Checked.Within(value, -1.2, 1.2); }

    /// <summary>Whether the car goes to the right in the picture.</summary>
    public required bool GoesRight { get; init; }

    /// <summary>
    /// The point of the marked frame about which the body's shift, turn and size are told, px: the middle of the points that are followed.
    /// </summary>
    public required PicturePoint BodyPivot { get; init; }

    /// <summary>The frames, their times rising.</summary>
    public required ImmutableArray<FilmFrame> Frames
    {
        get;
        init => field = value.Length < FewestFrames || !Rise(value)
            ? throw new RefusedValueException(
                "frames", $"{value.Length}", $"at least {FewestFrames}, each later than the one before", "Give a film that shows the whole pass.")
            : Step(value) is var step && step * MostRate < 1.0 ? throw new RefusedValueException(
                "frames a second", Numeral.Of(1.0 / step, 0), $"at most {Numeral.Of(MostRate, 0)}",
                "Give the times in seconds, as the film has them.")
            : value;
    }

    /// <summary>What was found while following, in words: a background too smooth to trust, a wheel lost for a while.</summary>
    public ImmutableArray<string> Remarks { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Which film it was followed in, from which marks; null where nothing says so.</summary>
    public FilmOrigin? Origin { get; init; }

    /// <summary>How many times slower the film is played than it was taken by what the camera wrote into it, as it stands there; null where it wrote
    /// nothing. Not every such number is slow motion: a phone that is short of light takes fewer frames than it writes.</summary>
    public double? PlayedSlower { get; init => field = value is { } v ? Checked.Within(v, 0.1, 100.0) : null; }

    /// <summary>The picture's middle, about which the camera's motion is told, px.</summary>
    public PicturePoint Middle => new((Width - 1) / 2.0, (Height - 1) / 2.0);

    // Frames a second that are played: more than any camera of a roadside takes.
    private const double MostRate = 5000.0;

    private static double Step(ImmutableArray<FilmFrame> frames)
    {
        double[] steps = [.. frames.Zip(frames.Skip(1), (a, b) => b.Time - a.Time).Order()];
        return steps[steps.Length / 2];
    }

    private static bool Rise(ImmutableArray<FilmFrame> frames) =>
        frames.All(f => double.IsFinite(f.Time)) && frames.Zip(frames.Skip(1)).All(p => p.Second.Time > p.First.Time);
}
