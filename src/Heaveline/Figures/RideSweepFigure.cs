using System.Globalization;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rides;

namespace Heaveline.Figures;

/// <summary>Comfort and pitch on a random road against speed, for one car or several.</summary>
public static class RideSweepFigure
{
    /// <summary>
    /// The figure, page wide: raw pitch acceleration, what the standard counts of the vertical at the first seat, head fore-aft, tyre load.
    /// </summary>
    /// <param name="cars">One to five cars, each with its responses to one road at rising speeds.</param>
    /// <param name="inTime">For each car its passes in time at the same speeds, drawn as marks with their 95 % intervals; null for none.</param>
    /// <param name="seat">Name of the seat; null, and for a car without that seat: the first.</param>
    public static Figure Of(
        IReadOnlyList<(string Name, IReadOnlyList<RandomResponse> Responses)> cars,
        IReadOnlyList<IReadOnlyList<RandomPass>>? inTime = null,
        string? seat = null)
    {
        ArgumentNullException.ThrowIfNull(cars);
        if (cars.Count is < 1 or > 5)
        {
            throw new RefusedValueException(
                "cars in one figure", FormattableString.Invariant($"{cars.Count}"), "between 1 and 5", "Draw fewer at a time.");
        }

        var first = cars[0].Responses[0];
        var seated = cars.All(c => c.Responses[0].Model.Car.Seats.Count > 0);
        var place = seat is null ? SeatPlace.First : SeatPlace.Of(seat);
        var (pitch, heave) = (RideCatalogue.PitchAcceleration, RideCatalogue.HeaveAcceleration);
        var panels = new List<Panel> { WithTime(PanelOf(pitch, cars, _ => pitch), inTime, RideSignal.PitchAcceleration) };
        if (seated)
        {
            panels.Add(PanelOf(RideCatalogue.Vertical(place), cars, car => RideCatalogue.Vertical(Seat(car))));
            panels.Add(PanelOf(RideCatalogue.HeadForeAft(place), cars, car => RideCatalogue.HeadForeAft(Seat(car))));
        }
        else
        {
            panels.Add(WithTime(PanelOf(heave, cars, _ => heave), inTime, RideSignal.HeaveAcceleration));
        }

        panels.Add(PanelOf(RideCatalogue.WorstLoadVariation, cars, _ => RideCatalogue.WorstLoadVariation));
        SeatPlace Seat(Car car) => car.Seats.Any(s => s.Name == seat) ? place : SeatPlace.First;
        var loads = string.Join(", ", cars.Select(c => c.Responses[0].Model.Load.Name).Distinct());
        return new Figure
        {
            Title = $"On a random road: {string.Join("; ", cars.Select(c => c.Name))}",
            AltText = $"{panels.Count} charts against speed with {cars.Count} curves each: pitch acceleration, weighted vertical and fore-aft "
                + "acceleration at the seat, tyre load variation.",
            Caption = string.Create(
                CultureInfo.InvariantCulture,
                $"Random road of {In.MillionthsOfCubicMetres.Of(first.Spectrum.Density.Si):G4}e-6 m³ at 0.1 cycles/m, "
                + $"waviness {first.Spectrum.Waviness:G3}, "
                + $"{first.Spectrum.Band}; {loads}. Computed in the frequency domain with dampers, stops and friction made straight "
                + $"at the response's own level. ")
                + "Wk and Wd: weightings of ISO 2631-1; the axes and points are those of its table 1.",
            SignNote = inTime is null
                ? "Less is better in all."
                : "Less is better in all. Shaded: 95 % interval of passes in time of the nonlinear car over made roads.",
            Size = FigureSize.Page,
            SharedX = new Axis { Label = "speed", Unit = "km/h" },
            Panels = [.. panels],
        };
    }

    private static ChartPanel WithTime(ChartPanel panel, IReadOnlyList<IReadOnlyList<RandomPass>>? inTime, RideSignal signal) => inTime is null
        ? panel
        : panel with
        {
            Ribbons =
            [
                .. inTime.Where(p => p.Count > 1).Select((passes, i) => new Ribbon
                {
                    Xs = [.. passes.Select(p => In.KilometresPerHour.Of(p.Speed))],
                    Lows = [.. passes.Select(p => p.Of(signal).Low)],
                    Highs = [.. passes.Select(p => p.Of(signal).High)],
                    Ink = CompareFigure.PenOf(inTime.Count == 1 ? 1 : i).Ink,
                }),
            ],
        };

    private static ChartPanel PanelOf(
        Measure<CarOnRoad> measure,
        IReadOnlyList<(string Name, IReadOnlyList<RandomResponse> Responses)> cars,
        Func<Car, Measure<CarOnRoad>> of)
    {
        var traces = cars.Select((car, i) => Trace.From(
            car.Name,
            [.. car.Responses.Select(r => In.KilometresPerHour.Of(r.Speed))],
            [
                .. car.Responses.Select(r => r.Outcome == RandomOutcome.NotConverged
                    ? double.NaN
                    : measure.Unit.Of(of(r.Model.Car).Of(new CarOnRoad(r)))),
            ],
            CompareFigure.PenOf(cars.Count == 1 ? 1 : i))).ToArray();
        return new ChartPanel
        {
            Y = new Axis { Label = measure.ShortLabel, Unit = measure.Unit.Symbol, From = 0.0 },
            Traces = [.. traces.Skip(1), traces[0]],
        };
    }
}
