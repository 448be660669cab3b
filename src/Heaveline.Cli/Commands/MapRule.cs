using Heaveline.Insight;
using Heaveline.Models;

namespace Heaveline.Cli.Commands;

/// <summary>The rules that can be mapped, by their words on the command line, and what values are tried.</summary>
internal static class MapRule
{
    public static readonly string[] Words = ["ratio", "damping", "index", "wheelbase", "wheelbase-same-body", "shared-springs", "shared-damping"];

    /// <summary>The rule's axis; the reference is one of the values wherever it is not the car's own.</summary>
    public static RuleAxis Of(string word, RideModel model, int count)
    {
        // In sixths, so that the columns of a short table are plain numbers.
        double[] Even(double from, double to) => [.. Enumerable.Range(0, count).Select(i => Math.Round(from + ((to - from) * i / (count - 1)), 12))];
        double[] Lengths() => [.. Even(0.76, 1.24).Select(share => share * model.Car.Wheelbase.Si)];
        return word switch
        {
            "ratio" => RuleAxis.FrequencyRatio(Even(0.8, 1.4)),
            "damping" => RuleAxis.Damping(Even(0.05, 0.65)),
            "index" => RuleAxis.DynamicIndex(Even(0.6, 1.2)),
            "wheelbase" => RuleAxis.Wheelbase(Lengths(), inertiaGrows: true),
            "wheelbase-same-body" => RuleAxis.Wheelbase(Lengths(), inertiaGrows: false),
            "shared-springs" => RuleAxis.SharedSprings(Even(0.0, 0.9)),
            "shared-damping" => RuleAxis.SharedDamping(Even(0.0, 0.9)),
            _ => throw new Stopped($"heaveline: '{word}' is no rule; there are {string.Join(", ", Words)}.", ExitCode.WrongUsage),
        };
    }

    public static PassMeasure Measure(string word) => word switch
    {
        "late" => PassMeasure.LateAngle,
        "hit" => PassMeasure.HitAcceleration,
        _ => PassMeasure.SettlingAngle,
    };
}
