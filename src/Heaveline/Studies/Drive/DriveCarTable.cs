using Heaveline.Answers;
using Heaveline.Drives.Identification;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>
/// The car that a drive tells, in tables: the numbers with their intervals, beside them those of a car file and what was thought before.
/// </summary>
public static class DriveCarTable
{
    private const string Page = "theory/identification.md";

    private const string Untested = "Its range is not one of 90 %: planted drives have not borne it out.";

    // The first of all: frequencies, their ratio, damping, index.
    private const int Headlines = 6;

    private static readonly Measure<Func<CarNumber, double>>[] All =
    [
        Of(CarNumber.FrontFrequency, "front-frequency", "front frequency as driven", In.Hertz, 3,
            "Frequency on rigid tyres of the sprung mass on the front axle over the stiffness that the motion of the drive shows."),
        Of(CarNumber.RearFrequency, "rear-frequency", "rear frequency as driven", In.Hertz, 3,
            "Frequency on rigid tyres of the sprung mass on the rear axle over the stiffness that the motion of the drive shows."),
        Of(CarNumber.FrequencyRatio, "ratio", "frequency ratio as driven, rear over front", In.Plain, 3,
            "Rear over front frequency as driven: surer than either."),
        Of(CarNumber.FrontDamping, "front-damping", "front damping ratio as driven", In.Plain, 3,
            "c/(2√(k·m)) of the damping that the motion of the drive shows, with stiffness and sprung mass of the axle."),
        Of(CarNumber.RearDamping, "rear-damping", "rear damping ratio as driven", In.Plain, 3,
            "c/(2√(k·m)) of the damping that the motion of the drive shows, with stiffness and sprung mass of the axle."),
        Of(
            CarNumber.PitchIndex,
            "index",
            "dynamic index as driven",
            In.Plain,
            3,
            "Pitch inertia of the sprung mass over its mass and both distances to the axles."),
        Of(
            CarNumber.FirstModeFrequency,
            "first-mode",
            "slower body mode as driven",
            In.Hertz,
            3,
            "|λ|/2π of the slower mode of body and wheels together."),
        Of(CarNumber.FirstModeDamping, "first-mode-damping", "its damping ratio", In.Plain, 3, "−Re λ/|λ| of that mode.") with
        {
            Name = "damping ratio of the slower body mode",
        },
        Of(CarNumber.SecondModeFrequency, "second-mode", "faster body mode as driven", In.Hertz, 3, "|λ|/2π of the next mode."),
        Of(CarNumber.SecondModeDamping, "second-mode-damping", "its damping ratio", In.Plain, 3, "−Re λ/|λ| of that mode.") with
        {
            Name = "damping ratio of the faster body mode",
        },
        Of(CarNumber.FrontHop, "front-hop", "front wheel on its tyre (range not at 90 %)", In.Hertz, 1,
            $"Frequency of the front unsprung mass on its tyre alone. {Untested}") with
        {
            Name = "front wheel on its tyre",
        },
        Of(CarNumber.RearHop, "rear-hop", "rear wheel on its tyre (range not at 90 %)", In.Hertz, 1,
            $"Frequency of the rear unsprung mass on its tyre alone. {Untested}") with
        {
            Name = "rear wheel on its tyre",
        },
    ];

    private static readonly Measure<CarFromDrive>[] OfMotion =
    [
        Motion("travel-speed", "speed of the dampers (RMS)", In.MetresPerSecond, 2, c => c.TravelSpeed,
            "Root mean square over the bumps, from first touch to a second after the rear wheels' leaving, front and rear together: "
            + "the motion that the numbers hold for."),
        Motion("pitch", "pitch (RMS)", In.Degrees, 2, c => c.PitchMotion, "The same of pitch."),
        Motion("roughness", "roughness of the road, G(0.1)", In.MillionthsOfCubicMetres, 0, c => c.Roughness,
            "Displacement density at 0.1 cycles per metre: 16 is class A of ISO 8608, 64 class B."),
        Motion("gyro-gain", "gain of the gyro over the accelerometer's", In.Plain, 3, c => c.GyroGain,
            "By how much the pitch rate is larger than the vertical acceleration asks for."),
    ];

    /// <summary>All that the tables hold, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. All, .. OfMotion];

    /// <summary>The measure of a number.</summary>
    public static Measure Of(CarNumber number) => All[(int)number];

    /// <summary>The tables; none where nothing was fitted.</summary>
    /// <param name="car">The car.</param>
    /// <param name="beside">The car file's numbers; null: none.</param>
    public static IReadOnlyList<FactTable> Of(CarFromDrive car, CarBeside? beside)
    {
        ArgumentNullException.ThrowIfNull(car);
        if (car.Estimates.IsEmpty)
        {
            return [];
        }

        var columns = Columns(car, beside);
        columns.Add(("thought from", n => car.Of(n)!.KnownLow));
        columns.Add(("to", n => car.Of(n)!.KnownHigh));
        var table = new FactTable("The car, of this motion (90 %)", [.. columns.Select(c => c.Head)]).Add(All, [.. columns.Select(c => c.Of)]);
        var motion = new FactTable("What it holds for", ["value"]).Add(OfMotion, [car]);
        return !car.IsBelieved ? [table, motion] : [table, motion, Correlations(car)];
    }

    /// <summary>The six numbers that matter most, where they are believed.</summary>
    /// <param name="car">The car.</param>
    /// <param name="beside">The car file's numbers; null: none.</param>
    public static FactTable Short(CarFromDrive car, CarBeside? beside)
    {
        ArgumentNullException.ThrowIfNull(car);
        List<(string Head, Func<CarNumber, double> Of)> columns = car.IsBelieved ? Columns(car, beside) : [];
        var table = new FactTable("The car, of this motion (90 %)", [.. columns.Select(c => c.Head)]);
        return columns.Count == 0 ? table : table.Add(All.Take(Headlines), [.. columns.Select(c => c.Of)]);
    }

    private static List<(string Head, Func<CarNumber, double> Of)> Columns(CarFromDrive car, CarBeside? beside)
    {
        double Said(CarNumber number, Func<CarEstimate, double> of) => car.Of(number) is { } e && (e.IsSaid || !car.IsBelieved) ? of(e) : double.NaN;
        List<(string Head, Func<CarNumber, double> Of)> columns = car.IsBelieved
            ? [("found", n => Said(n, e => e.Value)), ("from", n => Said(n, e => e.Low)), ("to", n => Said(n, e => e.High))]
            : [("not believed", n => Said(n, e => e.Value))];
        if (beside is not null)
        {
            columns.Add(("car file", n => beside.Of(n) ?? double.NaN));
        }

        return columns;
    }

    private static FactTable Correlations(CarFromDrive car)
    {
        CarNumber[] shown =
        [
            CarNumber.FrontFrequency, CarNumber.RearFrequency, CarNumber.FrequencyRatio, CarNumber.FrontDamping, CarNumber.RearDamping,
            CarNumber.PitchIndex,
        ];
        var table = new FactTable("Correlation of errors with", ["front f", "rear f", "ratio", "front ζ", "rear ζ", "index"]);
        foreach (var number in shown)
        {
            var (row, measure) = (car.Correlations[(int)number], Of(number));
            table.Add($"{measure.Key}-correlation", measure.Label, "", "F2", shown.Select(n => (double?)row[(int)n]));
        }

        return table;
    }

    private static Measure<Func<CarNumber, double>> Of(CarNumber number, string key, string label, ShownUnit unit, int digits, string says) =>
        new($"driven-{key}", label, unit, digits, side => side(number), says) { Page = Page };

    private static Measure<CarFromDrive> Motion(
        string key, string label, ShownUnit unit, int digits, Func<CarFromDrive, double> of, string says) =>
        new($"driven-{key}", label, unit, digits, of, says) { Page = Page };
}
