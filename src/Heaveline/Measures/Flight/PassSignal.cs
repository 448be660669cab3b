using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>What a curve of a pass is of: a reading of its samples.</summary>
/// <param name="Reading">The reading.</param>
internal sealed record PassSignal(SampleReading Reading)
{
    /// <summary>Heave from trim, m.</summary>
    public static PassSignal Heave { get; } = Of(RideSignal.Heave);

    /// <summary>Pitch from trim, rad.</summary>
    public static PassSignal Pitch { get; } = Of(RideSignal.Pitch);

    /// <summary>Roll from trim, rad.</summary>
    public static PassSignal Roll { get; } = Of(RideSignal.Roll);

    /// <summary>Pitch rate, rad/s.</summary>
    public static PassSignal PitchRate { get; } = Of(RideSignal.PitchRate);

    /// <summary>Heave acceleration, m/s².</summary>
    public static PassSignal HeaveAcceleration { get; } = Of(RideSignal.HeaveAcceleration);

    /// <summary>Pitch acceleration, rad/s².</summary>
    public static PassSignal PitchAcceleration { get; } = Of(RideSignal.PitchAcceleration);

    /// <summary>From trim.</summary>
    public static PassSignal Of(RideSignal signal) => new(signal.FromTrim);

    /// <summary>With what it reads at trim.</summary>
    public static PassSignal WholeOf(RideSignal signal) => new(signal.Whole) { Standing = signal.Standing };

    /// <summary>With a share of what it reads at trim.</summary>
    public static PassSignal With(RideSignal signal, double share) => new(signal.FromTrim.From(share * signal.AtTrim))
    {
        Standing = signal.Standing is var (place, own) ? (place, share * own) : null,
    };

    /// <summary>What the reading begins with, as <see cref="RideSignal.Standing"/> says.</summary>
    public (int Place, double Share)? Standing { get; init; }

    /// <summary>What is taken off every value.</summary>
    public double Less { get; init; }

    /// <summary>Whether the mean height of the road under the four wheels is taken off, without contact averaging.</summary>
    public bool AboveRoad { get; init; }

    /// <summary>Whether another is made in the same way from the same channels, whatever the shares.</summary>
    public bool IsLike(PassSignal other) => AboveRoad == other.AboveRoad && Reading.IsLike(other.Reading);
}
