using Heaveline.Cars;

namespace Heaveline.Measures;

/// <summary>A number about a standing car, to be followed through its doubts.</summary>
/// <param name="Name">What it is, in words ("front ride frequency").</param>
/// <param name="Symbol">Unit, empty for a plain number.</param>
/// <param name="Of">The number; not finite where there is none.</param>
public sealed record StaticOutput(string Name, string Symbol, Func<CarAtRest, double> Of)
{
    /// <summary>Front ride frequency with the tyres, Hz.</summary>
    public static StaticOutput FrontFrequency { get; } = new("front ride frequency", "Hz", c => c.Frequency(AxleEnd.Front));

    /// <summary>Rear ride frequency with the tyres, Hz.</summary>
    public static StaticOutput RearFrequency { get; } = new("rear ride frequency", "Hz", c => c.Frequency(AxleEnd.Rear));

    /// <summary>Rear over front ride frequency (–).</summary>
    public static StaticOutput FrequencyRatio { get; } = new("rear/front frequency ratio", "", c => c.Frequency(AxleEnd.Rear) / c.Frequency(AxleEnd.Front));

    /// <summary>Front damping ratio, mean of bump and rebound (–).</summary>
    public static StaticOutput FrontDamping { get; } = new("front damping ratio", "", c => c.DampingRatio(AxleEnd.Front));

    /// <summary>Rear damping ratio, mean of bump and rebound (–).</summary>
    public static StaticOutput RearDamping { get; } = new("rear damping ratio", "", c => c.DampingRatio(AxleEnd.Rear));

    /// <summary>Dynamic index k²/(b·c) (–).</summary>
    public static StaticOutput DynamicIndex { get; } = new("dynamic index", "", c => c.Modes.DynamicIndex);

    /// <summary>Frequency of the mode that mostly heaves, Hz.</summary>
    public static StaticOutput BounceFrequency { get; } = new("bounce frequency", "Hz", c => c.Modes.Bounce.Frequency);

    /// <summary>Frequency of the mode that mostly pitches, Hz.</summary>
    public static StaticOutput PitchFrequency { get; } = new("pitch frequency", "Hz", c => c.Modes.Pitch.Frequency);

    /// <summary>Load of both front wheels on the ground, N.</summary>
    public static StaticOutput FrontLoad { get; } = new("front axle load", "N", c => c.Model.Trim.WheelLoad[0] + c.Model.Trim.WheelLoad[1]);

    /// <summary>Load of both rear wheels on the ground, N.</summary>
    public static StaticOutput RearLoad { get; } = new("rear axle load", "N", c => c.Model.Trim.WheelLoad[2] + c.Model.Trim.WheelLoad[3]);

    /// <summary>Pitch at trim from the reference state, rad, nose-down positive.</summary>
    public static StaticOutput TrimPitch { get; } = new("pitch at trim", "rad", c => c.Model.Trim.Pitch);

    /// <summary>All of the above.</summary>
    public static IReadOnlyList<StaticOutput> All { get; } =
        [FrontFrequency, RearFrequency, FrequencyRatio, FrontDamping, RearDamping, DynamicIndex, BounceFrequency, PitchFrequency, FrontLoad, RearLoad, TrimPitch];
}
