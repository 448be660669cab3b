using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>When a stop is first met before and after, in words.</summary>
internal static class CureStopWords
{
    // What is left to a stop that the car has just come off is told to a tenth of a millimetre.
    private const int Digits = 1;

    /// <summary>"0.62 g → 0.58 g", or how a car comes off the stop that it stood on.</summary>
    /// <param name="was">The car as described.</param>
    /// <param name="now">The car with the cure, under the same load.</param>
    /// <param name="k">Which of <see cref="CureStance.FirstStops"/>.</param>
    public static string Of(CureStance was, CureStance now, int k)
    {
        var (before, after) = (was.FirstStops[k].At, now.FirstStops[k].At);
        if (before > 0.0)
        {
            return $"{CureStance.Print(before)} → {CureStance.Print(after)}";
        }

        var free = now.FreeBy(was) is { } left ? $"comes free by {Numeral.Of(In.Millimetres.Of(left), Digits)} mm and " : "";
        return $"it stands on one as described; {free}meets {(double.IsFinite(after) ? $"it at {CureStance.Print(after)}" : "none below 1 g")}";
    }
}
