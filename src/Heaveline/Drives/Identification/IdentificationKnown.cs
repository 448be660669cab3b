using System.Collections.Immutable;
using Heaveline.Roads;

namespace Heaveline.Drives.Identification;

/// <summary>
/// What is known of car and phone before the drive is read. Its doubts are wide on purpose: the drive must be able to contradict it.
/// </summary>
public sealed record IdentificationKnown
{
    /// <summary>Distance between the axles, m: with the delay between them it is the ruler of the drive.</summary>
    public required double Wheelbase { get; init => field = CarValue.Above(value, 0.0, "the wheelbase"); }

    /// <summary>Share of the sprung mass that stands on the front axle.</summary>
    public double FrontShare { get; init => field = CarValue.Above(value, 0.0, "the front share"); } = 0.54;

    /// <summary>Standard deviation of that share: 0.01 from a weighing.</summary>
    public double FrontShareSpread { get; init => field = CarValue.Above(value, 0.0, "the doubt of the front share"); } = 0.04;

    /// <summary>How far behind the front axle the phone lies, m.</summary>
    public double PhoneBehindFrontAxle { get; init; } = 1.3;

    /// <summary>Standard deviation of that distance, m.</summary>
    public double PhoneSpread { get; init => field = CarValue.Above(value, 0.0, "the doubt of the phone's place"); } = 0.4;

    /// <summary>
    /// Whether the car of a car file can be sent over a road at a speed, m/s: its wheels on the road and off their stops; null without such a file.
    /// </summary>
    internal Func<Road, double, bool>? Bears { get; init; }

    /// <summary>How long the hump of a site is, m, by the site's name; a site that is not named is 3.7 m.</summary>
    public ImmutableDictionary<string, double> HumpLengths { get; init => field = value ?? ImmutableDictionary<string, double>.Empty; } =
        ImmutableDictionary<string, double>.Empty;

    /// <summary>The highest frequency that is read, Hz; less where the rate of a window asks for it.</summary>
    public double Band { get; init => field = CarValue.Above(value, 1.0, "the band"); } = 12.0;

    /// <summary>Standard deviation of the logarithm of the speed between front and rear axle over the speed of the pass.</summary>
    public double SpeedChangeSpread { get; init => field = CarValue.Above(value, 0.0, "the doubt of the speed between the axles"); } = 0.015;

    /// <summary>Front ride frequency on rigid tyres, Hz.</summary>
    public KnownNumber FrontFrequency { get; init; } = new(1.3, 0.35);

    /// <summary>Rear ride frequency on rigid tyres, Hz.</summary>
    public KnownNumber RearFrequency { get; init; } = new(1.4, 0.35);

    /// <summary>Front damping ratio.</summary>
    public KnownNumber FrontDamping { get; init; } = new(0.28, 0.5);

    /// <summary>Rear damping ratio.</summary>
    public KnownNumber RearDamping { get; init; } = new(0.28, 0.5);

    /// <summary>Dynamic index of the sprung mass, k²/(ab): 0.98 with a tenth about it in 204 weighed vehicles.</summary>
    public KnownNumber PitchIndex { get; init; } = new(0.98, 0.10);

    /// <summary>Front unsprung mass over the sprung mass on the front axle.</summary>
    public KnownNumber FrontUnsprung { get; init; } = new(0.13, 0.2);

    /// <summary>Rear unsprung mass over the sprung mass on the rear axle.</summary>
    public KnownNumber RearUnsprung { get; init; } = new(0.13, 0.2);

    /// <summary>Frequency of the front unsprung mass on its tyre, Hz.</summary>
    public KnownNumber FrontHop { get; init; } = new(10.8, 0.12);

    /// <summary>Frequency of the rear unsprung mass on its tyre, Hz.</summary>
    public KnownNumber RearHop { get; init; } = new(10.8, 0.12);
}
