using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The dipped beam against ranges that are printed somewhere.</summary>
public static class LampWords
{
    /// <summary>A caution, then a line a range; nothing without a lamp.</summary>
    public static IReadOnlyList<Sentence> Of(SideEffects effects)
    {
        ArgumentNullException.ThrowIfNull(effects);
        return effects.Headlamp is { } lamp
            ? [new("headlamp", Opening(lamp)), .. HeadlampRange.For(lamp.ReferenceHeight).Select((range, k) => Against(range, k, lamp.Drop))]
            : [];
    }

    private static string Opening(HeadlampAim lamp) =>
        $"The dipped beam's drop of {Numeral.Of(In.Percent.Of(lamp.Drop), "F2")} % against ranges as printed. {HeadlampRange.Caution}";

    private static Sentence Against(HeadlampRange range, int k, double drop) => new($"headlamp-range-{k + 1}", FormattableString.Invariant(
        $"  {(range.Holds(drop) ? "inside" : "outside")} {In.Percent.Of(range.LeastDrop):G3} to {In.Percent.Of(range.GreatestDrop):G3} %: ")
        + $"{range.Source}, {range.Purpose} ({range.Known})");
}
