using Heaveline.Doubts;

namespace Heaveline.Answers;

/// <summary>How one number is shown: its row in a table, and the unit that it is turned into.</summary>
/// <param name="Key">Name for machines.</param>
/// <param name="Label">Name for people.</param>
/// <param name="Unit">Unit as shown.</param>
/// <param name="Format">.NET number format.</param>
/// <param name="Factor">Shown units per SI unit.</param>
public sealed record Shown(string Key, string Label, string Unit, string Format, double Factor)
{
    /// <summary>Degrees per radian.</summary>
    public const double Degrees = 180.0 / Math.PI;

    /// <summary>A number as shown; null where it does not exist.</summary>
    public double? Of(double si) => double.IsFinite(si) ? Factor * si : null;

    /// <summary>A result as shown.</summary>
    public DoubtResult Of(DoubtResult result) => result.In(Factor, Unit);
}
