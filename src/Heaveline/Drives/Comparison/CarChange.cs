using System.Collections.Immutable;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;
using MathNet.Numerics.Distributions;

namespace Heaveline.Drives.Comparison;

/// <summary>
/// What changed in the car, by the two cars that move like the two drives. What both drives share (wheelbase, the phone's place, the gyro's gain)
/// stays out of the difference in truth and in the interval not: it is the wider for it. The modes of the body are not compared: which end leads
/// in the slower one may differ between the drives, and the numbers of the ends say the same.
/// </summary>
public sealed record CarChange
{
    private static readonly CarNumber[] Compared = [.. CarNumbers.Headlines, CarNumber.FrontHop, CarNumber.RearHop];

    /// <summary>The numbers of the ends, and pitch's, that both drives say.</summary>
    public required ImmutableArray<NumberChange> Numbers { get; init; }

    /// <summary>Compares two cars.</summary>
    /// <param name="before">The car of the drive before.</param>
    /// <param name="after">The car of the drive after.</param>
    /// <param name="settings">How; null: as usual.</param>
    public static CarChange Of(CarFromDrive before, CarFromDrive after, ComparisonSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        settings ??= new ComparisonSettings();
        if (!before.IsBelieved || !after.IsBelieved)
        {
            return new CarChange { Numbers = [] };
        }

        var effects = (
            from one in before.Estimates
            let other = after.Of(one.Number)
            where Compared.Contains(one.Number) && one.IsSaid && other is { IsSaid: true } && one.Low > 0.0 && other.Low > 0.0
            select (One: one, Other: other, Effect: Effect(one, before, other, after, settings.Confidence))).ToList();
        return new CarChange
        {
            Numbers =
            [
                .. effects.Select(e => new NumberChange(e.One.Number, e.One.Value, e.Other.Value, e.Effect)
                {
                    IsTold = e.Effect.Probability * effects.Count < 1.0 - settings.Confidence,
                }),
            ],
        };
    }

    // Each interval is Student's with its windows less one; of the difference the smaller count is taken, whose t is the larger.
    private static EffectInterval Effect(CarEstimate one, CarFromDrive before, CarEstimate other, CarFromDrive after, double share)
    {
        static double Error(CarEstimate e, int freedom) => 0.5 * Math.Log(e.High / e.Low) / LeastSquares.Student(freedom, 0.9);
        var (first, second) = (Math.Max(before.Windows.Length - 1, 1), Math.Max(after.Windows.Length - 1, 1));
        var error = Math.Sqrt(Math.Pow(Error(one, first), 2.0) + Math.Pow(Error(other, second), 2.0));
        var freedom = Math.Min(first, second);
        var log = Math.Log(other.Value / one.Value);
        return new EffectInterval
        {
            Log = log,
            StandardError = error,
            Freedom = freedom,
            HalfWidth = LeastSquares.Student(freedom, share) * error,
            Probability = error > 0.0 ? 2.0 * StudentT.CDF(0.0, 1.0, freedom, -Math.Abs(log) / error) : log == 0.0 ? 1.0 : 0.0,
        };
    }
}
