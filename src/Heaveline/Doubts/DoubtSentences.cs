using Heaveline.Measures;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Doubts;

/// <summary>What doubts mean, in sentences.</summary>
public static class DoubtSentences
{
    /// <summary>The number with its middle 90 %.</summary>
    public static string Of(DoubtResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var unit = result.Symbol is "" or "–" ? "" : " " + result.Symbol;
        return Text($"The {result.Measure.Name} is {result.Stated:G4}{unit}; nine times out of ten it really lies between ")
            + Text($"{result.Central90.Low:G4} and {result.Central90.High:G4}{unit}.");
    }

    /// <summary>A chance in words: "6 % chance that …". Among n draws without a single case the chance is below 3/n (95 % confidence).</summary>
    /// <param name="chance">Share of the draws.</param>
    /// <param name="draws">How many draws.</param>
    /// <param name="what">What may be, for instance "the rear is really the softer end".</param>
    public static string Chance(double chance, int draws, string what) => chance switch
    {
        <= 0.0 => Text($"It is all but ruled out (less than {300.0 / draws:G2} %) that {what}."),
        >= 1.0 => Text($"It is all but certain (more than {100.0 - (300.0 / draws):G4} %) that {what}."),
        < 0.01 => Text($"There is a chance of less than 1 % that {what}."),
        _ => Text($"There is a {In.Percent.Of(chance):F0} % chance that {what}."),
    };

    /// <summary>A computed chance as a clause: "a chance of 12 % that the rear is really the softer end".</summary>
    /// <param name="chance">The chance (–).</param>
    /// <param name="end">The end ("rear").</param>
    internal static string ChanceOf(double chance, string end) =>
        (chance < 0.01 ? "a chance of less than 1 %" : Text($"a chance of {In.Percent.Of(chance):F0} %"))
        + $" that the {end} is really the softer end";

    /// <summary>Whether the rear is really the stiffer end, from a study of <see cref="AxleCatalogue.FrequencyRatio"/>.</summary>
    public static string SofterEnd(DoubtResult ratio)
    {
        ArgumentNullException.ThrowIfNull(ratio);
        return ratio.Stated >= 1.0
            ? Chance(ratio.ChanceBelow(1.0), ratio.Count, "the rear is really the softer end")
            : Chance(1.0 - ratio.ChanceBelow(1.0), ratio.Count, "the front is really the softer end");
    }

    /// <summary>Which measurement to improve next, and what it would bring; null when no doubt is stated.</summary>
    public static string? MeasureNext(DoubtResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Shares is not [{ Share: > 0.0 } most, ..])
        {
            return null;
        }

        var left = In.Percent.Of(Math.Sqrt(Math.Max(0.0, 1.0 - most.Share)));
        return Text($"Measure the {most.Source.Words} next: it makes {In.Percent.Of(most.Share):F0} % of the variance of the {result.Measure.Name}; ")
            + Text($"without its doubt the band would be {left:F0} % as wide.");
    }
}
