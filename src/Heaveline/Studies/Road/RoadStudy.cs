using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>How rough a road is, one that there is or one made by chance.</summary>
public static class RoadStudy
{
    private static readonly Choice Road = Choices.Road with
    {
        Says = "A road file, a measured profile, or a road's short name; nothing with --random, or to list the short names.",
        IsArgument = true,
        Usual = null,
        Range = (0, 1),
    };

    private static readonly Choice Random =
        new() { Name = "random", Kind = ChoiceKind.Word, Says = "Make a random road of a class A to H (ISO 8608).", HelpName = "CLASS" };

    private static readonly Choice Length =
        new() { Name = "length", Kind = ChoiceKind.Quantity, Says = "Length of the random road.", HelpName = "LENGTH", Usual = "500 m" };

    private static readonly Choice Track = new()
    {
        Name = "track",
        Kind = ChoiceKind.Quantity,
        Says = "Distance between its wheel tracks; 0 m for one track.",
        HelpName = "TRACK",
        Usual = "1.5 m",
    };

    private static readonly Choice Seed = Choices.Seed() with { Says = "Another seed, another road of the same kind." };

    /// <summary>The question as a command offers it.</summary>
    public static Question<RoadAsked, RoadAnswer> Question { get; } = new()
    {
        Word = "road",
        Says =
            """
            Say how rough a road is: heights, spectrum, class with its interval, roughness index. Or make a random road of a class.

            Examples:
              heaveline road examples/roads/country-lane.yaml --figure lane.pdf
              heaveline road --random C --length "1 km" --seed 7 --write random-c.csv
              heaveline road
            """,
        Choices = [Road, Random, Length, Track, Seed],
        CsvOption = "write",
        CsvSays = "Write the heights to FILE as CSV, to be used as a road.",
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Reads the roughness of the road's tracks.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static RoadAnswer Run(RoadAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var stop = (run ?? StudyRun.Plain).Cancellation;
        return new RoadAnswer
        {
            Asked = asked,
            Tracks = asked.Road is not { } road ? []
                : ReferenceEquals(road.Left, road.Right) ? [RoadRoughness.Of(road.Left, stop)]
                : [RoadRoughness.Of(road.Left, stop), RoadRoughness.Of(road.Right, stop)],
        };
    }

    private static RoadAsked? Read(AskedReader reader)
    {
        var (isNamed, isMade) = (reader.Text(Road) is not null, reader.Text(Random) is not null);
        if (isNamed && isMade)
        {
            reader.Object(Random.Name, "give a road, or --random for a new one, not both.");
            return null;
        }

        var road = isMade ? Made(reader) : isNamed ? reader.Road(Road) : null;
        return reader.IsRefused ? null : new RoadAsked { Road = road, Known = road is null ? reader.Roads : [] };
    }

    private static Road? Made(AskedReader reader)
    {
        var roadClass = reader.Class(Random);
        var length = reader.Amount<Length>(Length, "500 m");
        var track = reader.Amount<Length>(Track, "1.5 m");
        var seed = reader.Seed(Seed);
        return reader.IsRefused
            ? null
            : Roads.Road.From(
                new RandomRoad { Spectrum = RoadSpectrum.Of(roadClass!), Track = track!.Value, Length = length!.Value, Seed = seed!.Value },
                reader.Stop);
    }
}
