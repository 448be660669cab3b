using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Choices that several questions share, with one wording each.</summary>
public static class Choices
{
    /// <summary>One car.</summary>
    public static Choice Car { get; } = new()
    {
        Name = "car",
        Kind = ChoiceKind.Car,
        Says = "A car file or a variant.",
        IsArgument = true,
        Range = (1, 1),
    };

    /// <summary>One car or several.</summary>
    public static Choice Cars { get; } = Car with { Says = "Car files or variants.", Range = (1, 100_000) };

    /// <summary>A load state; without one: the car's first, or empty where it has none.</summary>
    public static Choice Load { get; } = new()
    {
        Name = "load",
        Kind = ChoiceKind.Load,
        Says = "Load state by its name in the car file, or 'empty'. Without it: the car's first.",
        HelpName = "NAME",
        FirstOfCar = true,
    };

    /// <summary>A road.</summary>
    public static Choice Road { get; } = new()
    {
        Name = "road",
        Kind = ChoiceKind.Road,
        Says = "A road file, or the name of a road that comes with Heaveline ('heaveline road' lists them).",
        HelpName = "ROAD",
        Usual = "village-hump",
    };

    /// <summary>A speed.</summary>
    public static Choice Speed { get; } = new()
    {
        Name = "speed",
        Kind = ChoiceKind.Speed,
        Says = "Speed with its unit.",
        HelpName = "SPEED",
        Usual = "50 km/h",
    };

    /// <summary>One speed or several.</summary>
    public static Choice Speeds { get; } = new()
    {
        Name = "speed",
        Kind = ChoiceKind.Speeds,
        Says = "One speed or several with commas between.",
        HelpName = "SPEEDS",
        Usual = "50 km/h",
        Range = (1, 400),
    };

    /// <summary>The slowest of several even speeds.</summary>
    public static Choice From { get; } = Speed with { Name = "from", Says = "Slowest speed.", Usual = "20 km/h" };

    /// <summary>The fastest of several even speeds.</summary>
    public static Choice To { get; } = Speed with { Name = "to", Says = "Fastest speed.", Usual = "120 km/h" };

    /// <summary>A class of random roads.</summary>
    public static Choice Class { get; } = new()
    {
        Name = "class",
        Kind = ChoiceKind.Word,
        Says = "Road class A to H (ISO 8608), A the smoothest.",
        HelpName = "CLASS",
        Usual = "C",
    };

    /// <summary>The units that an answer is read in; without it: those that the garage remembers.</summary>
    public static Choice Units { get; } = new()
    {
        Name = "units",
        Kind = ChoiceKind.Word,
        Says = "Units of what is printed and drawn: metric or imperial. Without it: what the car's garage remembers (garage.yaml), else metric. "
            + "JSON and CSV are always metric.",
        HelpName = "UNITS",
        Words = ReaderUnits.Words,
        WordIs = "choice of units",
    };

    /// <summary>For questions whose intervals cost time: they are asked for.</summary>
    public static Choice Doubt { get; } = new()
    {
        Name = "doubt",
        Kind = ChoiceKind.Tick,
        Says = "Also give every number's interval, by cars drawn within the stated doubts.",
    };

    /// <summary>How many cars are drawn.</summary>
    /// <param name="usual">How many without it.</param>
    public static Choice Samples(int usual) => new()
    {
        Name = "samples",
        Kind = ChoiceKind.Number,
        Says = "How many cars to draw within the stated doubts, 10 to 1000000.",
        HelpName = "NUMBER",
        Usual = FormattableString.Invariant($"{usual}"),
        Range = (10, 1e6),
    };

    /// <summary>The seed of all that is drawn.</summary>
    /// <param name="more">What more it seeds, a sentence after a blank.</param>
    public static Choice Seed(string more = "") => new()
    {
        Name = "seed",
        Kind = ChoiceKind.Number,
        Says = $"Another seed, other draws; the same seed, the same.{more}",
        HelpName = "NUMBER",
        Usual = "1",
    };
}
