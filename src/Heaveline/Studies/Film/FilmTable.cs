using Heaveline.Answers;
using Heaveline.Drives.Identification;
using Heaveline.Films;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The numbers of films.</summary>
public static class FilmTable
{
    private const string Page = "theory/films.md";

    private static readonly Measure<FilmNumbers> Heave = Number("heave-share", "level share, first second", In.Percent, 0, n => n.HeaveShare,
        "Share of the ends' mean square motion in the first second after the rear wheels have left that is level, h²/(h² + (½·L·θ)²), h midway "
        + "between the axles.");

    private static readonly Measure<FilmNumbers> Centre = Number("centre", "turns about, behind the front axle", In.Metres, 2, n => n.Centre,
        "Where the body turns about in that second: the point at rest of the straight line nearest to both ends' motion; ahead of the front axle "
            + "is negative.");

    private static readonly Measure<FilmNumbers> PerLift = Number("pitch-per-lift", "settling pitch for the lift", In.DegreesFor100Millimetres, 2,
        n => n.PitchPerLift,
        "RMS pitch in the first second of the settling over the greatest height that the wheels are lifted to.") with
    { Better = Better.Less };

    private static readonly Measure<SeenPass>[] OfFilm =
    [
        Pass("speed", "speed", In.KilometresPerHour, 1, p => p.Speed, "Speed over the bump by the way of the hubs, the wheelbase its ruler.") with
        {
            Name = "speed in the film",
        },
        Pass("speed-by-delay", "speed by the axles' delay", In.KilometresPerHour, 1, p => p.SpeedByDelay,
            "Wheelbase over the time between both axles on the bump: it needs no scale."),
        Pass("lift", "lift of the wheels", In.Millimetres, 0, p => p.Lift, "Greatest height of the hubs over the bump, mean of both axles; below "
            + "zero in a dip."),
        Pass("reach", "seen after the bump", In.Seconds, 2, p => p.Reach, "From the rear wheels' leaving until the car is no longer whole in the "
            + "picture."),
        Pass("scale", "pixels a metre", In.Plain, 1, p => p.PixelsPerMetre, "Scale over the bump, upright."),
        Pass("scale-doubt", "doubt of the scale, ±", In.Percent, 1, p => p.ScaleDoubt, "Wheelbase, marks and a view aslant, nine cases of ten."),
        Pass("wheel-noise", "noise of a wheel's height", In.Millimetres, 1, p => p.WheelNoise, "Standard deviation from frame to frame."),
        Pass("pitch-noise", "noise of the pitch", In.Degrees, 3, p => p.PitchNoise, "Standard deviation from frame to frame."),
        Pass("slowness", "played slower than taken by", In.Plain, 0, p => p.Slowness, "How many times slower the film is played."),
        Pass("frame-rate", "frames a second", In.Plain, 0, p => p.FrameRate, "As they were taken."),
        Pass("points", "points of the body followed", In.Plain, 0, p => p.Points, "Middle number of the points that move as one."),
    ];

    private static readonly Measure<Func<CarNumber, double>>[] OfCar =
    [
        Car("front-frequency", "front frequency as filmed", In.Hertz, 2, CarNumber.FrontFrequency,
            "Frequency on rigid tyres of the sprung mass on the front axle over the stiffness that the motion of the films shows."),
        Car("rear-frequency", "rear frequency as filmed", In.Hertz, 2, CarNumber.RearFrequency,
            "Frequency on rigid tyres of the sprung mass on the rear axle over the stiffness that the motion of the films shows."),
        Car("ratio", "frequency ratio as filmed, rear over front", In.Plain, 3, CarNumber.FrequencyRatio, "Rear over front frequency as filmed."),
        Car("front-damping", "front damping ratio as filmed", In.Plain, 2, CarNumber.FrontDamping,
            "c/(2√(k·m)) of dampers and friction together in the motion of the films."),
        Car("rear-damping", "rear damping ratio as filmed", In.Plain, 2, CarNumber.RearDamping,
            "c/(2√(k·m)) of dampers and friction together in the motion of the films."),
        Car("index", "dynamic index as filmed", In.Plain, 2, CarNumber.PitchIndex,
            "Pitch inertia of the sprung mass over its mass and both distances to the axles."),
    ];

    /// <summary>All that the tables hold, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [Heave, Centre, PerLift, .. OfFilm, .. OfCar];

    /// <summary>The measure of a number of the car.</summary>
    public static Measure Of(CarNumber number) => OfCar[(int)number];

    /// <summary>The tables of one car.</summary>
    public static IReadOnlyList<FactTable> Of(FilmAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var (numbers, forecast) = (answer.Car.Numbers[answer.Shown], answer.Forecast);
        List<string> columns = ["film", "from", "to", .. forecast?.Pass is null ? Array.Empty<string>() : ["car file"]];
        var which = answer.Car.Passes.Length > 1 ? $"Film {answer.Shown + 1}, {FilmWords.Speed(answer.Car.Passes[answer.Shown].Speed)}" : "The pass";
        var pass = new FactTable($"{which} (90 %)", columns);
        // What was seen of a first second is not that second.
        var span = $"first {Numeral.Of(numbers.Reach, 2)} s";
        FactTable AsSeen(Measure m, IEnumerable<double> row) => numbers.IsSecondSeen || !m.Label.Contains("first second", StringComparison.Ordinal)
            ? pass.Add(m, row)
            : pass.Add(m.Key, m.Label.Replace("first second", span, StringComparison.Ordinal), m.Unit.Symbol, m.Format, row.Select(m.Shown));
        foreach (var n in numbers.OfPitch)
        {
            // No time, count or root mean square of a settling lies below nothing; what was not seen whole has no car's number beside it.
            var isSettling = n.Measure.Key.StartsWith("settling", StringComparison.Ordinal);
            var low = n.Value - n.HalfWidth;
            AsSeen(n.Measure, Row(
                n.Value, isSettling ? Math.Max(0.0, low) : low, n.Value + n.HalfWidth,
                forecast?.Pass is null ? null : isSettling && !numbers.IsSecondSeen ? double.NaN : forecast.Of(n.Measure.Key)));
        }

        foreach (var (measure, n) in new[] { (Heave, numbers.HeaveShare), (Centre, numbers.Centre), (PerLift, numbers.PitchPerLift) })
        {
            AsSeen(measure, Row(n.Value, n.Low, n.High, forecast?.Pass is null ? null : double.NaN));
        }

        var films = new FactTable("The film", [.. answer.Car.Passes.Select((_, k) => answer.Car.Passes.Length > 1 ? $"film {k + 1}" : "value")])
            .Add(OfFilm, answer.Car.Passes);
        List<FactTable> all = [pass, CarTable(answer), .. answer.Car.Car.IsBelieved ? new[] { Learned(answer.Car.Car) } : [], films];
        if (answer is { After: { } after, Change: { } change })
        {
            var table = new FactTable("Before and after (90 %)", ["before", "after", "change, %", "from", "to"]);
            double?[] Percent(FilmNumber n) => [.. new[] { n.Value, n.Low, n.High }.Select(v => (double?)In.Percent.Of(v - 1.0))];
            void Add(Measure m, double before, double then, FilmNumber c) => table.Add(
                m.Key + "-change", m.Label, m.Unit.Symbol, m.Format, [m.Unit.Of(before), m.Unit.Of(then), .. Percent(c)]);
            Add(PerLift, change.Before, change.After, change.Settling);
            foreach (var (number, c) in change.OfCar.Where(c => c.Number != CarNumber.PitchIndex))
            {
                Add(Of(number), answer.Car.Car.Of(number)!.Value, after.Car.Of(number)!.Value, c);
            }

            all.Insert(0, table);
        }

        return all;
    }

    /// <summary>Cars at one place, a column a car.</summary>
    public static FactTable List(SeenList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        var table = new FactTable("Seen at this bump (90 %)", [.. list.Cars.Select(c => c.Name)]);
        void Add(Measure m, Func<SeenCar, FilmNumber> of)
        {
            table.Add(m, list.Cars.Select(c => of(c).Value));
            table.Add(m.Key + "-low", $"{m.Label}: from", m.Unit.Symbol, m.Format, list.Cars.Select(c => m.Shown(of(c).Low)));
            table.Add(m.Key + "-high", $"{m.Label}: to", m.Unit.Symbol, m.Format, list.Cars.Select(c => m.Shown(of(c).High)));
        }

        table.Add(OfFilm[0], list.Cars.Select(c => c.Speed));
        Add(PerLift, c => c.PitchPerLift);
        Add(Heave, c => c.HeaveShare);
        foreach (var number in new[] { CarNumber.FrontFrequency, CarNumber.RearFrequency, CarNumber.FrequencyRatio })
        {
            Add(Of(number), c => c.Car.Of(number) is { IsSaid: true } e
                ? new FilmNumber(e.Value, e.Low, e.High) : new FilmNumber(double.NaN, double.NaN, double.NaN));
        }

        return table;
    }

    private static FactTable CarTable(FilmAnswer answer)
    {
        var (car, beside) = (answer.Car.Car, answer.Forecast?.Beside);
        var title = car.IsBelieved ? "The car between its wheels, of this motion (90 %)" : "The car between its wheels: not believed";
        List<string> columns = car.IsBelieved ? ["found", "from", "to"] : ["not believed"];
        columns.AddRange(beside is null ? [] : ["car file"]);
        var table = new FactTable(title, columns);
        foreach (var e in car.Estimates)
        {
            var m = Of(e.Number);
            var isShown = e.IsSaid || !car.IsBelieved;
            double[] found = car.IsBelieved ? isShown ? [e.Value, e.Low, e.High] : [double.NaN, double.NaN, double.NaN] : [e.Value];
            table.Add(m, [.. found, .. beside is null ? Array.Empty<double>() : [beside.Of(e.Number) ?? double.NaN]]);
        }

        return table;
    }

    private static FactTable Learned(CarFromFilm car)
    {
        var table = new FactTable("Learned", ["of its doubt"]);
        foreach (var e in car.Estimates)
        {
            var measure = Of(e.Number);
            table.Add($"{measure.Key}-learned", measure.Label, In.Percent.Symbol, "F0", [In.Percent.Of(e.Learned)]);
        }

        return table;
    }

    private static IEnumerable<double> Row(double value, double low, double high, double? forecast) =>
        forecast is { } f ? [value, low, high, f] : [value, low, high];

    private static Measure<FilmNumbers> Number(string key, string label, ShownUnit unit, int digits, Func<FilmNumbers, FilmNumber> of, string says) =>
        new($"film-{key}", label, unit, digits, n => of(n).Value, says) { Page = Page };

    private static Measure<SeenPass> Pass(string key, string label, ShownUnit unit, int digits, Func<SeenPass, double> of, string says) =>
        new($"film-{key}", label, unit, digits, of, says) { Page = Page };

    private static Measure<Func<CarNumber, double>> Car(string key, string label, ShownUnit unit, int digits, CarNumber number, string says) =>
        new($"filmed-{key}", label, unit, digits, side => side(number), says) { Page = Page };
}
