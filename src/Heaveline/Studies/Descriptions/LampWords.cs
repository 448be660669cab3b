using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The dipped beam against ranges that are printed somewhere.</summary>
public static class LampWords
{
    /// <summary>A caution, then a line a range; nothing without a lamp.</summary>
    public static IReadOnlyList<string> Of(SideEffects effects)
    {
        ArgumentNullException.ThrowIfNull(effects);
        return effects.Headlamp is { } lamp
            ? [$"The dipped beam's drop of {Numeral.Of(100.0 * lamp.Drop, "F2")} % against ranges as printed. {HeadlampRange.Caution}", .. HeadlampRange.For(lamp.ReferenceHeight).Select(r => Sentence(r, lamp.Drop))]
            : [];
    }

    private static string Sentence(HeadlampRange range, double drop) => FormattableString.Invariant(
        $"  {(range.Holds(drop) ? "inside" : "outside")} {100.0 * range.LeastDrop:G3} to {100.0 * range.GreatestDrop:G3} %: {range.Source}, {range.Purpose} ({range.Known})");
}
