using System.Globalization;
using Heaveline.Answers;
using Heaveline.Drives.Identification;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The car that a drive tells, in words.</summary>
internal static class DriveCarWords
{
    // Where a value differs by less than this from the file's, nothing is made of it.
    private const double Nothing = 0.01;

    /// <summary>What stands with the verdict on the log: the numbers, or the first refusal.</summary>
    public static string Found(CarFromDrive car)
    {
        if (!car.IsBelieved)
        {
            return car.Refusals is [var first, ..] ? Together(first) : "";
        }

        string Part(CarNumber number, string name) => car.Of(number) is { IsSaid: true } e ? $"{name} {Shown(e)}" : "";
        string[] parts =
        [
            Part(CarNumber.FrontFrequency, "front"), Part(CarNumber.RearFrequency, "rear"), Part(CarNumber.FrequencyRatio, "ratio"),
            Part(CarNumber.FrontDamping, "front damping"), Part(CarNumber.RearDamping, "rear damping"), Part(CarNumber.PitchIndex, "dynamic index"),
        ];
        return $"Found from {Windows(car)}: {string.Join(", ", parts.Where(p => p.Length > 0))}, {Motion(car)}.";
    }

    /// <summary>All else that is to be said.</summary>
    /// <param name="car">The car.</param>
    /// <param name="beside">The car file's numbers; null: none.</param>
    public static IEnumerable<Sentence> Of(CarFromDrive car, CarBeside? beside)
    {
        foreach (var refusal in car.Refusals.Skip(car.IsBelieved ? 0 : 1))
        {
            yield return new Sentence($"car-{Key(refusal.Kind)}", Together(refusal));
        }

        if (!car.IsBelieved)
        {
            yield break;
        }

        yield return new Sentence(
            "car-of-the-motion",
            "These are intervals of the linear car that moves most like this one did. They are not intervals of springs and dampers: "
            + "friction raises the damping, by half and more on low bumps, and with stops the frequencies; "
            + "dampers that grow softer with speed lower the damping.");
        yield return new Sentence(
            "car-untested",
            "Planted drives have tested this, no real drive whose car is known: compare drives with each other rather than with a drawing.");
        foreach (var number in beside is null ? [] : CarNumbersShown)
        {
            if (car.Of(number) is { IsSaid: true } e && beside!.Of(number) is { } file)
            {
                yield return new Sentence($"car-beside-{DriveCarTable.Of(number).Key}", Beside(number, e, file));
            }
        }
    }

    /// <summary>Its motion, as it stands with every claim.</summary>
    public static string Motion(CarFromDrive car) => Text(
        $"of the motion: damper speeds about {Rounded(car.TravelSpeed)} m/s, pitch {In.Degrees.Of(car.PitchMotion):F1}° (RMS)");

    private static IReadOnlyList<CarNumber> CarNumbersShown { get; } =
    [
        CarNumber.FrontFrequency, CarNumber.RearFrequency, CarNumber.FrequencyRatio, CarNumber.FrontDamping, CarNumber.RearDamping,
        CarNumber.PitchIndex,
    ];

    private static string Beside(CarNumber number, CarEstimate estimate, double file)
    {
        var measure = DriveCarTable.Of(number);
        var off = (estimate.Value / file) - 1.0;
        var name = FirstLetter.Raised(measure.Name);
        var of = measure.Unit.Symbol is { Length: > 1 } unit ? $" {unit}" : "";
        string Print(double value) => measure.Print(measure.Unit.Of(value)) + of;
        if (Math.Abs(off) < Nothing || (file >= estimate.Low && file <= estimate.High))
        {
            return Text($"{name}: {Print(estimate.Value)}; ")
                + Text($"the car file's {Print(file)} lies {(file >= estimate.Low && file <= estimate.High ? "within" : "beside")} the interval.");
        }

        var why = number switch
        {
            CarNumber.FrontFrequency or CarNumber.RearFrequency when off > 0.0 =>
                "friction, a progressive spring or a stop that is reached; gentle and violent passes apart would show which",
            CarNumber.FrontFrequency or CarNumber.RearFrequency => "a softer spring, more load on the axle, or another tyre than in the file",
            CarNumber.FrontDamping or CarNumber.RearDamping when off < 0.0 => "dampers that grow softer with speed, or weaker ones",
            CarNumber.FrontDamping or CarNumber.RearDamping => "friction, or stronger dampers",
            CarNumber.FrequencyRatio => "one axle differs from its file more than the other",
            _ => "the load lies otherwise than in the file, or its pitch inertia is another",
        };
        return Text(
            $"{name}: {Print(estimate.Value)}, {100.0 * Math.Abs(off):F0} % {(off > 0.0 ? "above" : "below")} the car file's {Print(file)}: {why}.");
    }

    private static string Shown(CarEstimate estimate)
    {
        var measure = DriveCarTable.Of(estimate.Number);
        var half = 50.0 * (estimate.High - estimate.Low) / estimate.Value;
        var unit = measure.Unit.Symbol is { Length: > 1 } symbol ? $" {symbol}" : "";
        return Text($"{measure.Print(measure.Unit.Of(estimate.Value))}{unit} ± {half:F1} %");
    }

    private static string Windows(CarFromDrive car)
    {
        var bumps = car.Windows.Count(w => w.Site is not null);
        var (slow, fast) = (car.Windows.Min(w => w.Speed), car.Windows.Max(w => w.Speed));
        var what = bumps > 0 ? Text($"{bumps} bumps") : Text($"{car.Windows.Length} stretches of rough road");
        return Text($"{what} at {In.KilometresPerHour.Of(slow):F0} to {In.KilometresPerHour.Of(fast):F0} km/h");
    }

    private static string Together(CarRefusal refusal) => $"{refusal.Says} {refusal.WouldTell}".TrimEnd();

    private static string Key(RefusalKind kind) => string.Concat(
        kind.ToString().Select((c, i) => char.IsUpper(c) && i > 0 ? $"-{char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}"));

    private static string Rounded(double speed) => speed.ToString("G2", CultureInfo.InvariantCulture);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
