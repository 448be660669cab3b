using Heaveline.Figures;

namespace Heaveline.Tests.Press;

/// <summary>
/// One figure of each kind to look at and to test on. The curves are invented: they have the shape of the real thing and no meaning.
/// </summary>
internal static class Samples
{
    public static IEnumerable<(string Name, Figure Figure)> All =>
    [
        ("pass-page", Pass(FigureSize.Page)), ("pass-column", Pass(FigureSize.Column)), ("scene", Scene()), ("table", Table(FigureSize.Page)),
        ("table-column", Table(FigureSize.Column)), ("categories", Categories()), ("spectrum", Spectrum()), ("dots", Dots()), .. MapSamples.All,
    ];

    public static Figure Pass(FigureSize size) => new()
    {
        Title = "One speed bump at 40 km/h: the car as it is, and with softer front springs",
        AltText = "Four charts over time: heights of both ends, pitch, pitch acceleration and travel. With softer front springs "
            + "pitch dies away sooner after the bump.",
        Caption = "Half-round bump, 60 mm high and 0.40 m long, crossed at 40 km/h with two people in the front. "
            + "The hit is the time from the front wheel's first contact until the rear wheel has left the bump; the settling is what follows. "
            + "RMS pitch in the first second of the settling falls from 0.62° to 0.41°.",
        SignNote = "Pitch is nose-down positive, heights are upwards positive (ISO 8855); travel is positive in bump.",
        Size = size,
        SharedX = new Axis { Label = "time after first contact", Unit = "s", From = 0.0, To = 2.0 },
        SharedBands =
        [
            new Band { From = 0.0, To = 0.29, Label = "hit" },
            new Band { From = 0.29, To = 1.29, Label = "settling", Shade = BandShade.Hatched },
        ],
        Panels =
        [
            new ChartPanel
            {
                Y = new Axis { Label = "height of the body", Unit = "mm" },
                Traces = [Decay("front end", 14, 1.25, 0.0, 0.24, Pen.Of(Ink.First)), Decay("rear end", 16, 1.45, 0.24, 0.24, Pen.Of(Ink.Second))],
            },
            new ChartPanel
            {
                Y = new Axis { Label = "pitch", Unit = "°" },
                Traces =
                [
                    Decay("softer front", -0.9, 1.4, 0.05, 0.3, Pen.Of(Ink.First)),
                    Decay("as it is", -0.9, 1.3, 0.0, 0.12, Pen.Of(Ink.Fourth, Dash.Dashed)),
                ],
                Ribbons = [Around(-0.9, 1.4, 0.05, 0.3, 0.14)],
                Marks = [new Mark { X = 0.22, Y = -0.62, Label = "peak −0.62°" }],
            },
            new ChartPanel
            {
                Y = new Axis { Label = "pitch acceleration", Unit = "rad/s²" },
                Traces =
                [
                    Decay("softer front", 2.3, 4.5, 0.0, 0.22, Pen.Of(Ink.First)),
                    Decay("as it is", 2.1, 4.8, 0.02, 0.2, Pen.Of(Ink.Fourth, Dash.Dashed)),
                ],
            },
            new ChartPanel
            {
                Y = new Axis { Label = "suspension travel", Unit = "mm", From = -70, To = 70 },
                Traces =
                [
                    Decay("front", 52, 1.9, 0.0, 0.24, Pen.Of(Ink.First)), Decay("rear", 48, 2.1, 0.24, 0.24, Pen.Of(Ink.Second)),
                    Decay("front, as it is", 47, 2.0, 0.0, 0.24, Pen.Of(Ink.Fourth, Dash.Dashed)),
                ],
                Limits = [new Limit { At = 60, Label = "bump stop" }, new Limit { At = -85, Label = "rebound stop" }],
                Notes = [new Note { X = 1.97, Y = -52, Text = "static position = 0", Anchor = Anchor.Right }],
            },
        ],
    };

    public static Figure Scene() => new()
    {
        Title = "Where the car rocks: motion centres of its two modes",
        AltText = "Side view of a car facing left. The bounce mode turns about a point 3.6 m behind the centre of gravity, the pitch "
            + "mode about a point 0.4 m ahead of it.",
        Caption = "Invented car with two people. Bounce at 1.21 Hz, pitch at 1.48 Hz. Centres on the centre line, heights not drawn to meaning.",
        SignNote = "x forward from the centre of gravity.",
        Size = FigureSize.Page,
        Panels =
        [
            new ScenePanel
            {
                XFrom = -4.3, XTo = 2.5, ZFrom = -0.75, ZTo = 1.75, XGrowsLeft = true, ScaleBar = 1.0,
                Shapes =
                [
                    LineShape.Between(new(-5.0, 0.0), new(5.0, 0.0), new Pen { Ink = Ink.Fourth, Width = 0.8 }),
                    new LineShape
                    {
                        Closed = true, Fill = Fill.LightGrey,
                        Points =
                        [
                            new(2.05, 0.35), new(2.08, 0.62), new(1.9, 0.78), new(0.95, 0.92), new(0.3, 1.38), new(-1.2, 1.42), new(-1.9, 0.98),
                            new(-2.1, 0.9), new(-2.12, 0.38),
                        ],
                    },
                    new CircleShape { Centre = new(1.22, 0.31), Radius = 0.31, Fill = Fill.White },
                    new CircleShape { Centre = new(1.22, 0.31), Radius = 0.04, Fill = Fill.Full },
                    new CircleShape { Centre = new(-1.46, 0.31), Radius = 0.31, Fill = Fill.White },
                    new CircleShape { Centre = new(-1.46, 0.31), Radius = 0.04, Fill = Fill.Full },
                    new SymbolShape { At = new(0, 0.55), Symbol = MarkSymbol.Dot, Label = "centre of gravity", Anchor = Anchor.Bottom },
                    new SymbolShape
                    {
                        At = new(-3.6, 0.55),
                        Symbol = MarkSymbol.Ring,
                        Ink = Ink.First,
                        Label = "bounce, 1.21 Hz",
                        Anchor = Anchor.Bottom,
                    },
                    new SymbolShape
                    {
                        At = new(0.4, 0.55),
                        Symbol = MarkSymbol.Diamond,
                        Ink = Ink.Second,
                        Label = "pitch, 1.48 Hz",
                        Anchor = Anchor.Top,
                    },
                    new ArrowShape { From = new(2.2, 0.5), To = new(2.2, 0.95), Pen = Pen.Of(Ink.First), Label = "1.0" },
                    new ArrowShape { From = new(-2.25, 0.5), To = new(-2.25, 0.62), Pen = Pen.Of(Ink.First), Label = "0.26" },
                    new ArrowShape { From = new(1.7, 1.45), To = new(2.3, 1.45), Label = "" },
                    new TextShape { At = new(1.65, 1.45), Text = "direction of travel", Anchor = Anchor.Left },
                    new DimensionShape { From = new(0, 0.0), To = new(-3.6, 0.0), Offset = 0.62, Text = "3.60 m to the bounce centre" },
                    new DimensionShape { From = new(1.22, 0.0), To = new(-1.46, 0.0), Offset = 0.3, Text = "wheelbase 2.68 m" },
                    new DimensionShape { From = new(-2.5, 0.0), To = new(-2.5, 0.55), Offset = 0.0, Text = "0.55 m" },
                ],
            },
        ],
    };

    public static Figure Table(FigureSize size) => new()
    {
        Title = "Load states side by side",
        AltText = "A table of three load states. The ratio of rear to front frequency falls from 1.19 with the driver alone to 1.04 fully laden.",
        Caption = "Invented car. ± is the spread that the garage measurements leave.",
        SignNote = "Trim is nose-down positive.",
        Size = size,
        Panels =
        [
            new TablePanel
            {
                Columns =
                [
                    new TableColumn { Heading = "Load state", Alignment = ColumnAlignment.Left }, new TableColumn { Heading = "mass", Unit = "kg" },
                    new TableColumn { Heading = "front f", Unit = "Hz" },
                    new TableColumn { Heading = "rear f", Unit = "Hz" },
                    new TableColumn { Heading = "ratio", Unit = "–" },
                    new TableColumn { Heading = "trim", Unit = "°" },
                ],
                Rows =
                [
                    TableRow.Of("driver alone", "1 284", "1.18", "1.41", "1.19 ± 0.07", "0.00"),
                    TableRow.Of("two in front", "1 359", "1.16", "1.37", "1.18 ± 0.07", "−0.05") with { Emphasised = true },
                    TableRow.Of("four and luggage in the boot", "1 570", "1.13", "1.18", "1.04 ± 0.06", "−0.92") with { RuledAbove = true },
                ],
            },
        ],
    };

    public static Figure Categories() => new()
    {
        Title = "What each change does to the settling",
        AltText = "Bars of RMS pitch for four changes. Softer front springs lower it most.",
        Caption = "Bars: RMS pitch in the first second after the rear wheels have left. Whiskers: 5th to 95th percentile over garage doubt.",
        Panels =
        [
            new CategoryPanel
            {
                Value = new Axis { Label = "RMS pitch", Unit = "°" },
                Categories =
                [
                    Pair("as it is", 0.62, 0.78), Pair("softer front springs", 0.41, 0.55), Pair("firmer rear dampers", 0.47, 0.58),
                    Pair("both", 0.36, 0.44),
                ],
                Limits = [new Limit { At = 0.5, Label = "goal" }],
            },
        ],
    };

    public static Figure Spectrum() => new()
    {
        Title = "Pitch on a random road: the wheelbase filter",
        AltText = "Pitch spectral density against frequency on logarithmic axes, with dips where the wheelbase holds a whole number of waves.",
        Panels =
        [
            new ChartPanel
            {
                X = new Axis { Label = "frequency", Unit = "Hz", Scale = AxisScale.Logarithmic },
                Y = new Axis { Label = "pitch density", Unit = "rad²/Hz", Scale = AxisScale.Logarithmic, From = 1e-8, To = 1e-3 },
                Traces =
                [
                    Trace.From("60 km/h", Frequencies, [.. Frequencies.Select(f => Density(f, 6.2))]),
                    Trace.From("100 km/h", Frequencies, [.. Frequencies.Select(f => Density(f, 10.4))], Pen.Of(Ink.Second, Dash.DashDot)),
                ],
                Limits = [new Limit { At = 1.4, Label = "pitch mode", Direction = LimitDirection.AtX }],
            },
        ],
    };

    public static Figure Dots() => new()
    {
        Title = "Seven variants: hit against settling",
        AltText = "Seven points; the chosen variant lies lowest and leftmost.",
        SignNote = "Less is better on both axes.",
        Panels =
        [
            new ChartPanel
            {
                X = new Axis { Label = "settling: RMS pitch", Unit = "°" },
                Y = new Axis { Label = "hit: peak pitch acceleration", Unit = "rad/s²" },
                Marks =
                [
                    .. new[] { (0.62, 2.10), (0.60, 2.14), (0.58, 2.16), (0.44, 2.3), (0.41, 2.32), (0.36, 2.02), (0.5, 1.9) }
                        .Select((at, i) =>
                            new Mark { X = at.Item1, Y = at.Item2, Label = $"variant {i + 1}", Symbol = (MarkSymbol)(i % 6), Ink = (Ink)(i % 5) }),
                ],
            },
        ],
    };

    private static double[] Frequencies => [.. Enumerable.Range(0, 600).Select(i => 0.3 * Math.Pow(100.0, i / 599.0))];

    private static double Density(double f, double dip) =>
        1e-5 / (Math.Pow(1 - f * f / 2.0, 2) + 0.15 * f * f) * (Math.Pow(Math.Sin(Math.PI * f / dip), 2) + 1e-3);

    private static Category Pair(string name, double before, double laden) => new()
    {
        Name = name,
        Values =
        [
            new CategoryValue { Value = before, Low = before - 0.05, High = before + 0.06, Series = "two in front" },
            new CategoryValue { Value = laden, Low = laden - 0.06, High = laden + 0.07, Series = "laden", Ink = Ink.Second },
        ],
    };

    private static double At(double size, double hertz, double delay, double damping, double t) =>
        t < delay ? 0.0 : size * Math.Exp(-damping * 2.0 * Math.PI * hertz * (t - delay)) * Math.Sin(2.0 * Math.PI * hertz * (t - delay));

    private static Trace Decay(string name, double size, double hertz, double delay, double damping, Pen pen)
    {
        double[] t = [.. Enumerable.Range(0, 2001).Select(i => i * 0.001)];
        return Trace.From(name, t, [.. t.Select(at => At(size, hertz, delay, damping, at))], pen);
    }

    private static Ribbon Around(double size, double hertz, double delay, double damping, double doubt)
    {
        double[] t = [.. Enumerable.Range(0, 401).Select(i => i * 0.005)];
        return new Ribbon
        {
            Xs = [.. t],
            Lows = [.. t.Select(at => At(size, hertz, delay, damping, at) - doubt * Math.Exp(-at))],
            Highs = [.. t.Select(at => At(size, hertz, delay, damping, at) + doubt * Math.Exp(-at))],
        };
    }
}
