using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Reports;
using Heaveline.Studies;

namespace Heaveline.Files.Reporting;

/// <summary>What is asked of a report, in words as they are typed on a command line or stand in a page's address. What is left out stands as usual.</summary>
public sealed record ReportAsked
{
    /// <summary>The parts of a report on one car when none are named.</summary>
    public const string UsualForOne = "car, modes, pass, why, doubt, ride, cost";

    /// <summary>The parts of a report on several cars when none are named.</summary>
    public const string UsualForSeveral = "car, compare, why, ride, cost";

    /// <summary>The road when none is named.</summary>
    public const string UsualRoad = "village-hump";

    /// <summary>The speed when none is named.</summary>
    public const string UsualSpeed = "50 km/h";

    /// <summary>The speeds when none are named.</summary>
    public const string UsualSpeeds = "30 km/h, 50 km/h, 80 km/h, 110 km/h";

    /// <summary>The class of the random road when none is named.</summary>
    public const string UsualClass = "C";

    /// <summary>The rule when none is named.</summary>
    public const string UsualRule = "ratio";

    /// <summary>How many cars are drawn when no number is named.</summary>
    public const int UsualSamples = 2000;

    /// <summary>The sheet of a PDF when none is named.</summary>
    public const string UsualPaper = "a4";

    /// <summary>The parts by their words, in the order of <see cref="PartKind"/>.</summary>
    public static IReadOnlyList<string> Words { get; } = [.. Enum.GetNames<PartKind>().Select(n => n.ToLowerInvariant())];

    /// <summary>The sheets by their words.</summary>
    public static IReadOnlyList<string> Papers { get; } = ["a4", "letter"];

    /// <summary>The road: a short name, or what the file was named by. Its text is handed to <see cref="Read"/>.</summary>
    public string Road { get; init; } = UsualRoad;

    /// <summary>Speed of the passes, with its unit.</summary>
    public string Speed { get; init; } = UsualSpeed;

    /// <summary>Speeds of comparison and ride, with commas between.</summary>
    public string Speeds { get; init; } = UsualSpeeds;

    /// <summary>Name of the load state; null: as described.</summary>
    public string? Load { get; init; }

    /// <summary>Letter of the road class.</summary>
    public string Class { get; init; } = UsualClass;

    /// <summary>One of the words of <see cref="TradeRule"/>.</summary>
    public string Rule { get; init; } = UsualRule;

    /// <summary>How many cars to draw within the doubts.</summary>
    public int Samples { get; init; } = UsualSamples;

    /// <summary>Seed of those draws.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>The parts by their words with commas between, or all; null for the usual ones.</summary>
    public string? Parts { get; init; }

    /// <summary>The title; null: the cars' names.</summary>
    public string? Title { get; init; }

    /// <summary>Who made it. Blank for nobody named.</summary>
    public string Author { get; init; } = "";

    /// <summary>The day it is of, as it is to be printed. Blank for none.</summary>
    public string Date { get; init; } = "";

    /// <summary>Sheet of a PDF: one of <see cref="Papers"/>.</summary>
    public string Paper { get; init; } = UsualPaper;

    /// <summary>The file that the report becomes; the report prints its name without the folder.</summary>
    public required string Out { get; init; }

    /// <summary>The program and its version.</summary>
    public required string Program { get; init; }

    /// <summary>Whether the report becomes a PDF.</summary>
    public bool IsPdf => Path.GetExtension(Out).Equals(".pdf", StringComparison.OrdinalIgnoreCase);

    /// <summary>The same as records, checked. Anything wrong gives objections, never an exception.</summary>
    /// <param name="cars">The cars as they were read, the first what the others are held against.</param>
    /// <param name="road">The road as it was read.</param>
    /// <param name="degree">How many groups of passes run at once; the numbers do not depend on it.</param>
    public ReportReading Read(IReadOnlyList<CarReading> cars, RoadReading road, int degree)
    {
        ArgumentNullException.ThrowIfNull(cars);
        ArgumentNullException.ThrowIfNull(road);
        return new AskedReading(this, cars, road).Read(degree);
    }
}
