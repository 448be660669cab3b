using Heaveline.Quantities;
using Heaveline.Ties;

namespace Heaveline.Studies;

/// <summary>What cable ties on the damper rods say of a car's dampers, friction and stops.</summary>
public static class TiesStudy
{
    private static readonly Choice Sheet = new()
    {
        Name = "readings",
        Kind = ChoiceKind.Ties,
        Says = "A sheet of ties (docs/ties-file.md). Without it: --over and --pass.",
        IsArgument = true,
        Range = (0, 1),
    };

    private static readonly Choice Over = Choices.Road with
    {
        Name = "over",
        Says = "The obstacle, in place of the sheet's: a road file, or the name of a road that comes with Heaveline.",
        Usual = null,
    };

    private static readonly Choice Pass = new()
    {
        Name = "pass",
        Kind = ChoiceKind.Quantity,
        Says = "One crossing without a sheet, or one more: \"20 km/h: front 52 mm ± 2 mm, rear at least 62 mm\". Repeat it.",
        HelpName = "PASS",
        IsRepeated = true,
    };

    /// <summary>The question as a command offers it.</summary>
    public static Question<TiesAsked, TiesAnswer> Question { get; } = new()
    {
        Word = "ties",
        Says =
            """
            Say what cable ties on the damper rods tell of a car: how strong its dampers are, its friction, where its bump stops touch, with
            intervals, or what they cannot tell. Ties are slid against the damper bodies with the loaded car standing; after crossing an obstacle
            each shows how far its damper went.

            Examples:
              heaveline ties examples/garage/fern-saloon.yaml examples/ties/fern-saloon-hump.yaml
              heaveline ties examples/garage/fern-saloon.yaml --over village-hump --pass "8 km/h: front 17 mm, rear 12 mm" \
                --pass "15 km/h: front 43 mm, rear 25 mm" --pass "20 km/h: front 56 mm, rear 38 mm"
            """,
        Choices = [Choices.Car, Sheet, Choices.Load, Over, Pass],
        CsvOption = "variant",
        CsvEnding = ".yaml",
        CsvSays = "Write what is said as a variant of the car file, with its doubts, to FILE; keep it beside the car file.",
        CsvRefusal = asked => asked.CarFile.Length == 0 ? "--variant needs a car that was read from a file." : null,
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Fits the car to its ties.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">The car cannot stand or cross so, or what was read does not go with it.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static TiesAnswer Run(TiesAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var fit = TieFit.Of(asked.Car.Car, asked.Car.Load, asked.Road, asked.Readings, run.Degree, run.Cancellation);
        run.Progress?.Report(1.0);
        return new TiesAnswer { Asked = asked, Fit = fit };
    }

    private static TiesAsked? Read(AskedReader reader)
    {
        var sheet = reader.Given.Of(Sheet) is null ? null : reader.Text(Sheet) is { } name ? reader.Of(Sheet, f => f.Ties(name)) : null;
        var passes = reader.Texts(Pass).Select(words => TiePassText.Read(reader, Pass, words)).ToList();
        if (reader.Given.Of(Sheet) is null && passes.Count == 0)
        {
            reader.Object(Pass.Name, "give a sheet of ties, or --over and --pass for each crossing.");
        }

        if (reader.Given.Of(Sheet) is null && reader.Given.Of(Over) is null)
        {
            reader.Object(Over.Name, "give the obstacle with --over, or a sheet that names it.");
        }

        var road = reader.RoadsOf(Over, sheet is null ? [] : [sheet.Over]) is [var (_, found), ..] ? found : null;
        var car = Car(reader, sheet?.Load);
        return reader.IsRefused || car is null || road is null
            ? null
            : new TiesAsked
            {
                Car = car,
                Road = road,
                Readings = sheet is null
                    ? new TieReadings { Passes = [.. passes.OfType<TiePass>()] }
                    : sheet.Readings with { Passes = [.. sheet.Readings.Passes, .. passes.OfType<TiePass>()] },
                CarFile = reader.Inputs(Choices.Car) is [[var file, ..], ..] ? file.Name.Split('/', '\\')[^1] : "",
            };
    }

    // The load that is chosen, or else the one that the sheet names.
    private static LoadedCar? Car(AskedReader reader, string? named)
    {
        if (named is null || reader.Given.Of(Choices.Load) is not null)
        {
            return reader.Car(Choices.Car, Choices.Load);
        }

        if (reader.Car(Choices.Car) is not { } car)
        {
            return null;
        }

        if (LoadedCar.LoadNamed(car, named) is { } load)
        {
            return LoadedCar.Of(car, load);
        }

        reader.Object(
            Choices.Load.Name,
            $"the sheet's load '{named}' is no load state of {car.Name}; name one of its own with --load.",
            isUsage: false);
        return null;
    }
}
