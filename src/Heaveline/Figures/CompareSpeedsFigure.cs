using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>The headline measures against speed, for one car or several over the same road.</summary>
public static class CompareSpeedsFigure
{
    private static readonly MarkSymbol[] Symbols =
        [MarkSymbol.Ring, MarkSymbol.Dot, MarkSymbol.Square, MarkSymbol.Triangle, MarkSymbol.Diamond, MarkSymbol.Cross];

    /// <summary>
    /// The figure, page wide: RMS pitch, peak pitch acceleration and the driver's largest vertical acceleration. A pass that broke off leaves a gap.
    /// </summary>
    /// <param name="cars">One to six cars, each with its passes over one road at rising speeds.</param>
    /// <exception cref="RefusedValueException">None or too many cars, a car with no pass, roads differ, or speeds do not rise.</exception>
    public static Figure Of(IReadOnlyList<(string Name, IReadOnlyList<(Pass Pass, PassMeasures Measures)> Passes)> cars)
    {
        ArgumentNullException.ThrowIfNull(cars);
        Alike(cars);
        var first = cars[0].Passes[0];
        string?[] drivers = [.. cars.Select(car => Headline.Driver(car.Passes[0].Pass)).Distinct()];
        var seated = drivers.All(seat => seat is not null);
        var (rms, peak) = (Headline.RmsPitch(first.Pass), Headline.PeakAcceleration(first.Pass));
        var vertical = seated ? Headline.PeakVertical(first.Pass) : WholePassCatalogue.PeakHeaveAcceleration;
        return new Figure
        {
            Title = $"{FirstLetter.Raised(first.Pass.Road.MetBy(first.Pass.Model.Rolls).Name)} against speed: "
                + string.Join("; ", cars.Select(car => car.Name)),
            AltText = $"Three charts against speed with {cars.Count} curves each: {rms.CaptionLabel}, {peak.CaptionLabel}, "
                + $"largest vertical acceleration. {Ranges(cars)}",
            Caption = $"Road: {first.Pass.RoadCaption}. "
                + $"{CompareCaption.Cars([.. cars.Select(car => (car.Name, car.Passes[0].Pass, car.Passes[0].Measures))])} "
                + $"{Ranges(cars)} Each mark is one pass."
                + (seated
                    ? $" Vertical acceleration at the hip point: {string.Join(", ", drivers)}."
                    : " Vertical acceleration at the centre of gravity: no seat is given.")
                + Gaps(cars),
            SignNote = "Less is better in all three.",
            Size = FigureSize.Page,
            SharedX = new Axis { Label = "speed", Unit = "km/h" },
            Panels =
            [
                PanelOf(rms, cars, _ => rms), PanelOf(peak, cars, _ => peak),
                PanelOf(vertical, cars, pass => seated ? Headline.PeakVertical(pass) : vertical),
            ],
        };
    }

    private static ChartPanel PanelOf(
        Measure<Pass> measure,
        IReadOnlyList<(string Name, IReadOnlyList<(Pass Pass, PassMeasures Measures)> Passes)> cars,
        Func<Pass, Measure<Pass>> of)
    {
        var traces = cars.Select((car, i) => Trace.From(
            car.Name,
            [.. car.Passes.Select(one => In.KilometresPerHour.Of(one.Pass.Speed))],
            [.. car.Passes.Select(one => measure.Unit.Of(Headline.Of(of(one.Pass), one.Pass)) ?? double.NaN)],
            CompareFigure.PenOf(cars.Count == 1 ? 1 : i))).ToArray();
        return new ChartPanel
        {
            Y = new Axis { Label = measure.ShortLabel, Unit = measure.Unit.Symbol, From = 0.0 },
            Traces = [.. traces.Skip(1), traces[0]],
            Marks =
            [
                .. from i in Enumerable.Range(0, traces.Length)
                   from k in Enumerable.Range(0, traces[i].Xs.Length)
                   where !double.IsNaN(traces[i].Ys[k])
                   select new Mark { X = traces[i].Xs[k], Y = traces[i].Ys[k], Symbol = Symbols[i], Ink = traces[i].Pen.Ink },
            ],
        };
    }

    private static string Ranges(IReadOnlyList<(string Name, IReadOnlyList<(Pass Pass, PassMeasures Measures)> Passes)> cars) =>
        "Most RMS pitch of the speeds drawn: "
        + string.Join("; ", cars.Select(car =>
        {
            var worst = car.Passes.Select(one => (one.Pass.Speed, Rms: Headline.Of(Headline.RmsPitch(one.Pass), one.Pass) ?? -1.0))
                .Where(one => one.Rms >= 0.0).DefaultIfEmpty().MaxBy(one => one.Rms);
            return worst.Speed > 0.0
                ? $"{car.Name} {Printed.Degrees(worst.Rms)} at {Printed.Speed(worst.Speed)}"
                : $"{car.Name} no pass recorded to its end";
        })) + ".";

    private static string Gaps(IReadOnlyList<(string Name, IReadOnlyList<(Pass Pass, PassMeasures Measures)> Passes)> cars) => string.Concat(
        from car in cars
        from one in car.Passes
        where one.Pass.Outcome != PassOutcome.Completed
        select $" {car.Name} at {Printed.Speed(one.Pass.Speed)} stopped early: {one.Pass.OutcomeSentence}");

    private static void Alike(IReadOnlyList<(string Name, IReadOnlyList<(Pass Pass, PassMeasures Measures)> Passes)> cars)
    {
        if (cars.Count is < 1 or > CompareFigure.Most)
        {
            throw new RefusedValueException(
                "number of cars to compare", $"{cars.Count}", $"1 to {CompareFigure.Most}", "Leave some out, or make several figures.");
        }

        foreach (var (name, passes) in cars)
        {
            if (passes.Count == 0)
            {
                throw new RefusedValueException($"passes of '{name}'", "none", "at least one", "Let the car cross the road first.");
            }

            for (var k = 0; k < passes.Count; k++)
            {
                if (passes[k].Pass.Road.Caption != cars[0].Passes[0].Pass.Road.Caption)
                {
                    throw new RefusedValueException(
                        $"road of '{name}'",
                        $"'{passes[k].Pass.Road.Caption}'",
                        $"'{cars[0].Passes[0].Pass.Road.Caption}'",
                        "Compare passes over one road.");
                }

                if (k > 0 && !(passes[k].Pass.Speed > passes[k - 1].Pass.Speed))
                {
                    throw new RefusedValueException(
                        $"speeds of '{name}'",
                        $"{Printed.Speed(passes[k].Pass.Speed)} after {Printed.Speed(passes[k - 1].Pass.Speed)}",
                        "rising",
                        "Sort the passes by speed.");
                }
            }
        }
    }
}
