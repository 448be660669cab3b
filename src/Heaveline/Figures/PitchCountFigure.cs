using System.Globalization;
using Heaveline.Cars;
using Heaveline.Measures.Comfort;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rides;

namespace Heaveline.Figures;

/// <summary>
/// Pitch on a random road as it is, above what ISO 2631-1 makes of the same ride at one seat: the standard turns pitch down, the trade minds it most.
/// </summary>
public static class PitchCountFigure
{
    /// <summary>The figure, page wide.</summary>
    /// <param name="responses">Responses of one car at rising speeds, at least one.</param>
    /// <param name="seat">One of its seats.</param>
    /// <exception cref="RefusedValueException">No response.</exception>
    public static Figure Of(IReadOnlyList<RandomResponse> responses, Seat seat)
    {
        ArgumentNullException.ThrowIfNull(responses);
        ArgumentNullException.ThrowIfNull(seat);
        if (responses.Count == 0)
        {
            throw new RefusedValueException("responses", "none", "at least one", "Give the responses at some speeds.");
        }

        var first = responses[0];
        RandomComfort[] comfort = [.. responses.Select(r => RandomComfort.Of(r, seat))];
        double[] speeds = [.. responses.Select(r => In.KilometresPerHour.Of(r.Speed))];
        Trace Curve(string name, IEnumerable<double> values, Pen pen) => Trace.From(name, speeds, [.. values], pen);
        return new Figure
        {
            Title = $"{first.Model.Car.Name}, {seat.Name}: pitch as it is, and what the standard counts",
            AltText = string.Create(
                CultureInfo.InvariantCulture,
                $"Two charts against speed. Pitch acceleration as it is: {first.Rms(RideSignal.PitchAcceleration):F2} rad/s² at {speeds[0]:F0} km/h, "
                + $"{responses[^1].Rms(RideSignal.PitchAcceleration):F2} at {speeds[^1]:F0}. Counted by the standard at the seat: "
                + $"vertical {comfort[0].Vertical:F2} and {comfort[^1].Vertical:F2} m/s², pitch {comfort[0].CountedPitch:F2} and "
                + $"{comfort[^1].CountedPitch:F2} m/s²."),
            Caption = $"Random road, {first.Model.Load.Name}. Above: pitch acceleration, root mean square, not weighted, which the trade believes "
                + "matters most. Below, in one unit: vertical at the seat weighted by Wk, pitch weighted by We times 0.4 m/rad, "
                + "fore-aft at the head weighted by Wd. The factor 0.4 m/rad and the choice of axes are those of ISO 2631-1:1997, 8.2.2 and table 1; "
                + "the head is no point of the standard.",
            SignNote = "Less is better in both.",
            Size = FigureSize.Page,
            SharedX = new Axis { Label = "speed", Unit = "km/h" },
            Panels =
            [
                new ChartPanel
                {
                    Y = new Axis { Label = "pitch acceleration, RMS, as it is", Unit = "rad/s²", From = 0.0 },
                    Traces = [Curve("pitch", responses.Select(r => r.Rms(RideSignal.PitchAcceleration)), Pen.Of(Ink.Second))],
                },
                new ChartPanel
                {
                    Y = new Axis { Label = "counted by the standard, RMS, weighted", Unit = "m/s²", From = 0.0 },
                    Traces =
                    [
                        Curve("vertical", comfort.Select(c => c.Vertical), Pen.Of(Ink.First)),
                        Curve("head", comfort.Select(c => c.HeadForeAft), Pen.Of(Ink.Fourth, Dash.Dotted)),
                        Curve("pitch", comfort.Select(c => c.CountedPitch), Pen.Of(Ink.Second, Dash.Dashed)),
                    ],
                },
            ],
        };
    }
}
