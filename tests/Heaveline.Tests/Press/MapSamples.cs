using Heaveline.Figures;

namespace Heaveline.Tests.Press;

/// <summary>Maps to look at and to test on. The surfaces are invented: they have the shape of the real thing and no meaning.</summary>
internal static class MapSamples
{
    public static IEnumerable<(string Name, Figure Figure)> All =>
    [
        ("map-ratio", Ratio()), ("map-settings", Settings()), ("map-column", Column()), ("map-log", Logarithmic()), ("map-noise", Noise()),
        ("map-flat", Flat()),
    ];

    // A valley whose floor moves with speed, waves of the wheelbase across it.
    private static double Valley(double v, double r) =>
        1.0 + (0.55 * Math.Tanh(6.0 * Math.Pow(r - Best(v), 2)) * (1.0 + (0.5 * Math.Sin(v / 9.0))))
        - (0.55 * Math.Tanh(6.0 * Math.Pow(1.0 - Best(v), 2)) * (1.0 + (0.5 * Math.Sin(v / 9.0))));

    private static double Best(double v) => 1.05 + (0.18 * Math.Exp(-Math.Pow((v - 55.0) / 30.0, 2)));

    public static Figure Ratio()
    {
        double[] v = [.. Enumerable.Range(0, 200).Select(i => 10.0 + (i * 110.0 / 199.0))];
        double[] r = [.. Enumerable.Range(0, 60).Select(i => 0.8 + (i * 0.7 / 59.0))];
        return RatioMapFigure.Of(
            "Where a softer front pays: settling after one bump against equal frequencies",
            "A family car with two in front over a half-round bump, 60 mm high and 0.40 m long. Below 1 the car settles with less pitch than with "
            + "equal frequencies, above 1 with more.",
            "RMS pitch of the settling, no sign.",
            v, r, Table(v, r, (x, y) => x < 22 && y > 1.38 ? double.NaN : Valley(x, y)),
            "settling against equal frequencies", "", 1.0,
            [("driver only", 1.13), ("four and luggage", 0.94)], [.. v.Select(Best)]);
    }

    public static Figure Settings() => Map(
        "Pitch of the settling over damping and front spring",
        "RMS pitch in the first second after the bump.",
        new Axis { Label = "damping ratio of the body" },
        new Axis { Label = "front spring at the wheel", Unit = "N/mm" },
        new Axis { Label = "pitch of the settling", Unit = "°" },
        MapGrid.From(
            [.. Enumerable.Range(0, 30).Select(i => 0.1 + (i * 0.02))], [.. Enumerable.Range(0, 25).Select(j => 14.0 + j)],
            Table(
                [.. Enumerable.Range(0, 30).Select(i => 0.1 + (i * 0.02))],
                [.. Enumerable.Range(0, 25).Select(j => 14.0 + j)],
                (d, k) => (0.09 / d) + (0.0016 * Math.Pow(k - 21.0, 2)))),
        null, [("as it is", 0.25, 28.0), ("softer front", 0.25, 22.0), ("softer, more damping", 0.34, 22.0)]);

    public static Figure Column() => Ratio() with { Size = FigureSize.Column };

    public static Figure Logarithmic()
    {
        double[] f = [.. Enumerable.Range(0, 80).Select(i => 0.3 * Math.Pow(100.0, i / 79.0))];
        double[] v = [.. Enumerable.Range(0, 50).Select(i => 10.0 + (2.0 * i))];
        return Map(
        "Gain over frequency and speed",
        "Invented.",
        new Axis { Label = "frequency", Unit = "Hz", Scale = AxisScale.Logarithmic },
            new Axis { Label = "speed", Unit = "km/h", From = 20.0, To = 95.0 },
            new Axis { Label = "gain", Unit = "m/m", Scale = AxisScale.Logarithmic },
            MapGrid.From(f, v, Table(f, v, (x, y) => (0.05 + Math.Abs(Math.Cos(x * 8.0 / y))) / Math.Sqrt(
                Math.Pow(1.0 - Math.Pow(x / 1.4, 2), 2) + Math.Pow(0.6 * x / 1.4, 2)))),
            1.0, []);
    }

    /// <summary>As rough as a map gets: a smooth surface with noise of half a step on every node.</summary>
    public static Figure Noise()
    {
        var random = new Random(7);
        double[] v = [.. Enumerable.Range(0, 200).Select(i => 10.0 + (i * 0.5))];
        double[] r = [.. Enumerable.Range(0, 60).Select(i => 0.8 + (i * 0.01))];
        return RatioMapFigure.Of(
            "noise", "Noise.", "", v, r, Table(v, r, (x, y) => Valley(x, y) + (0.1 * random.NextDouble())), "measure", "", 1.0, [], []);
    }

    public static Figure Flat() => Map(
        "flat",
        "The same everywhere.",
        new Axis { Label = "x" }, new Axis { Label = "y" }, new Axis { Label = "z" },
        MapGrid.From([0, 1, 2], [0, 1], new double[,] { { 3, 3, 3 }, { 3, 3, 3 } }), null, []);

    // A measure over any two settings; with a middle, both sides of it are told apart.
    private static Figure Map(
        string title, string caption, Axis x, Axis y, Axis value, MapGrid grid, double? middle, (string Name, double X, double Y)[] variants) => new()
        {
            Title = title,
            AltText = $"Map of {value.Label} over {x.Label} and {y.Label}.",
            Caption = caption,
            Size = FigureSize.Page,
            Panels =
            [
                new MapPanel
                {
                    X = x, Y = y, Value = value, Grid = grid, Middle = middle,
                    Marks = [.. variants.Select(variant => new Mark { X = variant.X, Y = variant.Y, Label = variant.Name })],
                },
            ],
        };

    public static double[,] Table(double[] xs, double[] ys, Func<double, double, double> of)
    {
        var table = new double[ys.Length, xs.Length];
        for (var j = 0; j < ys.Length; j++)
        {
            for (var i = 0; i < xs.Length; i++)
            {
                table[j, i] = of(xs[i], ys[j]);
            }
        }

        return table;
    }
}
