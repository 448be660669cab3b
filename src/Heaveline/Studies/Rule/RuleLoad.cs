using Heaveline.Doubts;
using Heaveline.Modes;
using Heaveline.Rules;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>Where a car stands on a rule's axis under one load, and for the frequency ratio what speeds that suits.</summary>
/// <param name="Name">The load state.</param>
/// <param name="Own">The car's value.</param>
/// <param name="Standing">How it stands against the best of the map under this load; null where the rule is another one.</param>
/// <param name="Late">
/// Speed that the closed form 1 + 0.6 L f/V gives for this value, m/s; null where the rule is another one or the value not above 1.
/// </param>
/// <param name="Ends">When the ends fall into step; null where the rule is another one.</param>
public sealed record RuleLoad(string Name, double Own, RuleStanding? Standing, double? Late, Coincidence? Ends)
{
    /// <summary>Where the car's value lies with 90 %, by the doubts of its file; null where that is not known.</summary>
    public DoubtInterval? Doubt { get; init; }

    /// <summary>Under the load of a map.</summary>
    /// <param name="map">The map.</param>
    public static RuleLoad Of(RuleMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        // The closed forms speak of the frequency ratio alone.
        if (map.Axis.Kind != RuleKind.FrequencyRatio)
        {
            return new RuleLoad(map.Model.Load.Name, map.Own, null, null, null);
        }

        var ends = Coincidence.Of(map.Model);
        double? late = map.Own > 1.0 ? RatioRule.LateCoefficient * ends.Wheelbase * RideTuning.Of(map.Model).MeanFrequency / (map.Own - 1.0) : null;
        return new RuleLoad(map.Model.Load.Name, map.Own, RuleStanding.Of(map), late, ends);
    }
}
