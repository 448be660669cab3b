using System.Collections.Immutable;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>How sure the numbers of a car are: each with its middle 90 %, and whose doubt makes most of it.</summary>
public static class DoubtFigure
{
    private const int MostSources = 8;

    // A number whose spread is a fifth of itself and more is nearly nothing (a level car's pitch at trim): a per cent of it says nothing.
    private const double MostSpread = 0.2;

    private const double SmallestShare = 0.005;

    /// <summary>The figure, page wide.</summary>
    /// <param name="car">Its name.</param>
    /// <param name="results">Outputs with their spread, at least one that is not zero.</param>
    /// <param name="draws">How many cars were drawn.</param>
    /// <param name="seed">With which seed.</param>
    /// <exception cref="RefusedValueException">No output has a spread.</exception>
    public static Figure Of(string car, IReadOnlyList<DoubtResult> results, int draws, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(results);
        List<DoubtResult> shown = [.. results.Where(r => r.StandardDeviation > 0.0 && r.StandardDeviation < MostSpread * Math.Abs(r.Stated))];
        if (shown.Count == 0)
        {
            throw new RefusedValueException(
                "doubts", "none", "at least one stated doubt", "Write the doubts of the measurements into the car file (24.5 N/mm ± 5 %).");
        }

        // What was asked for most particularly: the headline of the pass, where one was run; else the ratio that the rule of the trade is about.
        var most = shown.FirstOrDefault(r => r.Measure is Measure<Pass>)
            ?? shown.FirstOrDefault(r => r.Measure == AxleCatalogue.FrequencyRatio) ?? shown[^1];
        var next = DoubtSentences.MeasureNext(most);
        ImmutableArray<Category> shares =
        [
            .. most.Shares.Where(s => s.Share > SmallestShare).Take(MostSources).Select(s => new Category
            {
                Name = s.Source.Name,
                Values = [new CategoryValue { Value = In.Percent.Of(s.Share) }],
            }),
        ];
        return new Figure
        {
            Title = $"{car}: how sure the numbers are",
            AltText = $"Dots with intervals of {shown.Count} numbers over their stated values"
                + (shares.Length > 0 ? $", and bars of the shares of the variance of the {most.Measure.Name}." : "."),
            Caption = $"{DoubtSentences.Of(most)} {next ?? "Too few cars are drawn to tell whose doubt makes most of it."} "
                + "Numbers that are nearly nothing as stated are left out.",
            SignNote = FormattableString.Invariant($"{draws} cars drawn within the stated doubts (two standard deviations each), seed {seed}."),
            Size = FigureSize.Page,
            Panels = shares.Length > 0 ? [Spreads(shown), Shares(most, shares)] : [Spreads(shown)],
        };
    }

    private static CategoryPanel Spreads(List<DoubtResult> shown) => new()
    {
        Title = "Middle 90 %, over the value as stated",
        Value = new Axis { Label = "over the stated value", Unit = "%" },
        Style = CategoryStyle.Dots,
        Categories =
        [
            .. shown.Select(r => new Category
            {
                Name = r.Measure.Name,
                Values =
                [
                    new CategoryValue
                    {
                        Value = In.Percent.Of(r.Quantile(0.5) / r.Stated),
                        Low = In.Percent.Of(Math.Min(r.Central90.Low / r.Stated, r.Central90.High / r.Stated)),
                        High = In.Percent.Of(Math.Max(r.Central90.Low / r.Stated, r.Central90.High / r.Stated)),
                    },
                ],
            }),
        ],
    };

    private static CategoryPanel Shares(DoubtResult result, ImmutableArray<Category> shares) => new()
    {
        Title = $"Whose doubt makes the variance of the {result.Measure.Name}",
        Value = new Axis { Label = "share of the variance", Unit = "%", From = 0.0 },
        Categories = shares,
    };
}
