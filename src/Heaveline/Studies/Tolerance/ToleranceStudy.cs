using Heaveline.Measures;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>How far the parts of a kit may be off for fitted cars to keep what its maker promises.</summary>
public static class ToleranceStudy
{
    private static readonly Choice Car = Choices.Car with { Says = "The car with the kit on it as designed; its doubts say how fitted cars differ." };

    private static readonly Choice Promise = new()
    {
        Name = "promise",
        Kind = ChoiceKind.Quantity,
        Says = "What a fitted car keeps: a number by its key (that of JSON and the glossary), at least or at most so much in the unit that it is "
            + "shown in: \"ratio at least 1.05\". Repeat it.",
        HelpName = "PROMISE",
        IsNeeded = true,
        IsRepeated = true,
    };

    private static readonly Choice Springs = Levels("springs", "spring rates", "1 %, 2 %, 3 %, 5 %, 8 %", "1 %: 9, 3 %: 4");

    private static readonly Choice Dampers = Levels("dampers", "damper forces", "3 %, 5 %, 8 %, 12 %, 20 %", "5 %: 30, 10 %: 12");

    private static readonly Choice Heights = Levels("heights", "heights over the axles", "2 mm, 3 mm, 5 mm, 8 mm, 12 mm", "3 mm: 6, 8 mm: 1");

    private static readonly Choice Share = new()
    {
        Name = "share",
        Kind = ChoiceKind.Quantity,
        Says = "How many of the fitted cars must keep it, 50 % to 99.9 %.",
        HelpName = "SHARE",
        Usual = "95 %",
    };

    private static readonly Choice Over = Choices.Road with { Says = "The road of promises that are of a pass.", Usual = null };

    private static readonly Choice Speed = Choices.Speed with { Says = "Speed of that pass." };

    private static readonly Choice Samples = Choices.Samples(400) with
    {
        Says = "How many fitted cars to draw, 100 to 20000.",
        Range = (100, 20_000),
    };

    private static readonly Choice Seed = Choices.Seed();

    /// <summary>The question as a command offers it.</summary>
    public static Question<ToleranceAsked, ToleranceAnswer> Question { get; } = new()
    {
        Word = "tolerance",
        Says =
            """
            Say which tolerances of springs, dampers and heights the maker of a kit must keep so that 95 of 100 fitted cars keep what is promised;
            with prices, which of them cost least; and a two-minute test of a fitted car, heights and counted swings.

            Examples:
              heaveline tolerance examples/garage/fern-saloon-cured.yaml --promise "ratio at least 1.05"
              heaveline tolerance examples/garage/fern-saloon-cured.yaml --promise "settling-rms-pitch at most 0.7 °" --road village-hump \
                --speed "40 km/h" --springs "1 %: 9, 3 %: 4, 5 %: 2" --dampers "5 %: 30, 10 %: 12, 20 %: 0" --heights "3 mm: 6, 8 mm: 1"
            """,
        Choices = [Car, Promise, Choices.Load, Springs, Dampers, Heights, Share, Over, Speed, Samples, Seed],
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Draws the cars and fits the kits.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so, or a promise is of a pass and no road is given.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static ToleranceAnswer Run(ToleranceAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        if (asked.Road is null && asked.Promises.Any(p => p.Measure is not Measure<CarAtRest>))
        {
            throw new RefusedValueException("road", "missing", "given where a promise is of a pass", "Give --road and --speed.");
        }

        var grid = (from s in asked.Springs
                    from d in asked.Dampers
                    from h in asked.Heights
                    select (Tolerance: new KitTolerance(s.HalfWidth, d.HalfWidth, h.HalfWidth), Price: s.Price + d.Price + h.Price)).ToArray();
        var cars = FittedCars.Of(asked, [KitTolerance.None, .. grid.Select(g => g.Tolerance)], run);
        return new ToleranceAnswer
        {
            Asked = asked,
            Designed = [.. FittedCars.Numbers(asked, asked.Car.Model, run.Cancellation)],
            Perfect = new ToleranceKept(KitTolerance.None, cars.Kept[0], asked.Draws, null),
            All = [.. grid.Select((g, i) => new ToleranceKept(g.Tolerance, cars.Kept[i + 1], asked.Draws, asked.HasPrices ? g.Price : null))],
            Test = cars.Test(),
            Fallen = cars.Fallen,
        };
    }

    private static ToleranceAsked? Read(AskedReader reader)
    {
        var (draws, seed, speed) = (reader.Whole(Samples), reader.Seed(Seed), reader.Speed(Speed));
        IdleSpeed.Object(reader, Speed, Over);
        var share = reader.Amount<Plain>(Share, "95 %");
        if (share is { Si: < 0.5 or > 0.999 })
        {
            reader.Object(Share.Name, $"share '{reader.Given.Of(Share)}': give 50 % to 99.9 %.");
        }

        var springs = ToleranceLevelText.Read<Plain>(reader, Springs, 0.3, "3 %");
        var dampers = ToleranceLevelText.Read<Plain>(reader, Dampers, 0.5, "5 %");
        var heights = ToleranceLevelText.Read<Length>(reader, Heights, 0.05, "3 mm");
        var road = reader.Road(Over);
        var car = reader.Car(Car, Choices.Load);
        var words = reader.Texts(Promise);
        if (car is null)
        {
            return null;
        }

        IReadOnlyList<Measure> known = [.. RestCatalogue.All, .. SideEffectCatalogue.Of(WheelPlace.Each(car.Model.Rolls)), .. OfPasses()];
        MeasureBound?[] promises = [.. words.Select(Bound)];
        return reader.IsRefused
            ? null
            : new ToleranceAsked
            {
                Car = car,
                Promises = [.. promises.OfType<MeasureBound>()],
                Springs = springs,
                Dampers = dampers,
                Heights = heights,
                Share = share!.Value.Si,
                Road = road,
                Speed = speed!.Value,
                Draws = draws!.Value,
                Seed = seed!.Value,
            };

        MeasureBound? Bound(string words)
        {
            var (bound, problem) = MeasureBoundText.Read(words, known);
            if (bound is null)
            {
                reader.Object(Promise.Name, problem + (road is null ? " Those of a pass need a road." : ""));
            }

            return bound;
        }

        IEnumerable<Measure> OfPasses() => road is null
            ? []
            : PassCatalogue.Of(car.Car.Seats.Count > 0 ? [SeatPlace.Worst] : [], WheelPlace.Axles(car.Model.Rolls))
                .Where(m => m.InFlight is not null);
    }

    private static Choice Levels(string name, string what, string usual, string priced) => new()
    {
        Name = name,
        Kind = ChoiceKind.Quantity,
        Says = $"Tolerances of {what}, with commas between, each with its price for a kit where that counts: \"{priced}\".",
        HelpName = "LEVELS",
        Usual = usual,
    };
}
