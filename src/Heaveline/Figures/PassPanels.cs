using System.Collections.Immutable;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>The panels of one pass, from the road up.</summary>
internal static class PassPanels
{
    // Wheels that lose more than this much of their load are worth a panel (common practice, no source).
    private const double Unloaded = 0.20;

    // A roll below a twentieth of a degree is a line along zero, rad.
    private static readonly double HardlyRolls = In.Degrees.ToSi(0.05);

    /// <summary>
    /// Road, heights, pitch, pitch acceleration, roll where it rolls, travel, tyre load where a wheel comes near to leaving the road. Each has its
    /// id: the same panel of another pass is known by it, though its words may hold numbers.
    /// </summary>
    public static ImmutableArray<Panel> Of(Pass pass, PassMeasures measures)
    {
        var rolls = measures.PeakRoll > HardlyRolls;
        var unloads = measures.Wheels.Any(wheel => wheel.LeastLoad < Unloaded * wheel.StaticLoad);
        // All of them together are to fit a page beside their caption.
        var share = (rolls, unloads) switch { (true, true) => 0.76, (false, false) => 1.0, _ => 0.88 };
        ChartPanel?[] panels =
        [
            WheelTraces.Thicket(pass) ? RoughRoad(pass, 22.0 * share) : Road(pass, 15.0 * share), Heights(pass, 28.0 * share),
            Pitch(pass, 28.0 * share), PitchAcceleration(pass, measures, 28.0 * share),
            rolls ? Roll(pass, 22.0 * share) : null, Travel(pass, 38.0 * share), unloads ? TyreLoad(pass, 28.0 * share) : null,
        ];
        return [.. panels.OfType<ChartPanel>()];
    }

    private static ChartPanel Road(Pass pass, double height) => new()
    {
        Id = "road",
        Y = new Axis { Label = "road under the wheels", Unit = "mm" },
        Height = height,
        Traces = WheelTraces.Of(pass, corner => ReaderSigns.Millimetres(pass.RoadHeight(corner)), apart: 0.01),
    };

    // The rear wheels meet the same heights: drawn twice, no one could tell the curves apart.
    private static ChartPanel RoughRoad(Pass pass, double height) => new()
    {
        Id = "road",
        Y = new Axis
        {
            Label = $"road under the front wheels, {Numeral.Of(pass.Model.Car.Wheelbase.Si / pass.Speed, 2)} s later under the rear",
            Unit = "mm",
        },
        Height = height,
        Traces = WheelTraces.FrontOf(pass, corner => ReaderSigns.Millimetres(pass.RoadHeight(corner)), apart: 0.01),
    };

    private static ChartPanel Heights(Pass pass, double height) => new()
    {
        Id = "heights",
        Y = new Axis { Label = "height of the body over each axle, from standing", Unit = "mm" },
        Height = height,
        Traces =
        [
            Trace.From("front", pass.Time.AsSpan(), ReaderSigns.Millimetres(pass.FrontHeight), WheelTraces.Front),
            Trace.From("rear", pass.Time.AsSpan(), ReaderSigns.Millimetres(pass.RearHeight), WheelTraces.Rear),
        ],
    };

    private static ChartPanel Pitch(Pass pass, double height) => new()
    {
        Id = "pitch",
        Y = new Axis { Label = "pitch, nose up", Unit = "°" },
        Height = height,
        Traces = [Trace.From("", pass.Time.AsSpan(), ReaderSigns.NoseUpDegrees(pass.Pitch), Pen.Of(Ink.Third))],
    };

    private static ChartPanel PitchAcceleration(Pass pass, PassMeasures measures, double height)
    {
        var values = ReaderSigns.NoseUp(pass.PitchAcceleration);
        return new ChartPanel
        {
            Id = "pitch-acceleration",
            Y = new Axis { Label = "pitch acceleration, nose up", Unit = "rad/s²" },
            Height = height,
            Traces = [Trace.From("", pass.Time.AsSpan(), values, Pen.Of(Ink.Third))],
            Marks = measures.Pitch.Hit is { } hit ? PeakOf(pass, values, hit.Window) : [],
        };
    }

    private static ImmutableArray<Mark> PeakOf(Pass pass, double[] values, Window window)
    {
        var (time, peak) = new Curve(pass, values).Top(window);
        return peak == 0.0 ? [] : [new Mark { X = time, Y = peak, Label = "peak of the hit " + Numeral.Of(peak, 2) }];
    }

    private static ChartPanel Roll(Pass pass, double height) => new()
    {
        Id = "roll",
        Y = new Axis { Label = "roll, right side down", Unit = "°" },
        Height = height,
        Traces = [Trace.From("", pass.Time.AsSpan(), ReaderSigns.Degrees(pass.Roll), Pen.Of(Ink.Third))],
    };

    private static ChartPanel Travel(Pass pass, double height) => new()
    {
        Id = "travel",
        Y = new Axis { Label = "wheel travel, bump upwards", Unit = "mm" },
        Height = height,
        Traces = WheelTraces.Of(pass, corner => ReaderSigns.Millimetres(pass.Travel(corner)), apart: 2.0),
        Limits = WheelTraces.StopsOf(pass.Model),
    };

    private static ChartPanel TyreLoad(Pass pass, double height)
    {
        double[] Share(int corner)
        {
            var still = pass.Model.Trim.WheelLoad[corner];
            return [.. pass.TyreLoad(corner).Select(load => In.Percent.Of(load / still))];
        }

        return new ChartPanel
        {
            Id = "tyre-load",
            Y = new Axis { Label = "tyre load, share of standing", Unit = "%" },
            Height = height,
            Traces = WheelTraces.Of(pass, Share, apart: 1.0),
            Limits = [new Limit { At = 0.0, Label = "off the road" }],
        };
    }
}
