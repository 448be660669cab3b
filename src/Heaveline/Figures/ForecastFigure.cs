using System.Collections.Immutable;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Recovery;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>What a change was forecast to do beside what was measured: over all passes, at each bump, at each pass.</summary>
public static class ForecastFigure
{
    /// <summary>The figure, page wide.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="measured">What was measured of the same number.</param>
    /// <param name="isHit">Whether the number is the hit; else the headline.</param>
    /// <param name="sites">The names that the forecast's bumps have in the comparison, by their own.</param>
    /// <param name="what">The number, in words.</param>
    public static Figure Of(Forecast forecast, BeforeAfter measured, bool isHit, IReadOnlyDictionary<string, string> sites, string what)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentNullException.ThrowIfNull(sites);
        var said = isHit ? forecast.Hit : forecast.Headline;
        var pooled = measured.Pooled is { } effect ? Shown("measured", Of(effect), Ink.First) : null;
        return new Figure
        {
            Title = "Forecast and measured",
            AltText = $"Dots with intervals: the change of {what} that was forecast, and that was measured, over all passes and at each bump; "
                + "charts of both against speed, pass by pass.",
            Caption = $"Change of {what}, forecast for {forecast.Change} from the drive before alone, and measured. Intervals hold 90 %. "
                + "Rings: forecast at each pass of the drive before; discs: each pass of the drive after over the line of those before at its speed; "
                + "crosses: passes whose road is told too badly to count.",
            Size = FigureSize.Page,
            Panels =
            [
                new CategoryPanel
                {
                    Title = "Change",
                    Value = new Axis { Label = "change", Unit = In.Percent.Symbol },
                    Style = CategoryStyle.Dots,
                    Limits = [],
                    Categories =
                    [
                        new Category
                        {
                            Name = "all passes",
                            Values = [Shown("forecast", said, Ink.Second), .. pooled is null ? [] : new[] { pooled }],
                        },
                        .. measured.Sites.Select(s => Row(s, forecast, isHit, sites)).OfType<Category>(),
                    ],
                },
                Passes(forecast, measured, isHit, sites),
            ],
        };
    }

    private static Bracket Of(EffectInterval effect) => new(effect.Value, effect.Low, effect.High);

    private static ForecastNumber Number(ForecastPass pass, bool isHit) => isHit ? pass.Hit : pass.Headline;

    // The forecast at a bump has no interval of its own here: its passes share what is unsure of it.
    private static Category? Row(SiteComparison site, Forecast forecast, bool isHit, IReadOnlyDictionary<string, string> sites)
    {
        double[] said =
        [
            .. forecast.Passes.Where(p => p.IsCounted && sites.GetValueOrDefault(p.Site) == site.Site)
                .Select(p => Number(p, isHit).Change.Value).Where(double.IsFinite),
        ];
        ImmutableArray<CategoryValue> values =
        [
            .. said.Length > 0
                ? [new CategoryValue { Value = In.Percent.Of(said.Average()), Series = "forecast", Ink = Ink.Second }]
                : Array.Empty<CategoryValue>(),
            .. site.Effect is { } effect ? [Shown("measured", Of(effect), Ink.First)] : Array.Empty<CategoryValue>(),
        ];
        return values.IsEmpty ? null : new Category { Name = site.Site, Values = values };
    }

    private static CategoryValue Shown(string series, Bracket share, Ink ink) => new()
    {
        Value = In.Percent.Of(share.Value), Low = In.Percent.Of(share.Low), High = In.Percent.Of(share.High), Series = series, Ink = ink,
    };

    private static ChartPanel Passes(Forecast forecast, BeforeAfter measured, bool isHit, IReadOnlyDictionary<string, string> sites) => new()
    {
        Title = "Pass by pass",
        X = new Axis { Label = "speed", Unit = In.KilometresPerHour.Symbol },
        Y = new Axis { Label = "change", Unit = In.Percent.Symbol },
        Marks =
        [
            .. from pass in forecast.Passes
               where sites.ContainsKey(pass.Site)
               let change = Number(pass, isHit).Change.Value
               where double.IsFinite(change)
               select new Mark
               {
                   X = In.KilometresPerHour.Of(pass.Speed),
                   Y = In.Percent.Of(change),
                   Symbol = pass.IsCounted ? MarkSymbol.Ring : MarkSymbol.Cross,
                   Ink = Ink.Second,
               },
            .. from pass in measured.Counted
               where pass.IsAfter
               let level = measured.Level(pass.Site, pass.Speed, false)
               where level is { Value: > 0.0 }
               select new Mark
               {
                   X = In.KilometresPerHour.Of(pass.Speed),
                   Y = In.Percent.Of((pass.Value / level.Value.Value) - 1.0),
                   Symbol = MarkSymbol.Dot,
                   Ink = Ink.First,
               },
        ],
    };
}
