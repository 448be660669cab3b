using System.Collections.Immutable;
using Heaveline.Doubts;
using Heaveline.Drives;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Recovery;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Whether a change worked: a drive before it, a drive after it, the same bumps.</summary>
public static class ProveStudy
{
    private const ulong ForecastSeed = 20;

    private static readonly Choice Before = new()
    {
        Name = "before",
        Kind = ChoiceKind.Log,
        Says = "Log of the drive before the change: a file, a folder or a .zip; given again, more files of the same drive. A folder drives/NAME of a "
            + "garage is read with what its drive.yaml says; options stand before that, for both drives.",
        HelpName = "LOG",
        IsRepeated = true,
        IsNeeded = true,
        Range = (1, 64),
    };

    private static readonly Choice After = Before with
    {
        Name = "after",
        Says = "Log of the drive after the change, likewise.",
    };

    private static readonly Choice Wheelbase = new()
    {
        Name = "wheelbase",
        Kind = ChoiceKind.Quantity,
        Says = FormattableString.Invariant($"Wheelbase, as \"2.70 m\". Without it: {EventSettings.UsualWheelbase:F1} m."),
        HelpName = "LENGTH",
    };

    private static readonly Choice Car = DriveChoices.Car with
    {
        Says = "The car that was driven before the change, a car file or a variant: it gives the wheelbase, and the forecast of --change.",
    };

    private static readonly Choice Change = DriveChoices.Car with
    {
        Name = "change",
        Says = "The same car after the change, a car file or a variant: what it would do is forecast on the drive before and held against the drive "
            + "after; needs --car, takes some seconds.",
    };

    private static readonly Choice Scaled = new()
    {
        Name = "change-by",
        Kind = ChoiceKind.Word,
        Says = "The change without files, as \"rear springs +20 %, rear dampers +30 %\" (rates and forces): forecast by the car that the drive "
            + "before tells and held against the drive after; needs --wheelbase or --car, takes some seconds.",
        HelpName = "CHANGE",
    };

    private static readonly Choice Phone = DriveChoices.Phone with
    {
        Says = "Where the phone lay in both drives, as \"1.45 m behind front axle, 0.1 m left, 0.2 m up\".",
    };

    private static readonly Choice Site = new()
    {
        Name = "site",
        Kind = ChoiceKind.Word,
        Says = "A bump's name with instants at which the drives crossed it: \"chapel hump: before 84 s, 141 s, after 91 s\". "
            + "Without names bumps are matched by where they lie, else by order and likeness.",
        HelpName = "SITE",
        IsRepeated = true,
    };

    private static readonly Choice Matters = new()
    {
        Name = "matters",
        Kind = ChoiceKind.Number,
        Says = "The least change that matters, 1 % to 50 %.",
        HelpName = "SHARE",
        Usual = "10 %",
    };

    private static readonly Choice Number = new()
    {
        Name = "measure",
        Kind = ChoiceKind.Word,
        Says = "What decides: headline (pitch in the second after the bump) or hit (peak pitch acceleration over it).",
        HelpName = "WHICH",
        Usual = ProvedNumber.WordOf(ComparedNumber.Headline),
        Words = [.. Enum.GetValues<ComparedNumber>().Select(ProvedNumber.WordOf)],
        WordIs = "measure of two drives",
    };

    private static readonly Choice Looks = new()
    {
        Name = "looks",
        Kind = ChoiceKind.Number,
        Says = "How often you judge: 2 where passes are added after a first look.",
        HelpName = "NUMBER",
        Usual = "1",
        Range = (1, 2),
    };

    /// <summary>What was the same in both drives.</summary>
    internal static Choice Same { get; } = new()
    {
        Name = "same",
        Kind = ChoiceKind.Word,
        Says = $"What was the same in both drives, with commas between: {string.Join(", ", ProveAsked.Circumstances)}; or all.",
        HelpName = "WHAT",
    };

    private static readonly Choice WhatChanged = new()
    {
        Name = "what-changed",
        Kind = ChoiceKind.Tick,
        Says = "Also work out the car that moves most like each drive and say what changed in it; needs --wheelbase or --car, takes some seconds.",
    };

    /// <summary>The question as a command offers it.</summary>
    public static Question<ProveAsked, ProveAnswer> Question { get; } = new()
    {
        Word = "prove",
        Says =
            """
            Say whether a change worked: a drive before it and a drive after it over the same bumps, pass by pass, speed taken out. Says what is not
            known too: no difference that matters, not driven alike, so many passes more.

            Examples:
              heaveline prove --before monday.csv --after tuesday.csv --wheelbase "2.70 m"
              heaveline prove --before before.zip --after after.zip --same all --figure dots.pdf
              heaveline prove --before my-garage/drives/before --after my-garage/drives/after --what-changed
              heaveline prove --before a.csv --after b.csv --site "chapel hump: before 84 s, after 91 s" --matters "15 %" --json
              heaveline prove --before a.csv --after b.csv --car saloon.yaml --change saloon-cured.yaml --load "four up with luggage"
              heaveline prove --before a.csv --after b.csv --wheelbase "2.70 m" --change-by "rear springs +20 %" --draw forecast --figure said.pdf
            """,
        Choices = [Before, After, Wheelbase, Car, Change, Choices.Load, Phone, Scaled, Site, Matters, Number, Looks, Same, WhatChanged],
        Draws = new Choice
        {
            Name = "draw",
            Kind = ChoiceKind.Word,
            Says = "What the figure shows: dots (every pass against speed), power (what so many passes would find) or forecast "
                + "(what --change or --change-by was forecast to do beside what was measured).",
            HelpName = "WHAT",
            Usual = ProveAnswer.Dots,
            Words = [ProveAnswer.Dots, ProveAnswer.Power, ProveAnswer.Foreseen],
            WordIs = "figure of two drives",
        },
        CsvSays = "Also write every pass as CSV: site, state, event, speed, both numbers, whether it counts.",
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Compares the drives.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">Both are one drive, a log bears no pitch, or vibration folded down where the hit decides.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static ProveAnswer Run(ProveAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var before = ProvedDrive.Of(asked.Before, asked.OfBefore, run.Cancellation) with { File = asked.Car };
        run.Progress?.Report(0.5);
        var after = ProvedDrive.Of(asked.After, asked.OfAfter, run.Cancellation) with { File = asked.DrivenAfter };
        run.Progress?.Report(0.95);
        return Of(asked, before, after, run.Cancellation);
    }

    /// <summary>The same of drives that have been read already.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="before">The drive before.</param>
    /// <param name="after">The drive after.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">As above.</exception>
    internal static ProveAnswer Of(ProveAsked asked, ProvedDrive before, ProvedDrive after, CancellationToken stop)
    {
        Check(before, after);
        return Compared(asked, before.AtTrueSpeed(stop), after.AtTrueSpeed(stop), stop);
    }

    /// <summary>The same within a moment, at the speeds that the drives have: no car is fitted, by which they could be off.</summary>
    /// <param name="asked">What is asked; neither what changed nor a forecast, which need cars.</param>
    /// <param name="before">The drive before.</param>
    /// <param name="after">The drive after.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">As above.</exception>
    internal static ProveAnswer AsLogged(ProveAsked asked, ProvedDrive before, ProvedDrive after, CancellationToken stop)
    {
        Check(before, after);
        return Compared(asked, before, after, stop) with { IsAsLogged = true };
    }

    private static void Check(ProvedDrive before, ProvedDrive after)
    {
        if (LogLikeness.IsOneDrive(before.Drive.Log, after.Drive.Log))
        {
            throw new RefusedValueException(
                "log after the change", "the same drive as before", "another drive",
                "before and after are the same drive: give the one that was driven after the change.");
        }

        before.CheckPitch("before");
        after.CheckPitch("after");
    }

    private static ProveAnswer Compared(ProveAsked asked, ProvedDrive before, ProvedDrive after, CancellationToken stop)
    {
        // Each drive's own car, by all of its bumps as that drive has them: what a drive says of its car does not hang on the drive beside it.
        var (carBefore, carAfter) = asked.WhatChanged ? (before.CarOf(stop), after.CarOf(stop)) : default;
        (before, after, var matches) = SharedSites.Of(before, after, SiteMatches.Of(before.Events, after.Events), stop);
        var speeds = SpeedDoubt.Of(before, after);
        var isFolded = before.Trust.IsFolded || after.Trust.IsFolded;
        if (isFolded && asked.Number == ComparedNumber.Hit)
        {
            throw new RefusedValueException(
                "vibration above half the sampling rate",
                "folded down in one of the logs",
                "small",
                "Let the pitch after the bump decide, or log at 100 samples a second.");
        }

        ComparedNumber[] numbers =
            [asked.Number, .. Enum.GetValues<ComparedNumber>().Where(n => n != asked.Number && !(isFolded && n == ComparedNumber.Hit))];
        // The roads of a forecast are those of the bumps that both crossed.
        var car = asked.Forecast is null ? null : CrossedBumps.Of(before, matches).CarOf(stop);
        ProvedNumber[] proved = [.. numbers.Select(n => new ProvedNumber(n, speeds.Of(matches, n, asked.Comparison)))];
        var forecast = car is { Known: not null } ? Foreseen(asked, before, car, stop) : null;
        return new ProveAnswer
        {
            Asked = asked,
            Before = before,
            After = after,
            Matches = matches,
            Numbers = [.. proved],
            CarBefore = carBefore,
            CarAfter = carAfter,
            CarOfForecast = car,
            Forecast = forecast is null ? null : proved.Aggregate(forecast, (said, number) => Weighed(said, number, matches)),
        };
    }

    /// <summary>A forecast that speaks of each bump as loudly as what was measured does, against which it is held.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="number">What was measured.</param>
    /// <param name="matches">The bumps.</param>
    internal static Forecast Weighed(Forecast forecast, ProvedNumber number, SiteMatches matches) => forecast.Weighed(
        number.Number == ComparedNumber.Headline ? 0 : 1,
        matches.All.ToDictionary(m => m.Before.Name, m => number.Result.Shares.GetValueOrDefault(m.Name)));

    // Without a file the car of the drive is all that there is: it must be believed.
    private static Forecast? Foreseen(ProveAsked asked, ProvedDrive before, CarFromDrive car, CancellationToken stop)
    {
        if (asked is { Car: { } file, Change: { } change })
        {
            var doubts = JointDoubts.Of([CarDoubts.Of(file.Car, file.Load), CarDoubts.Of(change, file.Load)]);
            return Forecast.Of(file.Car, change, file.Load, before.Drive, before.Events, car, Drawn, stop);

            (RideModel Before, RideModel After) Drawn(int draw)
            {
                var models = JointDraw.Of(doubts, ForecastSeed, draw).Models;
                return (models[0], models[1]);
            }
        }

        return asked.Scaled is { } scaled && car.IsBelieved
            ? Forecast.Of(scaled, ScaledWords.Said(scaled), before.Drive, before.Events, car, stop)
            : null;
    }

    private static ProveAsked? Read(AskedReader reader)
    {
        var (ofBefore, ofAfter) = (DescribedDrive.Of(reader, Before), DescribedDrive.Of(reader, After));
        var (before, after) = (reader.Log(Before, DescribedDrive.Taken(ofBefore, [])), reader.Log(After, DescribedDrive.Taken(ofAfter, [])));
        var wheelbase = reader.Given.Of(Wheelbase) is null ? null : DriveChoices.WheelbaseOf(reader, Wheelbase);
        var car = DescribedDrive.CarOf(reader, ofBefore);
        var carAfter = reader.Given.Of(Car) is null ? DescribedDrive.CarOf(reader, ofAfter) : null;
        var change = reader.Given.Of(Change) is null ? null : reader.Car(Change);
        if (change is not null && reader.Given.Of(Car) is null && car is null)
        {
            reader.Object(Change.Name, "change: give --car too, the car before it.");
        }

        var scaled = reader.Text(Scaled) is { } by ? ScaledWords.Of(reader, Scaled, by) : null;
        if (change is not null && scaled is not null)
        {
            reader.Object(Scaled.Name, "change-by: --change says by its file what was changed; give one of the two.");
        }

        var (first, second) = ProveSites.Read(reader, Site);
        var phone = reader.Text(Phone) is { } place ? DriveChoices.PhoneOf(reader, place) : null;
        var known = new EventSettings { Phone = phone };
        var givenBefore = known with { Wheelbase = wheelbase ?? car?.Car.Wheelbase.Si, Sites = [.. first] };
        var givenAfter = known with { Wheelbase = wheelbase ?? (carAfter ?? car)?.Car.Wheelbase.Si, Sites = [.. second] };
        var (settingsBefore, settingsAfter) = (DescribedDrive.Settings(ofBefore, givenBefore), DescribedDrive.Settings(ofAfter, givenAfter));
        var isTold = settingsBefore.Wheelbase is not null && settingsAfter.Wheelbase is not null;
        var matters = Share(reader);
        var number = reader.Word(Number);
        var looks = reader.Whole(Looks);
        var same = Circumstances(reader, Same);
        var what = reader.IsTicked(WhatChanged);
        if (what && !isTold && reader.Given.Of(Wheelbase) is null && reader.Given.Of(Car) is null)
        {
            reader.Object(WhatChanged.Name, "what-changed: give --wheelbase or --car, by which the delay between the axles tells the car.");
        }

        if (scaled is not null && settingsBefore.Wheelbase is null)
        {
            reader.Object(Scaled.Name, "change-by: give --wheelbase or --car, by which the delay between the axles tells the car.");
        }

        var pair = DescribedPair.Of(reader, ofBefore, ofAfter);
        pair?.Refuse(reader, After, change is not null ? Change : scaled is not null ? Scaled : null);
        if (before is not null && after is not null && IsSame(before, after))
        {
            reader.Object(After.Name, "before and after are the same log: give the one that was driven after the change.", isUsage: false);
        }

        if (reader.Given.Of(Choices.Load) is not null && reader.Given.Of(Car) is null && car is null && carAfter is null)
        {
            reader.Object(Choices.Load.Name, "load: give --car too, the car that is loaded so.");
        }

        foreach (var (log, name, sites) in new[] { (before, " before", first), (after, " after", second) })
        {
            if (log is not null)
            {
                InstantWords.Refuse(reader, Site, log, name, sites.Select(s => s.At));
            }
        }

        return reader.IsRefused ? null : new ProveAsked
        {
            Before = before!,
            After = after!,
            OfBefore = settingsBefore,
            OfAfter = settingsAfter,
            Comparison = new ComparisonSettings { Matters = matters!.Value, Looks = looks!.Value },
            Number = Enum.GetValues<ComparedNumber>().Single(n => ProvedNumber.WordOf(n) == number),
            // One place of the phone is that of both drives.
            Same = [.. ProveAsked.Circumstances.Where(c => same.Contains(c) || ofAfter?.Drive.Same.Contains(c) == true
                || (c == "phone" && phone is not null))],
            WhatChanged = what,
            Car = car,
            CarAfter = carAfter,
            Described = (before, after) => [.. new[]
            {
                DescribedDrive.Said(ofBefore, reader.Given, givenBefore, [], before),
                DescribedDrive.Said(ofAfter, reader.Given, givenAfter, [], after, isAfter: true),
            }.Where(said => said.Length > 0)],
            Change = change,
            Scaled = scaled,
        }
        .AsWrittenDown(pair?.Holding(pair.Before, settingsBefore), pair?.Holding(pair.After, settingsAfter));
    }

    private static double? Share(AskedReader reader)
    {
        var words = reader.Text(Matters) ?? "";
        if (words.TrimEnd().EndsWith('%') && QuantityText.Number(words.TrimEnd().TrimEnd('%').TrimEnd()) is { } percent and >= 1.0 and <= 50.0)
        {
            return percent / 100.0;
        }

        reader.Object(Matters.Name, $"matters '{words}': give 1 % to 50 %.");
        return null;
    }

    /// <summary>What was the same in both drives; words that say nothing of the kind are objected to.</summary>
    /// <param name="reader">What was given.</param>
    /// <param name="choice">The choice.</param>
    internal static ImmutableArray<string> Circumstances(AskedReader reader, Choice choice)
    {
        if (reader.Text(choice) is not { } words)
        {
            return [];
        }

        string[] given = words == "all" ? [.. ProveAsked.Circumstances] : CommaList.Of(words);
        foreach (var word in given.Except(ProveAsked.Circumstances))
        {
            reader.Object(choice.Name, $"'{word}' is no circumstance of a drive; there are {string.Join(", ", ProveAsked.Circumstances)}, all.");
        }

        return [.. ProveAsked.Circumstances.Intersect(given)];
    }

    private static bool IsSame(Log before, Log after)
    {
        static SensorTrack? Force(Log log) => log.Of(SensorKind.Acceleration) ?? log.Of(SensorKind.AccelerationWithoutGravity);
        return Force(before) is { Values: [var first, ..] } && Force(after) is { Values: [var second, ..] }
            && first.AsSpan().SequenceEqual(second.AsSpan());
    }
}
