using Heaveline.Answers;
using Heaveline.Drives.Identification;
using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What films of one car tell, in words.</summary>
internal static class FilmWords
{
    /// <summary>What the intervals are of.</summary>
    public const string Meaning =
        "Intervals are nine cases of ten on planted films of the cars that come with this program; no film of a real car has tested them yet. "
        + "The car's numbers are those of the motion that was filmed.";

    /// <summary>One line for the end of a printout.</summary>
    public const string Safety =
        "Film from where you may stand, off the carriageway and in nobody's way; nobody is asked to drive over a bump faster than traffic and "
            + "law allow.";

    // From here on two wheelbases, or two lifts, are not those of one car or one bump, as shares: more than tapes and films are off.
    private const double OtherWheelbase = 0.02;
    private const double OtherLift = 0.3;

    private static readonly CarNumber[] Damping = [CarNumber.FrontDamping, CarNumber.RearDamping];

    /// <summary>What was seen where.</summary>
    public static string Head(FilmAnswer answer)
    {
        var (car, pass) = (answer.Car, answer.Car.Passes[answer.Shown]);
        var speeds = car.Passes.Select(p => Speed(p.Speed)).Distinct().ToList();
        var at = car.Place.Length > 0 ? $" at {car.Place}" : "";
        var asPlayed = car.MayBeSlowMotion ? " as played" : "";
        return $"{car.Name}{at}, {Count(car.Passes.Length)} at {string.Join(", ", speeds)}{asPlayed}, wheels lifted {Millimetres(pass.Lift)}"
            + $"{(car.Passes.Length > 1 ? $"; numbers of one pass are those of film {answer.Shown + 1}, at {Sharp(pass.Speed)}" : "")}.";
    }

    /// <summary>The sentences: the finding first.</summary>
    public static IEnumerable<Sentence> Of(FilmAnswer answer)
    {
        var (car, numbers) = (answer.Car, answer.Car.Numbers[answer.Shown]);
        if ((car.MayBeSlowMotion ? car : answer.After is { MayBeSlowMotion: true } then ? then : null) is { } slow)
        {
            yield return new("film-slow", SlowMotion(slow));
        }

        yield return new("film-heave", HeaveWords.Says(numbers));
        if (answer is { Change: { } change, After: { } after })
        {
            yield return new("film-change", Changed(change, car, after));
        }

        if (Others(answer) is { Length: > 0 } others)
        {
            yield return new("film-heave-others", others);
        }

        if (numbers.Settling is { } settling)
        {
            yield return new(
                "film-settling",
                $"RMS pitch in {HeaveWords.Span(numbers)} is {Degrees(settling.Value)} ± {Degrees(settling.HalfWidth)}; {Still(numbers)}");
        }

        if (double.IsFinite(numbers.Centre.Value) && double.IsFinite(numbers.HeaveShare.Value)
            && 0.5 * (numbers.Centre.High - numbers.Centre.Low) < car.Passes[answer.Shown].Wheelbase)
        {
            yield return new("film-centre", About(numbers, car.Passes[answer.Shown].Wheelbase));
        }

        // What is no car's motion as it is played says nothing of the car.
        foreach (var sentence in car is { MayBeSlowMotion: true, Car.IsBelieved: false } ? [] : CarSentences(car))
        {
            yield return sentence;
        }

        if (answer.Forecast is { } forecast)
        {
            yield return new("film-forecast", Beside(forecast, car, numbers));
        }
    }

    /// <summary>Where the film must be doubted, and how the next one would be better.</summary>
    public static IEnumerable<string> Cautions(FilmAnswer answer)
    {
        var films = answer.Car.Passes.Select((p, f) => (Pass: p, Name: $"Film {f + 1}{(answer.After is null ? "" : " before")}"))
            .Concat(answer.After?.Passes.Select((p, f) => (Pass: p, Name: $"Film {f + 1} after")) ?? []).ToList();
        foreach (var remark in films.SelectMany(f => f.Pass.Remarks.Select(r => (f.Name, Says: r))).GroupBy(r => r.Says))
        {
            yield return films.Count == 1 ? remark.Key : $"{SpeedRanges.And([.. remark.Select(r => r.Name).Distinct()])}: {remark.Key}";
        }

        if (answer is { Change: not null, After: { } late } && !FilmChange.AreSpeedsAlike(answer.Car, late))
        {
            yield return "Frequencies and dampings before and after are not set side by side: films of one side were driven at speeds that the other "
                + "has none of, and both change with the motion.";
        }

        if (answer is { Change: { } change, After: { } after } && Unpaired(change, answer.Car, after) is { Length: > 0 } unpaired)
        {
            yield return unpaired;
        }

        var shortest = answer.Car.Passes.MinBy(p => p.Reach)!;
        if (!HeaveWords.IsSecond(shortest.Reach))
        {
            yield return $"The car is seen for {Numeral.Of(shortest.Reach, 2)} s after the bump: stand back 20 to 30 m, aim 5 m beyond the bump, "
                + "hold level or use a stand, 60 frames a second or more, shutter short (common practice, no source).";
        }

        if (answer.Forecast is { } beside)
        {
            foreach (var caution in Unlike(beside, answer.Car.Passes[answer.Shown]))
            {
                yield return caution;
            }
        }

        if (answer.Forecast is { Pass: null })
        {
            yield return "The car file is not driven: name the bump that was filmed with --over.";
        }
    }

    /// <summary>"25 km/h".</summary>
    public static string Speed(double v) => $"{Numeral.Of(In.KilometresPerHour.Of(v), 0)} km/h";

    /// <summary>"one film", "2 films".</summary>
    /// <param name="films">How many.</param>
    public static string Count(int films) => films == 1 ? "one film" : $"{films} films";

    /// <summary>"front 1.21 Hz (1.19 to 1.23 Hz)".</summary>
    public static string Interval(Func<double, string> shown, double value, double low, double high) =>
        $"{shown(value)} ({shown(low)} to {shown(high)})";

    /// <summary>That a film may be slow motion, and by how much all that has time in it would be off then.</summary>
    /// <param name="car">The car that it shows.</param>
    public static string SlowMotion(SeenCar car)
    {
        var pass = car.Passes.Where(p => !p.IsTimeSaid).MinBy(p => p.Speed)!;
        return $"Nobody said how fast the car went, and as the film is played it goes {Speed(pass.Speed)}. If it is slow motion (120 or 240 frames a "
            + $"second kept as 30: 4 or 8 times slower), the car went {Speed(4.0 * pass.Speed)} or {Speed(8.0 * pass.Speed)}, and every time, rate "
            + "and frequency told here is as many times off. Write speed: or played-slower: into its sheet.";
    }

    // The level share of the films whose pass the other sentences do not tell.
    private static string Others(FilmAnswer answer)
    {
        string[] parts =
        [
            .. Enumerable.Range(0, answer.Car.Passes.Length).Where(f => f != answer.Shown)
                .Select(f => (Film: f, Share: answer.Car.Numbers[f].HeaveShare)).Where(o => double.IsFinite(o.Share.Value))
                .OrderBy(o => answer.Car.Passes[o.Film].Speed).Select(o =>
                    $"{Percent(o.Share.Value)} ({Percent(o.Share.Low)} to {Percent(o.Share.High)}) at {Sharp(answer.Car.Passes[o.Film].Speed)} "
                    + $"(film {o.Film + 1})"),
        ];
        return parts.Length == 0 ? "" : $"Of the other films' motion {SpeedRanges.And(parts)} is level, up to a second of each.";
    }

    private static string Still(FilmNumbers numbers) => numbers.IsStill && numbers.For("settling-time") is { } time
        ? $"it stays below a tenth of its peak {Numeral.Of(time.Value, 2)} s after they have left, {Cycles(numbers.CyclesSeen)}."
        : "from when on it stays below a tenth of its peak is not told: the car leaves the picture "
            + $"{Numeral.Of(numbers.Reach, 2)} s after the bump, {Cycles(numbers.CyclesSeen)} seen.";

    private static string Cycles(double cycles) => $"{Numeral.Of(cycles, 1)} {(cycles == 1.0 ? "cycle" : "cycles")}";

    private static string About(FilmNumbers n, double wheelbase)
    {
        var (x, half) = (n.Centre.Value, 0.5 * (n.Centre.High - n.Centre.Low));
        var front = Math.Abs(x) < Math.Abs(x - wheelbase);
        var from = front ? x : x - wheelbase;
        var place = $"{Numeral.Of(Math.Abs(from), 2)} m ± {Numeral.Of(half, 2)} m {(from > 0.0 ? "behind" : "ahead of")} the "
            + $"{(front ? "front" : "rear")} axle";
        var between = x > 0.0 && x < wheelbase ? ", between the axles" : ", outside the wheelbase";
        return $"In that {(HeaveWords.IsSecond(n.Reach) ? "second" : "time")} the body turns mostly about a point {place}{between}: "
            + $"{Percent(n.AboutCentre)} of the ends' motion goes about it.";
    }

    private static IEnumerable<Sentence> CarSentences(SeenCar seen)
    {
        var car = seen.Car;
        string Hertz(double f) => $"{Numeral.Of(f, 2)} Hz";
        if (car.IsBelieved && car.Of(CarNumber.FrontFrequency) is { IsSaid: true } front && car.Of(CarNumber.RearFrequency) is { IsSaid: true } rear)
        {
            var ratio = car.Of(CarNumber.FrequencyRatio)!;
            var verdict = car.SlowerEnd switch
            {
                > 0 => "the front is the slower end",
                < 0 => "the rear is the slower end",
                _ => "which end is slower is not told",
            };
            yield return new(
                "film-frequencies",
                $"Between its wheels the car swings at {Interval(Hertz, front.Value, front.Low, front.High)} in front and "
                + $"{Interval(Hertz, rear.Value, rear.Low, rear.High)} at the rear on rigid tyres, rear over front "
                + $"{Numeral.Of(ratio.Value, 2)} ({Numeral.Of(ratio.Low, 2)} to {Numeral.Of(ratio.High, 2)}): {verdict}.");
        }

        var damped = Damping.Select(d => car.Of(d)!).Where(e => e.IsSaid).ToList();
        if (car.IsBelieved && damped.Count == 2)
        {
            yield return new(
                "film-damping",
                $"Dampers and friction together damp the front by {Ratio(damped[0])} and the rear by {Ratio(damped[1])} of critical at "
                + $"{Numeral.Of(car.TravelSpeed, 2)} m/s of travel (RMS).");
        }

        if (car.Odds is { } odds)
        {
            yield return new("film-dampers", FilmLawWords.Of(odds, seen.Passes.Length));
        }

        foreach (var refusal in car.Refusals)
        {
            yield return new("film-refusal", $"{refusal.Says} {refusal.WouldTell.TrimEnd('.')} would tell.");
        }

        if (car.Advice is { } more)
        {
            yield return new("film-advice", Advice(more));
        }
    }

    private static string Ratio(CarEstimate e) => $"{Numeral.Of(e.Value, 2)} ({Numeral.Of(e.Low, 2)} to {Numeral.Of(e.High, 2)})";

    private static string Advice(FilmMore more)
    {
        var what = more.Longer > 0.0
            ? $"{(more.Passes == 1 ? "A pass" : $"{more.Passes} passes more")} seen {Numeral.Of(more.Longer, 0)} s longer, from farther back,"
            : more.Passes == 1 ? "One pass more" : $"{more.Passes} passes more";
        return $"{what} at {Speed(more.Speed)} would narrow the {FilmRefusals.Name(more.Number)} from ± {Percent(more.Now)} to ± "
            + $"{Percent(more.Then)}, by the fitted car.";
    }

    private static string Changed(FilmChange change, SeenCar before, SeenCar after)
    {
        var n = change.Settling;
        string Off(double ratio) => Numeral.Of(100.0 * Math.Abs(ratio - 1.0), 0);
        if (!before.Numbers.Any(f => f.IsSecondSeen) || !after.Numbers.Any(f => f.IsSecondSeen))
        {
            return "Whether it pitches less after the change is not told: before or after, no film shows the settling's first second whole.";
        }

        if (!change.IsAlike)
        {
            return $"Whether it pitches less after the change is not told: {Speeds(before)} before and {Speeds(after)} after are not driven alike.";
        }

        var verdict = n.High < 1.0 ? $"It pitches less after the change: {Off(n.Value)} % ({Off(n.High)} to {Off(n.Low)} %) less"
            : n.Low > 1.0 ? $"It pitches more after the change: {Off(n.Value)} % ({Off(n.Low)} to {Off(n.High)} %) more"
            : $"No change of the pitch is told: {Numeral.Change(100.0 * (n.Value - 1.0), 0)} % ({Numeral.Change(100.0 * (n.Low - 1.0), 0)} to "
                + $"{Numeral.Change(100.0 * (n.High - 1.0), 0)} %)";
        var pairs = string.Join(
            ", ", change.Pairs.Select(p => $"{Sharp(before.Passes[p.Before].Speed)} before with {Sharp(after.Passes[p.After].Speed)} after"));
        return $"{verdict} RMS pitch for the lift in the settling's first second, "
            + $"{(change.Pairs.Length == 1 ? "one pair of films" : $"{change.Pairs.Length} pairs of films")} driven alike ({pairs}); "
            + $"one pass is taken to scatter by {Percent(FilmChange.OnePass)}.";
    }

    // Films whose speed, or whose second, no film of the other side has.
    private static string Unpaired(FilmChange change, SeenCar before, SeenCar after)
    {
        string Left(SeenCar car, IEnumerable<int> paired) => string.Join(
            ", ", Enumerable.Range(0, car.Passes.Length).Except(paired).Select(f => Sharp(car.Passes[f].Speed)));
        var (early, late) = (Left(before, change.Pairs.Select(p => p.Before)), Left(after, change.Pairs.Select(p => p.After)));
        string[] parts = [.. new[] { (early, "before"), (late, "after") }.Where(p => p.Item1.Length > 0).Select(p => $"{p.Item1} {p.Item2}")];
        return parts.Length == 0 ? ""
            : $"Pitch after a bump changes with the speed: a film before is held against one after within "
                + $"{Numeral.Of(In.Percent.Of(FilmChange.SpeedsApart), 0)} % of its speed that shows the first second whole, each once. Left out: "
                + $"{string.Join("; ", parts)}.";
    }

    private static string Speeds(SeenCar car) => string.Join(", ", car.Passes.Select(p => Sharp(p.Speed)).Distinct());

    private static string Sharp(double v) => $"{Numeral.Of(In.KilometresPerHour.Of(v), 1)} km/h";

    private static string Beside(FilmForecast forecast, SeenCar seen, FilmNumbers numbers)
    {
        var parts = new List<string>();
        if (forecast.Of("settling-rms-pitch") is var own && double.IsFinite(own) && numbers is { Settling: { } settling, IsSecondSeen: true })
        {
            var isWithin = Math.Abs(own - settling.Value) <= settling.HalfWidth;
            parts.Add($"by the car file the settling's RMS pitch would be {Degrees(own)} at {Speed(forecast.Pass!.Speed)}, "
                + (isWithin ? "within what was filmed" : $"{Numeral.Of(100.0 * Math.Abs((own / settling.Value) - 1.0), 0)} % "
                    + $"{(own > settling.Value ? "more" : "less")} "
                    + "than was filmed"));
        }

        if (seen.Car.Of(CarNumber.FrequencyRatio) is { IsSaid: true } ratio && forecast.Beside.Of(CarNumber.FrequencyRatio) is { } file)
        {
            parts.Add($"its frequency ratio is {Numeral.Of(file, 2)}, "
                + (file >= ratio.Low && file <= ratio.High ? "within the film's interval" : $"outside the film's {Numeral.Of(ratio.Low, 2)} to "
                    + $"{Numeral.Of(ratio.High, 2)}"));
        }

        string[] outside =
        [
            .. new[] { CarNumber.FrontFrequency, CarNumber.RearFrequency, CarNumber.PitchIndex }
                .Select(number => (Number: number, Seen: seen.Car.Of(number), File: forecast.Beside.Of(number)))
                .Where(n => n.Seen is { IsSaid: true } e && n.File is { } own && (own < e.Low || own > e.High))
                .Select(n => $"its {FilmRefusals.Name(n.Number)} is {Numeral.Of(n.File!.Value, 2)}, outside {Ratio(n.Seen!)}"),
        ];
        parts.AddRange(outside);
        if (OtherLoads(forecast, seen) is { Length: > 0 } loads)
        {
            parts.Add(loads);
        }

        return parts.Count == 0
            ? $"Beside {forecast.Car.Name}, {forecast.Car.Load.Name}, the film tells no number to compare."
            : $"Beside {forecast.Car.Name}, {forecast.Car.Load.Name}: {string.Join("; ", parts)}.";
    }

    // What was in the car that passed is not known: which of the file's loads the film's frequencies allow.
    private static string OtherLoads(FilmForecast forecast, SeenCar seen)
    {
        CarEstimate[] said =
        [
            .. new[] { CarNumber.FrontFrequency, CarNumber.RearFrequency, CarNumber.FrequencyRatio }.Select(seen.Car.Of).OfType<CarEstimate>()
                .Where(e => e.IsSaid),
        ];
        if (said.Length == 0 || forecast.Others.IsEmpty)
        {
            return "";
        }

        bool Fits(CarBeside one) => Array.TrueForAll(said, e => one.Of(e.Number) is { } own && own >= e.Low && own <= e.High);
        var others = forecast.Others.Where(Fits).Select(o => o.Car.Load.Name).ToList();
        return Fits(forecast.Beside)
            ? others.Count == 0 ? "of its loads the film's frequencies allow this one alone"
                : $"the film's frequencies allow it under {string.Join(", ", others)} too"
            : others.Count == 0 ? "under none of its loads does it have the film's frequencies"
                : $"under {string.Join(", ", others)} it would have the film's frequencies";
    }

    // Another car's sheet, or another bump than the one that was filmed.
    private static IEnumerable<string> Unlike(FilmForecast beside, SeenPass seen)
    {
        var own = beside.Car.Model.Car.Wheelbase.Si;
        if (Math.Abs(Math.Log(own / seen.Wheelbase)) > OtherWheelbase)
        {
            yield return $"The sheet's wheelbase, {Numeral.Of(seen.Wheelbase, 2)} m, is not that of {beside.Car.Name}, {Numeral.Of(own, 2)} m.";
        }

        if (beside.Pass is { } pass && pass.WheelHeight(0).Max() is var lift && Math.Abs(lift - seen.Lift) > Math.Max(0.015, OtherLift * lift))
        {
            yield return $"The wheels were lifted {Millimetres(seen.Lift)} in the film, and {Millimetres(lift)} by the bump that was named: "
                + "it is another bump.";
        }
    }

    private static string Percent(double share) => $"{Numeral.Of(In.Percent.Of(share), 0)} %";

    private static string Degrees(double angle) => $"{Numeral.Of(In.Degrees.Of(angle), 2)}°";

    private static string Millimetres(double m) => $"{Numeral.Of(In.Millimetres.Of(m), 0)} mm";
}
