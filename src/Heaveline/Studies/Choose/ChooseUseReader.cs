using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Roads;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>What is driven over, read from its lines.</summary>
/// <param name="Roads">The obstacles.</param>
/// <param name="Class">The class of the random road; null where none is named.</param>
/// <param name="Speeds">Speeds on it, m/s.</param>
/// <param name="Loads">The loads with which it counts, by name; empty for all.</param>
internal sealed record ChooseUseReader(
    ImmutableArray<ChooseRoad> Roads, RoadClass? Class, ImmutableArray<double> Speeds, ImmutableArray<string> Loads)
{
    /// <summary>Over so many crossings a setup is driven at most.</summary>
    public const int MostCrossings = 1000;

    /// <summary>At so many loads and speeds it rides on the random road at most.</summary>
    public const int MostRides = 200;

    private static Choice Use => ChooseChoices.Use;

    /// <summary>Reads the lines; the usual ones where none was given.</summary>
    public static ChooseUseReader Read(AskedReader reader)
    {
        var (roads, random) = (new List<ChooseRoad>(), (ChooseUseReader?)null);
        var before = reader.Objections.Count;
        foreach (var words in reader.Given.All(Use) is { Count: > 0 } ? reader.Texts(Use) : ChooseChoices.UsualUse)
        {
            if (ChooseUseLine.Read(words) is not { } line)
            {
                reader.Object(Use.Name, $"'{words}' is no use: write an obstacle or a class, 'at', and speeds: {ChooseChoices.UsualUse[0]}.");
                continue;
            }

            ImmutableArray<double> speeds = [.. SpeedsOf(reader, words, line).Order()];
            foreach (var load in line.Loads.GroupBy(load => load).Where(same => same.Count() > 1))
            {
                reader.Object(Use.Name, $"'{words}' names the load '{load.Key}' twice: it counts once. Leave one of them out.");
            }

            if (line.Letter is { } letter)
            {
                Refuse(reader, words, line, isSecond: random is not null);
                random = new ChooseUseReader([], reader.Class(Use, letter), speeds, line.Loads);
                continue;
            }

            var weight = line.Weight is { } written ? ChooseUseLine.WeightOf(written) : 1.0;
            if (weight is null)
            {
                reader.Object(Use.Name, $"'{words}' weighs '{line.Weight}': give a number from 0.001 to 1000.");
            }

            if (reader.Road(Use, line.Name) is { } road)
            {
                if (road.Event is null)
                {
                    reader.Object(
                        Use.Name, $"'{line.Name}' has no obstacle that ends: nothing settles after it. Name an obstacle, or a class.",
                        isUsage: false);
                }

                roads.Add(new ChooseRoad(line.Name, road, speeds) { Loads = [.. line.Loads.Distinct()], Weight = weight ?? 1.0 });
            }
        }

        if (roads.Count == 0 && reader.Objections.Count == before)
        {
            reader.Object(Use.Name, $"No obstacle is given: a settling needs one. Write for example {ChooseChoices.UsualUse[0]}.");
        }

        return new ChooseUseReader([.. roads], random?.Class, random?.Speeds ?? [], [.. (random?.Loads ?? []).Distinct()]);
    }

    /// <summary>Objects to loads that do not count.</summary>
    /// <param name="reader">Gathers what is wrong.</param>
    /// <param name="loads">The loads that count; null where they are not known.</param>
    public void RefuseUnknown(AskedReader reader, IReadOnlyList<LoadState>? loads)
    {
        foreach (var name in Roads.SelectMany(road => road.Loads).Concat(Loads).Distinct())
        {
            if (loads is not null && loads.All(load => load.Name != name))
            {
                reader.Object(
                    Use.Name, $"'{name}' is no load that counts; there are {string.Join(", ", loads.Select(load => load.Name))}.", isUsage: false);
            }
        }
    }

    /// <summary>Objects to more crossings, or more speeds on the random road, than anybody asks for: each setup is driven over all of them.</summary>
    /// <param name="reader">Gathers what is wrong.</param>
    /// <param name="loads">How many loads count; 0 where that is not known.</param>
    public void RefuseTooMany(AskedReader reader, int loads)
    {
        void Against(int speeds, int most, string of, ChooseRoad? longest)
        {
            if (Math.Max(1, loads) * (long)speeds > most)
            {
                reader.Object(Use.Name, Text($"{Count(speeds, "speed", "speeds")} {of}")
                    + (loads > 0 ? Text($" with {Count(loads, "load", "loads")} are {(long)loads * speeds} crossings of each setup") : "")
                    + Text($"; at most {most} are driven{(longest is null ? "" : $": '{longest.Name}' alone has {longest.Speeds.Length}")}. ")
                    + "Leave out speeds" + (loads > 1 ? " or loads." : "."));
            }
        }

        Against(Roads.Sum(road => road.Speeds.Length), MostCrossings, "over obstacles", Roads.MaxBy(road => road.Speeds.Length));
        Against(Speeds.Length, MostRides, "on the random road", null);
    }

    private static List<double> SpeedsOf(AskedReader reader, string words, ChooseUseLine line)
    {
        var speeds = new List<double>();
        foreach (var word in line.Speeds)
        {
            if (reader.Speed(Use, word) is not { } speed)
            {
                continue;
            }

            // 25 km/h and 25000 m/h are one speed, whatever the last bit says.
            if (speeds.Any(one => Math.Round(one, 9) == Math.Round(speed, 9)))
            {
                reader.Object(Use.Name, $"'{words}' has the speed '{word}' twice: it counts once. Leave one of them out.");
                continue;
            }

            speeds.Add(speed);
        }

        return speeds;
    }

    private static void Refuse(AskedReader reader, string words, ChooseUseLine line, bool isSecond)
    {
        if (isSecond)
        {
            reader.Object(Use.Name, $"'{words}' is a second random road: the ride is told of one. Leave one of them out.");
        }

        if (line.Weight is not null)
        {
            reader.Object(Use.Name, $"'{words}' has a weight: the ride is never added to what obstacles do. Leave it out.");
        }
    }
}
