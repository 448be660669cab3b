using Heaveline.Drives.Comparison;
using Heaveline.Numerics;

namespace Heaveline.Studies;

/// <summary>What the speed records of two drives still leave open: the settling opens too late in one of them.</summary>
/// <param name="Apart">Logarithm of the record after over the record before, by the delays between the axles; 0 where nothing tells it.</param>
/// <param name="Deviation">Standard deviation of that.</param>
/// <param name="Wheelbase">Wheelbase that was taken, m.</param>
internal sealed record SpeedDoubt(double Apart, double Deviation, double Wheelbase)
{
    // Records farther apart make a verdict of their own.
    private const double Most = 0.03;

    /// <summary>Of two drives whose records were set right where that could be done.</summary>
    public static SpeedDoubt Of(ProvedDrive before, ProvedDrive after)
    {
        var wheelbase = before.Events.Settings.WheelbaseTaken;
        return before.Left is { } first && after.Left is { } second
            ? new SpeedDoubt(
                second.Log - first.Log, Math.Sqrt((first.Deviation * first.Deviation) + (second.Deviation * second.Deviation)), wheelbase)
            : new SpeedDoubt(0.0, 0.0, wheelbase);
    }

    /// <summary>The comparison, its intervals with this doubt in them; no verdict where the records lie too far apart.</summary>
    /// <param name="matches">The bumps.</param>
    /// <param name="number">Which number.</param>
    /// <param name="settings">How they are compared.</param>
    public BeforeAfter Of(SiteMatches matches, ComparedNumber number, ComparisonSettings settings)
    {
        double[] each =
        [
            .. from match in matches.All
               from e in match.Before.Events.Concat(match.After.Events)
               where e.IsKept && e.Speed > 0.0
               let of = e.Numbers.For(ComparedMeasure.Of(number).Key)
               where of is { Value: > 0.0 }
               select of.PerSecond / of.Value * (e.Length + Wheelbase) / e.Speed,
        ];
        var own = each.Length == 0 ? 0.0 : Math.Abs(each.Average()) * Math.Sqrt((Apart * Apart) + (Deviation * Deviation));
        var result = BeforeAfter.Of(matches.Passes(number), settings, own);
        return Math.Abs(Apart) > Math.Max(Most, Gaussian.Ninety * Deviation) ? result.Withheld(Apart) : result;
    }
}
