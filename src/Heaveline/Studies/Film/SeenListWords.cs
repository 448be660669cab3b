using Heaveline.Answers;
using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Cars seen at one bump, in words.</summary>
internal static class SeenListWords
{
    /// <summary>How many where.</summary>
    public static string Head(FilmAnswer answer) =>
        $"{answer.Cars.Cars.Length} {(answer.Cars.Cars.Length == 1 ? "car" : "cars")} seen at {answer.Asked.Place}, "
        + $"{answer.Cars.Cars.Sum(c => c.Passes.Length)} films.";

    /// <summary>The order, the finding first; then what is not told apart.</summary>
    public static IEnumerable<Sentence> Of(FilmAnswer answer)
    {
        var list = answer.Cars;
        var (first, last) = (list.Cars[0], list.Cars.Last(c => double.IsFinite(c.PitchPerLift.Value) || ReferenceEquals(c, list.Cars[0])));
        if (!double.IsFinite(first.PitchPerLift.Value))
        {
            yield return new("seen-order", "No film shows the settling long enough: nothing is put in order.");
            yield break;
        }

        yield return new(
            "seen-order",
            ReferenceEquals(first, last)
                ? $"{Told(first)}."
                : first.PitchPerLift.Meets(last.PitchPerLift)
                    ? $"The films do not tell these cars apart: least pitch after the bump has {Told(first)}, most {Told(last)}."
                    : $"Least pitch after the bump for the lift of its wheels has {Told(first)}; most has {Told(last)}.");
        foreach (var (one, other) in list.NotTold)
        {
            yield return new("seen-not-told", $"{one.Name} and {other.Name} are not told apart: their intervals meet.");
        }

        foreach (var car in list.Cars.Where(c => c.Car.SlowerEnd != 0))
        {
            yield return new("seen-slower", $"{car.Name} is slower {(car.Car.SlowerEnd > 0 ? "in front" : "at the rear")}.");
        }
    }

    /// <summary>Where the order must be doubted.</summary>
    public static IEnumerable<string> Cautions(FilmAnswer answer)
    {
        if (!answer.Cars.IsOneSpeed)
        {
            yield return "The cars did not pass at one speed: the order is one of passes, "
                + $"{FilmWords.Speed(answer.Cars.Cars.Min(c => c.Speed))} to {FilmWords.Speed(answer.Cars.Cars.Max(c => c.Speed))}, not of cars.";
        }

        yield return "One pass differs from the next by some per cent, and the load of a car that passes is not known.";
        foreach (var car in answer.Cars.Cars.Where(c => c.MayBeSlowMotion))
        {
            yield return $"{car.Name}: {FilmWords.SlowMotion(car)}";
        }

        foreach (var left in answer.LeftOut)
        {
            yield return $"Left out: {left}";
        }

        foreach (var remark in answer.Cars.Cars.SelectMany(c => c.Passes.SelectMany(p => p.Remarks).Distinct().Select(r => $"{c.Name}: {r}")))
        {
            yield return remark;
        }
    }

    private static string Told(SeenCar car)
    {
        string Shown(double v) => Numeral.Of(In.DegreesFor100Millimetres.Of(v), 2);
        var n = car.PitchPerLift;
        return $"{car.Name} at {FilmWords.Speed(car.Speed)}, {Shown(n.Value)}° ({Shown(n.Low)} to {Shown(n.High)}°) for each 100 mm of lift";
    }
}
