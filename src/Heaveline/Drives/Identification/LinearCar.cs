namespace Heaveline.Drives.Identification;

/// <summary>A linear half car for each kilogram of its sprung mass: what a drive's motion is explained by.</summary>
public sealed record LinearCar
{
    /// <summary>Distance between the axles, m.</summary>
    public required double Wheelbase { get; init; }

    /// <summary>Front ride frequency on rigid tyres, Hz.</summary>
    public required double FrontFrequency { get; init; }

    /// <summary>Rear ride frequency on rigid tyres, Hz.</summary>
    public required double RearFrequency { get; init; }

    /// <summary>Front damping ratio c/(2√(km)) with rate and sprung mass of the axle.</summary>
    public required double FrontDamping { get; init; }

    /// <summary>Rear damping ratio.</summary>
    public required double RearDamping { get; init; }

    /// <summary>Dynamic index k²/(ab).</summary>
    public double PitchIndex { get; init; } = 0.98;

    /// <summary>Share of the sprung mass on the front axle.</summary>
    public double FrontShare { get; init; } = 0.54;

    /// <summary>How far behind the front axle the phone lies, m.</summary>
    public double PhoneBehindFrontAxle { get; init; } = 1.3;

    /// <summary>Front unsprung mass over the sprung mass on the front axle.</summary>
    public double FrontUnsprung { get; init; } = 0.13;

    /// <summary>Rear unsprung mass over the sprung mass on the rear axle.</summary>
    public double RearUnsprung { get; init; } = 0.13;

    /// <summary>Frequency of the front unsprung mass on its tyre, Hz.</summary>
    public double FrontHop { get; init; } = 10.8;

    /// <summary>Frequency of the rear unsprung mass on its tyre, Hz.</summary>
    public double RearHop { get; init; } = 10.8;
}
