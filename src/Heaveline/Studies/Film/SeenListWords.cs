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
        + $"{FilmWords.Count(answer.Cars.Cars.Sum(c => c.Passes.Length))}.";

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
        foreach (var run in Runs(list))
        {
            yield return new(
                "seen-not-told",
                run.Count == 2 ? $"{run[0]} and {run[1]} are not told apart: their intervals meet."
                    : $"{SpeedRanges.And(run)} are not told apart, each from the next in this order: their intervals meet.");
        }

        if (Heaving(list) is { Length: > 0 } heaving)
        {
            var seen = list.Cars.SelectMany(c => c.Numbers).Where(n => double.IsFinite(n.HeaveShare.Value)).All(n => HeaveWords.IsSecond(n.Reach))
                ? "" : ", as far as it was seen,";
            yield return new("seen-heave", $"{heaving}; by how much of the motion in the settling's first second{seen} is level.");
        }

        foreach (var ends in list.Cars.Where(c => c.Car.SlowerEnd != 0).GroupBy(c => c.Car.SlowerEnd).OrderByDescending(g => g.Key))
        {
            yield return new(
                "seen-slower",
                $"{Named(ends)} {(ends.Count() == 1 ? "is" : "are")} slower {(ends.Key > 0 ? "in front" : "at the rear")}.");
        }
    }

    // Neighbours that are not told apart, as far as one follows on the other.
    private static IEnumerable<List<string>> Runs(SeenList list)
    {
        List<string> run = [];
        foreach (var (one, other) in list.NotTold)
        {
            if (run.Count > 0 && run[^1] == one.Name)
            {
                run.Add(other.Name);
                continue;
            }

            if (run.Count > 0)
            {
                yield return run;
            }

            run = [one.Name, other.Name];
        }

        if (run.Count > 0)
        {
            yield return run;
        }
    }

    // Which heave, which pitch, of which it is not told; as the film of one car has it.
    private static string Heaving(SeenList list)
    {
        var told = list.Cars.Where(c => double.IsFinite(c.HeaveShare.Value)).ToList();
        IEnumerable<string> Parts()
        {
            foreach (var (which, one, several) in new (int?, string, string)[]
            {
                (1, "heaves more than it pitches", "heave more than they pitch"),
                (-1, "pitches more than it heaves", "pitch more than they heave"),
                (0, "heaves about as much as it pitches", "heave about as much as they pitch"),
            })
            {
                if (Those(which) is { Count: > 0 } cars)
                {
                    yield return $"{Named(cars)} {(cars.Count == 1 ? one : several)}";
                }
            }

            if (Those(null) is { Count: > 0 } open)
            {
                yield return $"{(open.Count == told.Count ? "Of" : "of")} {Named(open)} it is not told whether "
                    + (open.Count == 1 ? "it heaves more than it pitches" : "they heave more than they pitch");
            }
        }

        List<SeenCar> Those(int? which) => [.. told.Where(c => HeaveWords.Of(c.HeaveShare) == which)];
        return string.Join("; ", Parts());
    }

    private static string Named(IEnumerable<SeenCar> cars) => SpeedRanges.And([.. cars.Select(c => c.Name)]);

    /// <summary>Where the order must be doubted.</summary>
    public static IEnumerable<string> Cautions(FilmAnswer answer)
    {
        if (!answer.Cars.IsOneSpeed)
        {
            yield return "The cars did not pass at one speed: the order is one of passes, "
                + $"{FilmWords.Speed(answer.Cars.Speeds.Min())} to {FilmWords.Speed(answer.Cars.Speeds.Max())}, not of cars.";
        }

        foreach (var car in answer.Cars.Cars.Where(c => c.Films.Length < c.Passes.Length))
        {
            var left = Enumerable.Range(0, car.Passes.Length).Except(car.Films).Select(f => FilmWords.Speed(car.Passes[f].Speed)).ToList();
            yield return $"{car.Name}: pitch and level share are of {FilmWords.Speed(car.Speed)}; its "
                + $"{(left.Count == 1 ? "film" : "films")} at {SpeedRanges.And([.. left.Distinct()])} "
                + $"{(left.Count == 1 ? "is" : "are")} left out of them.";
        }

        foreach (var car in answer.Cars.Cars.Where(c => c.MayBeChanged))
        {
            yield return $"{car.Name}: its films at {FilmWords.Speed(car.Speed)} part by more than passes of one car do. If it was changed between "
                + "them, name it otherwise in the sheets after the change.";
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

        foreach (var remark in answer.Cars.Cars.SelectMany(c => c.Passes.SelectMany(p => p.Remarks).Distinct().Select(r => (Car: c, Says: r)))
            .GroupBy(r => r.Says))
        {
            var cars = remark.Select(r => r.Car).ToList();
            yield return $"{(cars.Count > 2 && cars.Count == answer.Cars.Cars.Length ? "All of them" : Named(cars))}: {remark.Key}";
        }
    }

    private static string Told(SeenCar car)
    {
        string Shown(double v) => Numeral.Of(In.DegreesFor100Millimetres.Of(v), 2);
        var n = car.PitchPerLift;
        return $"{car.Name} at {FilmWords.Speed(car.Speed)}, {Shown(n.Value)}° ({Shown(n.Low)} to {Shown(n.High)}°) for each 100 mm of lift";
    }
}
