using System.Collections.Immutable;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>A measure by which a rule can be judged.</summary>
/// <param name="Word">Its word at a command line and in an address.</param>
/// <param name="Name">What it is, for people who choose.</param>
/// <param name="Measure">The measure.</param>
/// <param name="Unit">Unit in which it is written.</param>
/// <param name="Factor">Those units per SI unit.</param>
public sealed record RuleMeasure(string Word, string Name, PassMeasure Measure, string Unit, double Factor)
{
    private const double Degrees = 180.0 / Math.PI;

    /// <summary>All of them; the first is the usual one.</summary>
    public static ImmutableArray<RuleMeasure> All { get; } =
    [
        new("settling", "RMS pitch of the first second", PassMeasure.SettlingAngle, "deg", Degrees),
        new("late", "pitch later than 0.8 s", PassMeasure.LateAngle, "deg·s^0.5", Degrees),
        new("hit", "peak pitch acceleration", PassMeasure.HitAcceleration, "rad/s²", 1.0),
        new("hit-angle", "peak pitch angle", PassMeasure.HitAngle, "deg", Degrees),
    ];

    /// <summary>The words of all measures.</summary>
    public static ImmutableArray<string> Words { get; } = [.. All.Select(m => m.Word)];
}
