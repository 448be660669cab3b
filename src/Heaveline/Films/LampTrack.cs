using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Films;

/// <summary>The brightness of a headlamp in a film of an oncoming car.</summary>
public sealed record LampTrack
{
    /// <summary>Most frames that are read: a minute at 60 a second, of which a settling needs seconds.</summary>
    public const int MostFrames = 4000;

    /// <summary>The frames' own presentation times, s, rising.</summary>
    public required ImmutableArray<double> Times
    {
        get;
        init => field = IsEnough(value) && value.All(double.IsFinite) && value.Zip(value.Skip(1)).All(p => p.Second > p.First)
            ? value
            : throw new RefusedValueException("frames of the lamp", $"{value.Length}", Limit, "Film the seconds after the bump, or cut to them.");
    }

    /// <summary>Brightness of the lamp and its halo in each frame, above the background, any unit, 0 where it is not seen; shape (n).</summary>
    public required ImmutableArray<double> Brightness
    {
        get;
        init => field = !IsEnough(value) ? throw new RefusedValueException(
                "frames of the lamp", $"{value.Length}", Limit, "Film the seconds after the bump, or cut to them.")
            : !value.All(b => double.IsFinite(b) && b >= 0.0) ? throw new RefusedValueException(
                "brightness", "a negative or infinite number", "0 or above", "Give the brightness of each frame.")
            : !value.Any(b => b > 0.0) ? throw new RefusedValueException(
                "brightness", "0 in every frame", "above 0 in one frame at least", "Follow the lamp where it shines.")
            : value;
    }

    /// <summary>Share of the frames in which the lamp saturates the picture: its swing is cut off there.</summary>
    public double Saturated { get; init => field = Checked.Within(value, 0.0, 1.0); }

    private static string Limit => $"{FilmTrack.FewestFrames} to {MostFrames}, each later than the one before";

    private static bool IsEnough(ImmutableArray<double> of) => of.Length is >= FilmTrack.FewestFrames and <= MostFrames;
}
