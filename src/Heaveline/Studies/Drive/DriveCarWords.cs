using System.Globalization;
using Heaveline.Answers;
using Heaveline.Drives;
using Heaveline.Drives.Identification;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>The car that a drive tells, in words.</summary>
internal static class DriveCarWords
{
    // Where a value differs by less than this from the file's, nothing is made of it.
    private const double Nothing = 0.01;

    private const string OfMotion = "car-of-the-motion";
    private const string Untested = "car-untested";
    private const string OneLine = "car-one-line";
    private const string FileLoad = "car-file-load";

    /// <summary>Whether the drive tells the car: its numbers, or the reason that weighs most and what would tell.</summary>
    /// <param name="verdict">Whether the log bears it.</param>
    /// <param name="car">The car; null where none was looked for.</param>
    public static string Verdict(TrustVerdict verdict, CarFromDrive? car) => (verdict.Level, car) switch
    {
        (TrustLevel.None, _) => $"no. {verdict.Reason}",
        (TrustLevel.Good, null) => $"good. {verdict.Reason}",
        (_, null) => $"with limits. {verdict.Reason}",
        (_, { IsBelieved: false, Refusals: [{ Kind: RefusalKind.Wheelbase } asked, ..] }) => $"not told yet. {Together(asked)} {verdict.Reason}",
        (_, { IsBelieved: false, Refusals: [var first, ..] }) => $"not told by this drive. {Together(first)}",
        (TrustLevel.Good, _) => $"told. {Found(car!)}",
        _ => $"told, with limits. {verdict.Reason} {Found(car!)}",
    };

    private static string Found(CarFromDrive car)
    {
        string Part(CarNumber number, string name) => car.Of(number) is { IsSaid: true } e ? $"{name} {Shown(e)}" : "";
        string[] parts =
        [
            Part(CarNumber.FrontFrequency, "front"), Part(CarNumber.RearFrequency, "rear"), Part(CarNumber.FrequencyRatio, "ratio"),
            Part(CarNumber.FrontDamping, "front damping"), Part(CarNumber.RearDamping, "rear damping"), Part(CarNumber.PitchIndex, "dynamic index"),
        ];
        return $"Found from {Windows(car)}: {string.Join(", ", parts.Where(p => p.Length > 0))}, {Motion(car)}.";
    }

    /// <summary>What of it is said on one screen: from which bumps it was sought, what else speaks against it, what the numbers are.</summary>
    /// <param name="answer">What the drive says.</param>
    public static IEnumerable<Sentence> Short(DriveAnswer answer)
    {
        if (answer.Identified is not { } car)
        {
            yield break;
        }

        foreach (var sentence in Sought(answer, car))
        {
            yield return sentence;
        }

        if (!car.IsBelieved)
        {
            foreach (var refusal in car.Refusals.Skip(1).Where(r => r.Kind != RefusalKind.NotLearned))
            {
                yield return new Sentence($"car-{Key(refusal.Kind)}", Together(refusal));
            }

            yield break;
        }

        foreach (var sentence in Of(answer).Where(s => s.Id is FileLoad or "car-not-learned" or OfMotion or OneLine or Untested))
        {
            yield return sentence;
        }
    }

    /// <summary>All that is to be said beside the verdict.</summary>
    /// <param name="answer">What the drive says.</param>
    public static IEnumerable<Sentence> Of(DriveAnswer answer)
    {
        var (car, beside) = (answer.Identified!, answer.Beside);
        foreach (var sentence in Sought(answer, car))
        {
            yield return sentence;
        }

        foreach (var refusal in car.Refusals.Skip(car.IsBelieved ? 0 : 1))
        {
            yield return new Sentence($"car-{Key(refusal.Kind)}", Together(refusal));
        }

        if (!car.IsBelieved)
        {
            yield break;
        }

        if (beside is not null && answer.Asked.Car is { } asked)
        {
            yield return new Sentence(
                FileLoad,
                $"The car file beside it is {asked.Car.Name} under the load '{asked.Load.Name}'. Was it driven under another load, its numbers are "
                + "others (--load).");
        }

        yield return new Sentence(
            OfMotion,
            "These are intervals of the linear car that moves most like this one did. They are not intervals of springs and dampers: "
            + "friction raises the damping, by half and more on low bumps, and the frequencies by several per cent, more where a stop is pressed; "
            + "dampers that grow softer with speed lower the damping.");
        if (answer is { Drive.SpeedScale: null, Events: { } events } && SpeedScale.Of(car, events) is { } speed)
        {
            yield return new Sentence(
                "car-speed",
                "The delay between its axles checks the log's speed: by these passes a record that is off by less than "
                + Text($"{In.Percent.Of(speed.Noticed):F1} % is not noticed, and lengths of bumps and stretches of road are off with it."));
        }

        if (car.Windows.All(w => w.Site is not null) && car.Windows.Select(w => w.Site).Distinct().Count() == 1)
        {
            yield return new Sentence(
                OneLine,
                "All of its bumps are passes over one line of one road. They share that line's roughness, which more passes do not average away and "
                + "the intervals do not hold: dampings most of all may lie outside. Passes over a second bump would tell.");
        }

        yield return new Sentence(
            Untested,
            "Planted drives have tested this, no real drive whose car is known: compare drives with each other rather than with a drawing.");
        foreach (var number in beside is null ? [] : CarNumbers.Headlines)
        {
            if (car.Of(number) is { IsSaid: true } e && beside!.Of(number) is { } file)
            {
                yield return new Sentence($"car-beside-{DriveCarTable.Of(number).Key}", Beside(number, e, file, beside.DoubtOf(number)));
            }
        }
    }

    /// <summary>Its motion, as it stands with every claim.</summary>
    public static string Motion(CarFromDrive car) => Text(
        $"of the motion: damper speeds about {Rounded(car.TravelSpeed)} m/s, pitch {In.Degrees.Of(car.PitchMotion):F1}° (RMS)");

    // The file's number is no more exact than its springs and dampers are said to be.
    private static string Beside(CarNumber number, CarEstimate estimate, double file, FileDoubt doubt)
    {
        var measure = DriveCarTable.Of(number);
        var off = (estimate.Value / file) - 1.0;
        var name = FirstLetter.Raised(measure.Name);
        var of = measure.Unit.Symbol is { Length: > 1 } unit ? $" {unit}" : "";
        string Print(double value) => measure.Print(measure.Unit.Of(value)) + of;
        var known = doubt.HalfWidth <= 0.0 ? Print(file)
            : Text($"{Print(file)} (± {In.Percent.Of(doubt.HalfWidth):F0} %")
                + $"{(doubt.Silent.IsEmpty ? "" : ", of which the file does not state all")})";
        var isWithin = file >= estimate.Low && file <= estimate.High;
        if (Math.Abs(off) < Nothing || isWithin)
        {
            return Text($"{name}: {Print(estimate.Value)}; ")
                + Text($"the car file's {known} lies {(isWithin ? "within" : "beside")} the interval.");
        }

        var own = 0.5 * Math.Log(estimate.High / estimate.Low);
        if (Math.Abs(Math.Log(estimate.Value / file)) <= Math.Sqrt((own * own) + (doubt.HalfWidth * doubt.HalfWidth)))
        {
            return Text($"{name}: {Print(estimate.Value)}, {100.0 * Math.Abs(off):F0} % {(off > 0.0 ? "above" : "below")} the car file's {known}: ")
                + "no more than both doubts together leave open.";
        }

        var why = number switch
        {
            CarNumber.FrontFrequency or CarNumber.RearFrequency when off > 0.0 =>
                "friction, a progressive spring or a stop that is reached",
            CarNumber.FrontFrequency or CarNumber.RearFrequency =>
                "a softer spring, another tyre, or more load on the axle than that load of the file",
            CarNumber.FrontDamping or CarNumber.RearDamping when off < 0.0 => "dampers that grow softer with speed, or weaker ones",
            CarNumber.FrontDamping or CarNumber.RearDamping => "friction, or stronger dampers",
            CarNumber.FrequencyRatio => "one axle differs from its file more than the other",
            _ => "the load is another than that of the file or lies otherwise, or its pitch inertia is another",
        };
        return Text(
            $"{name}: {Print(estimate.Value)}, {100.0 * Math.Abs(off):F0} % {(off > 0.0 ? "above" : "below")} the car file's {known}: {why}.");
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

    // From which of the bumps that count, and why not from the others.
    private static IEnumerable<Sentence> Sought(DriveAnswer answer, CarFromDrive car)
    {
        if (answer.Events is not { } events || car.Windows.IsEmpty)
        {
            yield break;
        }

        HashSet<int> numbers = [.. car.Windows.Where(w => w.Site is not null).Select(w => w.Event)];
        var (rough, kept) = (car.Windows.Count(w => w.Site is null), events.Kept.Count());
        var roads = rough == 0 ? "" : Text($"{(numbers.Count > 0 ? " and " : "")}{rough} stretch{(rough == 1 ? "" : "es")} of 5 s of rough road");
        var bumps = numbers.Count == 0 ? ""
            : numbers.Count == kept ? (kept == 1 ? "the one bump that counts" : Text($"the {kept} bumps that count"))
            : numbers.Count <= 6 ? BumpLines.Named(events.Events.Where(e => numbers.Contains(e.Number))) + Text($" of the {kept} that count")
            : Text($"{numbers.Count} of the {kept} bumps that count");
        string[] others = [.. DriveWindows.LeftOut(answer.Drive, events).GroupBy(l => l.Reason)
            .Select(g => $"{BumpLines.Named(g.Select(l => l.Bump))} ({g.Key})")];
        yield return new Sentence(
            "car-sought", $"The car was sought from {bumps}{roads}{(others.Length == 0 ? "" : $"; left out: {string.Join(", ", others)}")}.");
    }

    /// <summary>A refusal with what would tell.</summary>
    internal static string Together(CarRefusal refusal) => $"{refusal.Says} {refusal.WouldTell}".TrimEnd();

    private static string Key(RefusalKind kind) => string.Concat(
        kind.ToString().Select((c, i) => char.IsUpper(c) && i > 0 ? $"-{char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}"));

    private static string Rounded(double speed) => speed.ToString("G2", CultureInfo.InvariantCulture);
}
