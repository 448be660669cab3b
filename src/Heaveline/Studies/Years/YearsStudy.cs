using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>What years do to a car: from which on it is more likely than not no longer what it was.</summary>
public static class YearsStudy
{
    private const string Millimetre = "1.5 mm";

    private static readonly Choice FrontSag = Rate("front-sag", "How much lower the front comes to stand a year by its springs, at the wheel.");

    private static readonly Choice RearSag = Rate("rear-sag", "The same of the rear.");

    private static readonly Choice BushCreep = Rate("bush-creep", "How much lower both ends come to stand a year by rubber bushes that creep.");

    private static readonly Choice DamperLoss =
        Rate("damper-loss", "Share of what is left that every damper force loses a year.") with { HelpName = "SHARE" };

    private static readonly Choice Ahead = new()
    {
        Name = "years",
        Kind = ChoiceKind.Number,
        Says = "How many years to look ahead, 1 to 50.",
        HelpName = "NUMBER",
        Usual = "15",
        Range = (1, 50),
    };

    private static readonly Choice Load =
        Choices.Load with { Says = "Load state by its name in the car file, or 'empty'. Without it: the heaviest." };

    private static readonly Choice Over = Choices.Road with { Says = "Also watch the bump stops over this road.", Usual = null };

    private static readonly Choice Speed = Choices.Speed with { Says = "Speed over that road." };

    private static readonly Choice Samples = Choices.Samples(400) with
    {
        Says = "How many cars to draw within the stated doubts, 50 to 20000.",
        Range = (50, 20_000),
    };

    private static readonly Choice Seed = Choices.Seed();

    /// <summary>The question as a command offers it.</summary>
    public static Question<YearsAsked, YearsAnswer> Question { get; } = new()
    {
        Word = "years",
        Says =
            """
            Say from which year on a car is more likely than not no longer what it was: its rear the softer end, standing on a bump stop, or, where a
            road is given, touching one there, its dipped beam above its range, or, where its dampers lose force, an axle damped below 0.20; and which
            workshop reading shows it. Give what a year takes, with its doubt, as two measurings years apart tell it.

            Examples:
              heaveline years examples/garage/fern-saloon-cured.yaml --rear-sag "1.5 mm ± 1 mm" --front-sag "0.5 mm ± 0.5 mm" \
                --damper-loss "3 % ± 2"
              heaveline years examples/garage/fern-saloon-cured.yaml --rear-sag "1.5 mm ± 1 mm" --road plank --speed "40 km/h" --figure years.pdf
            """,
        Choices = [Choices.Car, Load, FrontSag, RearSag, BushCreep, DamperLoss, Ahead, Over, Speed, Samples, Seed],
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Draws the cars and lives their years.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so, or an end that sags stands on gas.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static YearsAnswer Run(YearsAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var lives = YearsLives.Of(asked, run ?? StudyRun.Plain);
        return new YearsAnswer
        {
            Asked = asked,
            Chances = [.. lives.Events.Select(e => new YearsChance(e, [.. lives.Shares(e)], lives.Moments(e), asked.Draws, lives.Reading(e)))],
            Fallen = lives.Fallen,
            Refused = lives.Refused,
        };
    }

    private static YearsAsked? Read(AskedReader reader)
    {
        var speed = reader.Speed(Speed);
        var (draws, seed, years) = (reader.Whole(Samples), reader.Seed(Seed), reader.Whole(Ahead));
        var wear = Wear(reader);
        IdleSpeed.Object(reader, Speed, Over);
        var road = reader.Road(Over);
        var car = reader.Car(Choices.Car, Load);
        if (reader.IsRefused)
        {
            return null;
        }

        var loaded = reader.Given.Of(Load) is null ? car! with { Load = YearsAsked.Heaviest(car.Car) } : car!;
        return new YearsAsked
        {
            Car = loaded,
            Wear = wear!,
            Years = years!.Value,
            Road = road,
            Speed = speed!.Value,
            Draws = draws!.Value,
            Seed = seed!.Value,
        };
    }

    private static YearlyWear? Wear(AskedReader reader)
    {
        var (front, rear) = (reader.Amount<Length>(FrontSag, Millimetre), reader.Amount<Length>(RearSag, Millimetre));
        var (creep, loss) = (reader.Amount<Length>(BushCreep, "0.3 mm"), reader.Amount<Plain>(DamperLoss, "3 %"));
        if (reader.IsRefused)
        {
            return null;
        }

        try
        {
            var wear = new YearlyWear
            {
                FrontSag = front ?? default,
                RearSag = rear ?? default,
                BushCreep = creep ?? default,
                DamperLoss = loss ?? default,
            };
            if (wear.IsAny)
            {
                return wear;
            }

            reader.Object("rear-sag", "nothing ages the car: give --front-sag, --rear-sag, --bush-creep or --damper-loss, as two measurings years "
                + "apart tell it (\"1.5 mm ± 1 mm\").");
        }
        catch (RefusedValueException refused)
        {
            reader.Object(Option(refused.Property ?? ""), Said(reader, refused));
        }

        return null;
    }

    // In the unit that was typed.
    private static string Said(AskedReader reader, RefusedValueException refused)
    {
        var choice = new[] { FrontSag, RearSag, BushCreep, DamperLoss }.Single(c => c.Name == Option(refused.Property ?? ""));
        var typed = reader.Given.Of(choice) ?? "";
        var unit = choice == DamperLoss ? QuantityText.Parse<Plain>(typed).Unit : QuantityText.Parse<Length>(typed).Unit;
        return $"{choice.Name} '{typed}': it must be {(unit is null ? refused.Limit : refused.LimitIn(unit))}. {refused.Advice}";
    }

    private static string Option(string property) => property switch
    {
        nameof(YearlyWear.FrontSag) => FrontSag.Name,
        nameof(YearlyWear.RearSag) => RearSag.Name,
        nameof(YearlyWear.BushCreep) => BushCreep.Name,
        _ => DamperLoss.Name,
    };

    private static Choice Rate(string name, string says) => new()
    {
        Name = name,
        Kind = ChoiceKind.Quantity,
        Says = $"{says} With its doubt: \"{(name == "damper-loss" ? "3 % ± 2" : "1.5 mm ± 1 mm")}\".",
        HelpName = "LENGTH",
    };
}
