using System.Numerics;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rides;

namespace Heaveline.Figures;

/// <summary>How much of a road's waves reaches the body, over frequency: heave and pitch with both tracks alike, roll with opposed tracks.</summary>
public static class TransferFigure
{
    private const double From = 0.3;
    private const double To = 25.0;
    private const int Points = 500;

    /// <summary>The figure, page wide.</summary>
    /// <param name="model">Car and load at trim; small motions, dampers by the mean of both slopes at rest, friction left out.</param>
    /// <param name="speed">Speed, m/s.</param>
    public static Figure Of(RideModel model, double speed)
    {
        ArgumentNullException.ThrowIfNull(model);
        double[] f = [.. Enumerable.Range(0, Points).Select(k => From * Math.Pow(To / From, k / (Points - 1.0)))];
        var response = FrequencyResponse.Of(model, speed, f);
        var filter = new WheelbaseFilter { Wheelbase = model.Car.Wheelbase, Speed = new Amount<Velocity>(speed) };
        var panels = new List<Panel>
        {
            PanelOf("heave over road height", "m/m", f, response.Of(RideSignal.Heave).Both, 1.0, filter.HeaveNulls(To)),
            PanelOf("pitch over road height", "°/cm", f, response.Of(RideSignal.Pitch).Both, 0.01 * In.Degrees.Factor, filter.PitchNulls(To)),
        };
        if (model.Rolls)
        {
            panels.Add(PanelOf(
                "roll over road height, one track up, one down", "°/cm", f, response.Of(RideSignal.Roll).Opposed, 0.01 * In.Degrees.Factor, []));
        }

        return new Figure
        {
            Title = FormattableString.Invariant($"{model.Car.Name} at {In.KilometresPerHour.Of(speed):0.#} km/h: road to body"),
            AltText = "Charts against frequency of the gain from road height to heave, pitch and roll, with lines where "
                + "the wheelbase cancels heave or pitch.",
            Caption = $"{FirstLetter.Raised(model.Load.Name)}. Small motions about the standing position, the rear wheels meeting the road "
                + "a wheelbase later; tyres' contact length counted. Dampers with the mean of both slopes at rest, friction left out.",
            SignNote = "Amplitudes only. Lines: heave or pitch cancelled by the wheelbase of equal axles.",
            Size = FigureSize.Page,
            SharedX = new Axis { Label = "frequency", Unit = "Hz", Scale = AxisScale.Logarithmic, From = From, To = To },
            Panels = [.. panels],
        };
    }

    private static ChartPanel PanelOf(
        string label, string unit, double[] f, IReadOnlyList<Complex> gain, double factor, IReadOnlyList<double> nulls) => new()
        {
            Y = new Axis { Label = label, Unit = unit, From = 0.0 },
            Traces = [Trace.From("", f, [.. gain.Select(g => factor * g.Magnitude)])],
            Limits = [.. nulls.Where(n => n >= From).Take(3)
                .Select((n, k) => new Limit { At = n, Label = FormattableString.Invariant($"null {k + 1}"), Direction = LimitDirection.AtX })],
        };
}
