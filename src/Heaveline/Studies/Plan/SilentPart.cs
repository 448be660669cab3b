using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A part of which a car file states no doubt, with what is taken in its place.</summary>
/// <param name="Name">The part ("front springs").</param>
/// <param name="Spread">What is taken: one standard deviation over the value (–).</param>
public sealed record SilentPart(string Name, double Spread)
{
    /// <summary>A sentence.</summary>
    public string Says => $"The car file states no doubt of its {Name}: taken is "
        + $"± {Printed(Spread)} (one standard deviation; common practice, no source).";

    /// <summary>Several in a clause ("its front springs and rear springs as known to ± 5 %"); empty for none.</summary>
    /// <param name="parts">The parts.</param>
    internal static string Words(ImmutableArray<SilentPart> parts) => parts.IsEmpty ? "" : SpeedRanges.And(
    [
        .. parts.GroupBy(part => Printed(part.Spread))
            .Select(alike => $"its {SpeedRanges.And([.. alike.Select(part => part.Name)])} as known to ± {alike.Key}"),
    ]);

    private static string Printed(double spread) => $"{Numeral.Of(In.Percent.Of(spread), 0)} %";
}
