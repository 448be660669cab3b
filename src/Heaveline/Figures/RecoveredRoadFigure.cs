using System.Globalization;
using Heaveline.Drives.Recovery;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>The road of a site as a drive felt it, with the band that it lies in.</summary>
public static class RecoveredRoadFigure
{
    /// <summary>The figure, a column wide.</summary>
    /// <param name="road">The road.</param>
    public static Figure Of(RecoveredRoad road)
    {
        ArgumentNullException.ThrowIfNull(road);
        double[] heights = [.. road.Height.Select(In.Millimetres.Of)];
        double[] halves = [.. road.HalfWidth.Select(In.Millimetres.Of)];
        return new Figure
        {
            Title = $"The road at {road.Site}",
            AltText = "Height of the road over the distance from the front axle's first contact with the bump, with its 90 % band.",
            Caption = string.Create(
                CultureInfo.InvariantCulture,
                $"The bump of {road.Passes} passes, the roughness of bump {road.Event} at "
                + $"{In.KilometresPerHour.Of(road.Speed):F0} km/h; both tracks ")
                + string.Create(
                    CultureInfo.InvariantCulture,
                    $"averaged. Shaded: 90 % of each height. True for waves of {road.ShortestWave:F1} to "
                    + $"{road.LongestWave:F0} m: no grade, no drift."),
            SharedX = new Axis { Label = "distance from first contact", Unit = "m" },
            Panels =
            [
                new ChartPanel
                {
                    Id = "height",
                    Y = new Axis { Label = "height", Unit = In.Millimetres.Symbol },
                    Ribbons =
                    [
                        new Ribbon
                        {
                            Xs = road.Distance,
                            Lows = [.. heights.Zip(halves, (h, w) => h - w)],
                            Highs = [.. heights.Zip(halves, (h, w) => h + w)],
                        },
                    ],
                    Traces = [Trace.From("recovered", [.. road.Distance], heights, Pen.Of(Ink.First, Dash.Solid))],
                },
            ],
        };
    }
}
