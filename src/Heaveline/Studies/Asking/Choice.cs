namespace Heaveline.Studies;

/// <summary>One thing that can be chosen about a question, described once for every door.</summary>
public sealed record Choice
{
    /// <summary>What "yes" is in an address, and what a tick is at a command line.</summary>
    public const string Yes = "yes";

    /// <summary>Its name: the option of a command without the dashes, the name in a page's address.</summary>
    public required string Name { get; init; }

    /// <summary>What kind of words it takes.</summary>
    public required ChoiceKind Kind { get; init; }

    /// <summary>What it is, one or two sentences.</summary>
    public required string Says { get; init; }

    /// <summary>What stands for its words in the help of a command. Blank for a tick.</summary>
    public string HelpName { get; init; } = "";

    /// <summary>The words when none are given; null: <see cref="Says"/> tells what then happens.</summary>
    public string? Usual { get; init; }

    /// <summary>The words that there are, for one of <see cref="ChoiceKind.Word"/>.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>What one of its words is called in a refusal ("rule").</summary>
    public string WordIs { get; init; } = "word";

    /// <summary>Least and most: of a number, or of how many cars there may be.</summary>
    public (double Least, double Most) Range { get; init; } = (double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>The quantities that it takes, for a page that asks each by itself; empty where one box does.</summary>
    public IReadOnlyList<ChoiceColumn> Columns { get; init; } = [];

    /// <summary>Whether a command line gives it by its place instead of an option.</summary>
    public bool IsArgument { get; init; }

    /// <summary>Whether the car's first load state or seat is taken when none is named; else empty, or no seat.</summary>
    public bool FirstOfCar { get; init; }

    /// <summary>Whether there is no answer without it.</summary>
    public bool IsNeeded { get; init; }

    /// <summary>Whether it may be given more than once.</summary>
    public bool IsRepeated { get; init; }
}
