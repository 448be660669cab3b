using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Web.Pages.Rules;

/// <summary>A value of what a rule turns, as it was typed.</summary>
internal static class TriedValue
{
    /// <summary>The value in the axis' unit; NaN, with a refusal in the reader's units, when it does not lie on the map.</summary>
    /// <param name="typed">What was typed: a bare number is in the axis' unit, one with a unit of its own is turned into it.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="units">The reader's units.</param>
    public static (double Value, string? Refusal) Of(string typed, RuleAxis axis, ReaderUnits units)
    {
        var (least, most) = (axis.Values[0], axis.Values[^1]);
        if (QuantityText.InBox(typed, axis.Symbol).Value is { } value && value >= least && value <= most)
        {
            return (value, null);
        }

        string Limit(double limit) => units.Text(FormattableString.Invariant($"{limit:0.###} {axis.Symbol}").TrimEnd());
        return (double.NaN, $"“{typed}” does not lie between {Limit(least)} and {Limit(most)}.");
    }
}
