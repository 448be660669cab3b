using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Rules;

/// <summary>
/// The trade's rule of loads (common practice, no source): with somebody aboard and the least load the springs of the rear are pressed to 70 % of
/// those in front, under the greatest load to the same, by effective static deflection; the frequency ratio on rigid tyres, the root of front over
/// rear deflection, then runs from √(1/0.70) = 1.195 down to 1.
/// </summary>
public sealed record LoadRule
{
    /// <summary>Rear over front effective static deflection that the rule asks for under the least load (–).</summary>
    public const double LightShare = 0.70;

    /// <summary>Rear over front effective static deflection that it asks for under the greatest load (–).</summary>
    public const double HeavyShare = 1.0;

    /// <summary>The least load with somebody aboard.</summary>
    public required LoadState Lightest { get; init; }

    /// <summary>Rear over front effective static deflection under it (–).</summary>
    public required double Light { get; init; }

    /// <summary>The greatest load; the same as <see cref="Lightest"/> where the car has no other.</summary>
    public required LoadState Heaviest { get; init; }

    /// <summary>Rear over front effective static deflection under it (–).</summary>
    public required double Heavy { get; init; }

    /// <summary>Whether there are two loads to tell apart.</summary>
    public bool HasTwo => Lightest != Heaviest;

    /// <summary>Where a car stands against the rule; null for a two-wheeler, and for a car that nobody is ever said to be aboard of.</summary>
    /// <param name="rests">The car at rest under its loads.</param>
    public static LoadRule? Of(IReadOnlyList<CarAtRest> rests)
    {
        ArgumentNullException.ThrowIfNull(rests);
        CarAtRest[] loaded = [.. rests.Where(r => r.Model.Load.Loads.Count > 0 && r.Model.Rolls)];
        if (loaded.Length == 0)
        {
            return null;
        }

        // Two loads that weigh alike, one farther back, are two all the same: the first and the last of them.
        var (lightest, heaviest) = (loaded.MinBy(r => r.Model.Body.Mass)!, loaded.Reverse().MaxBy(r => r.Model.Body.Mass)!);
        return new LoadRule
        {
            Lightest = lightest.Model.Load, Light = Share(lightest), Heaviest = heaviest.Model.Load, Heavy = Share(heaviest),
        };
    }

    /// <summary>Frequency ratio on rigid tyres at a share of deflections (–).</summary>
    /// <param name="share">Rear over front effective static deflection, above 0.</param>
    public static double Ratio(double share) => Math.Sqrt(1.0 / share);

    /// <summary>
    /// Whether a share, in whole per cent as it is printed, is the rule's within 3 % (0), or the rear is softer (1) or stiffer (−1) than it asks.
    /// </summary>
    /// <param name="share">Rear over front effective static deflection (–).</param>
    /// <param name="asked">What the rule asks for (–).</param>
    public static int Verdict(double share, double asked)
    {
        var apart = Math.Round(In.Percent.Of(share)) - Math.Round(In.Percent.Of(asked));
        return Math.Abs(apart) <= 3.0 ? 0 : Math.Sign(apart);
    }

    private static double Share(CarAtRest rest) => rest.Axle(AxleEnd.Rear).Rates.Deflection / rest.Axle(AxleEnd.Front).Rates.Deflection;
}
