using System.Globalization;
using Heaveline.Cars;
using Heaveline.Measures;
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
        CarOnRoad[] rides = [.. responses.Select(r => new CarOnRoad(r))];
        var place = SeatPlace.Of(seat.Name);
        double[] Of(Measure<CarOnRoad> measure) => [.. rides.Select(measure.Of)];
        double[] raw = Of(RideCatalogue.PitchAcceleration), vertical = Of(RideCatalogue.Vertical(place)), pitch = Of(RideCatalogue.Pitch(place));
        double[] speeds = [.. responses.Select(r => In.KilometresPerHour.Of(r.Speed))];
        Trace Curve(string name, double[] values, Pen pen) => Trace.From(name, speeds, [.. values], pen);
        return new Figure
        {
            Title = $"{first.Model.Car.Name}, {seat.Name}: pitch as it is, and what the standard counts",
            AltText = string.Create(
                CultureInfo.InvariantCulture,
                $"Two charts against speed. Pitch acceleration as it is: {raw[0]:F2} rad/s² at {speeds[0]:F0} km/h, "
                + $"{raw[^1]:F2} at {speeds[^1]:F0}. Counted by the standard at the seat: "
                + $"vertical {vertical[0]:F2} and {vertical[^1]:F2} m/s², pitch {pitch[0]:F2} and {pitch[^1]:F2} m/s²."),
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
                    Y = new Axis
                    {
                        Label = RideCatalogue.PitchAcceleration.ShortLabel,
                        Unit = RideCatalogue.PitchAcceleration.Unit.Symbol,
                        From = 0.0,
                    },
                    Traces = [Curve("pitch", raw, Pen.Of(Ink.Second))],
                },
                new ChartPanel
                {
                    Y = new Axis { Label = "counted by the standard, RMS, weighted", Unit = "m/s²", From = 0.0 },
                    Traces =
                    [
                        Curve("vertical", vertical, Pen.Of(Ink.First)),
                        Curve("head", Of(RideCatalogue.HeadForeAft(place)), Pen.Of(Ink.Fourth, Dash.Dotted)),
                        Curve("pitch", pitch, Pen.Of(Ink.Second, Dash.Dashed)),
                    ],
                },
            ],
        };
    }
}
