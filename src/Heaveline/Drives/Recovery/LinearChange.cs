using Heaveline.Drives.Identification;
using Heaveline.Quantities;

namespace Heaveline.Drives.Recovery;

/// <summary>A change of the car that a drive tells, without a car file: factors of its springs and dampers, 1 where nothing is changed.</summary>
public sealed record LinearChange
{
    /// <summary>The least factor.</summary>
    public const double Least = 0.5;

    /// <summary>The greatest.</summary>
    public const double Most = 2.0;

    /// <summary>Rate of the front springs: the damping ratio falls by its root where the dampers are not changed too.</summary>
    public double FrontSprings { get; init => field = Within(value); } = 1.0;

    /// <summary>Rate of the rear springs.</summary>
    public double RearSprings { get; init => field = Within(value); } = 1.0;

    /// <summary>Force of the front dampers.</summary>
    public double FrontDampers { get; init => field = Within(value); } = 1.0;

    /// <summary>Force of the rear dampers.</summary>
    public double RearDampers { get; init => field = Within(value); } = 1.0;

    /// <summary>Parameters of a car with the change.</summary>
    /// <param name="parameters">Those of the car before, <see cref="CarParameter"/>.</param>
    internal double[] Of(ReadOnlySpan<double> parameters)
    {
        var changed = parameters.ToArray();
        changed[CarParameter.FrontFrequency] += 0.5 * Math.Log(FrontSprings);
        changed[CarParameter.RearFrequency] += 0.5 * Math.Log(RearSprings);
        changed[CarParameter.FrontDamping] += Math.Log(FrontDampers) - (0.5 * Math.Log(FrontSprings));
        changed[CarParameter.RearDamping] += Math.Log(RearDampers) - (0.5 * Math.Log(RearSprings));
        return changed;
    }

    private static double Within(double factor) => factor is >= Least and <= Most
        ? factor
        : throw new RefusedValueException(
            "factor of a change", Numeral.Of(factor, 2), FormattableString.Invariant($"{Least:F1} to {Most:F1}"), "Change less at a time.");
}
