using System.Globalization;
using Heaveline.Drives.Recovery;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Figures;

/// <summary>How rough the road of a drive is along the drive, with the interval of every stretch and the limits of the classes.</summary>
public static class RoughnessFigure
{
    /// <summary>The figure, page wide.</summary>
    /// <param name="roughness">The roughness, of one stretch that is told or more.</param>
    public static Figure Of(DriveRoughness roughness)
    {
        ArgumentNullException.ThrowIfNull(roughness);
        RoughStretch[] told = [.. roughness.Stretches.Where(s => s.IsTold)];
        var unit = In.MillionthsOfCubicMetres;
        var (xs, ys) = (new List<double>(), new List<double>());
        foreach (var stretch in told)
        {
            if (xs.Count > 0 && xs[^1] < stretch.From)
            {
                xs.Add(0.5 * (xs[^1] + stretch.From));
                ys.Add(double.NaN);
            }

            xs.AddRange([stretch.From, stretch.To]);
            ys.AddRange([unit.Of(stretch.Density), unit.Of(stretch.Density)]);
        }

        var (least, most) = (told.Min(s => s.Low), told.Max(s => s.High));
        return new Figure
        {
            Title = "Roughness along the drive",
            AltText = "Density of the road's heights at 0.1 cycles a metre over the distance driven, a step for each stretch of 100 m, with its "
                + "90 % band and the limits of the classes of ISO 8608.",
            Caption = string.Create(
                CultureInfo.InvariantCulture,
                $"Between bumps, both tracks averaged, through the linear car of the drive; shaded: 90 %. Waves of "
                + $"{told.Min(s => s.ShortestWave):F1} to {told.Max(s => s.LongestWave):F0} m. Lines: upper limits of the classes."),
            Size = FigureSize.Page,
            SharedX = new Axis { Label = "distance along the drive", Unit = "m" },
            Panels =
            [
                new ChartPanel
                {
                    Id = "roughness",
                    Y = new Axis { Label = "G(0.1)", Unit = unit.Symbol, Scale = AxisScale.Logarithmic },
                    Ribbons = [.. told.Select(s => new Ribbon
                    {
                        Xs = [s.From, s.To],
                        Lows = [unit.Of(s.Low), unit.Of(s.Low)],
                        Highs = [unit.Of(s.High), unit.Of(s.High)],
                    })],
                    Traces = [Trace.From("road", [.. xs], [.. ys], Pen.Of(Ink.First, Dash.Solid))],
                    // Those that the road lies between.
                    Limits = [.. RoadClass.All.SkipLast(1).Where(c => c.Upper.Si > 0.5 * least && c.Upper.Si < 2.0 * most)
                        .Select(c => new Limit { At = unit.Of(c.Upper.Si), Label = $"class {c.Letter} below" })],
                },
            ],
        };
    }
}
