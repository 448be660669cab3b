using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What can be chosen about a choice of parts, and how it is read.</summary>
internal static class ChooseChoices
{
    private const string At = " at ";

    internal static readonly string[] UsualUse =
        ["village-hump at 25 km/h, 40 km/h, 60 km/h", "short-bump at 50 km/h, 80 km/h", "class C at 60 km/h, 100 km/h"];

    private static readonly Choice Lists = new()
    {
        Name = "parts",
        Kind = ChoiceKind.Parts,
        Says = "A list of parts with their prices; may be given more than once.",
        HelpName = "FILE",
        IsRepeated = true,
        IsNeeded = true,
    };

    private static readonly Choice Use = new()
    {
        Name = "use",
        Kind = ChoiceKind.Word,
        Says = "An obstacle and speeds that count, or the class of a random road for the ride: \"village-hump at 25 km/h, 40 km/h\", \"class C at "
            + $"80 km/h\"; may be given more than once. Without it: {string.Join("; ", UsualUse)}.",
        HelpName = "ROAD at SPEEDS",
        IsRepeated = true,
    };

    private static readonly Choice Loads = new()
    {
        Name = "load",
        Kind = ChoiceKind.Load,
        Says = "A load that counts, by its name in the car file, or 'empty'; may be given more than once. Without it: every load of the file.",
        HelpName = "NAME",
        IsRepeated = true,
    };

    private static readonly Choice Open = new()
    {
        Name = "open",
        Kind = ChoiceKind.Word,
        Says = $"A place whose part may change ({string.Join(", ", PartPlaces.All.Select(place => place.Name()))}); may be given more than once. "
            + "Without it: springs, dampers and bars.",
        HelpName = "PLACE",
        IsRepeated = true,
    };

    private static readonly Choice Budget = new()
    {
        Name = "budget",
        Kind = ChoiceKind.Quantity,
        Says = "What it may cost, in the currency of the lists (\"600 EUR\"). Without it: no limit.",
        HelpName = "MONEY",
    };

    private static readonly Choice With = new()
    {
        Name = "with",
        Kind = ChoiceKind.Word,
        Says = $"Another limit than usual, \"{ChooseLimitReader.Example}\": of {string.Join(", ", ChooseLimitReader.Names)}; may be given more than "
            + $"once. Without it: {ChooseLimitReader.Usual}.",
        HelpName = "LIMIT",
        IsRepeated = true,
    };

    private static readonly Choice Draws = new()
    {
        Name = "draws",
        Kind = ChoiceKind.Number,
        Says = "In how many cars drawn within the stated doubts the best are driven, 10 to 10000.",
        HelpName = "NUMBER",
        Usual = "200",
        Range = (10, 1e4),
    };

    private static readonly Choice Seed = Choices.Seed();

    /// <summary>All of them, in the order of the help.</summary>
    public static IReadOnlyList<Choice> All { get; } = [Choices.Car, Lists, Use, Loads, Open, Budget, With, Draws, Seed];

    /// <summary>Reads what is asked; null where anything was objected to.</summary>
    public static ChooseAsked? Read(AskedReader reader)
    {
        var (draws, seed) = (reader.Whole(Draws), reader.Seed(Seed));
        var (roads, rides, letter) = ReadUse(reader);
        var open = ReadOpen(reader);
        var lists = reader.Parts(Lists);
        if (ChooseLists.Against(lists) is { } wrong)
        {
            reader.Object(Lists.Name, wrong.Message, isUsage: false);
        }

        var limits = ChooseLimitReader.Read(reader, With) with { Cost = ReadBudget(reader, lists) };
        var car = reader.Car(Choices.Car);
        var loads = car is null ? [] : ReadLoads(reader, car);
        return reader.IsRefused
            ? null
            : new ChooseAsked
            {
                Car = car!,
                Lists = [.. lists],
                Open = open,
                Roads = roads,
                IsUsualUse = reader.Given.All(Use).Count == 0,
                Class = letter ?? RoadClass.C,
                RideSpeeds = rides,
                Loads = loads,
                Limits = limits,
                Draws = draws!.Value,
                Seed = seed!.Value,
            };
    }

    private static (ImmutableArray<ChooseRoad> Roads, ImmutableArray<double> Rides, RoadClass? Class) ReadUse(AskedReader reader)
    {
        var roads = new List<ChooseRoad>();
        var (rides, letter) = (ImmutableArray<double>.Empty, (RoadClass?)null);
        foreach (var line in reader.Given.All(Use) is { Count: > 0 } given ? reader.Texts(Use) : UsualUse)
        {
            var at = line.LastIndexOf(At, StringComparison.Ordinal);
            if (at < 0)
            {
                reader.Object(Use.Name, $"'{line}' is no use: write an obstacle or a class, 'at', and speeds: {UsualUse[0]}.");
                continue;
            }

            var name = line[..at].Trim();
            ImmutableArray<double> speeds =
                [.. CommaList.Of(line[(at + At.Length)..]).Select(word => reader.Speed(Use, word)).OfType<double>().Distinct().Order()];
            if (name.StartsWith("class ", StringComparison.Ordinal))
            {
                (letter, rides) = (reader.Class(Use, name["class ".Length..].Trim()), speeds);
            }
            else if (reader.Road(Use, name) is { } road)
            {
                if (road.Event is null)
                {
                    reader.Object(
                        Use.Name, $"'{name}' has no obstacle that ends: nothing settles after it. Name an obstacle, or a class.", isUsage: false);
                }

                roads.Add(new ChooseRoad(name, road, speeds));
            }
        }

        if (roads.Count == 0)
        {
            reader.Object(Use.Name, $"No obstacle is given: a settling needs one. Write for example {UsualUse[0]}.");
        }

        return ([.. roads], rides, letter);
    }

    private static ImmutableArray<PartPlace> ReadOpen(AskedReader reader)
    {
        var words = reader.Texts(Open);
        var places = ImmutableArray.CreateBuilder<PartPlace>();
        foreach (var word in words)
        {
            if (PartPlaces.Named(word) is { } place)
            {
                places.Add(place);
            }
            else
            {
                reader.Object(Open.Name, $"'{word}' is no place; there are {string.Join(", ", PartPlaces.All.Select(p => p.Name()))}.");
            }
        }

        return words.Count == 0 ? ChooseAsked.Usual : places.ToImmutable();
    }

    private static Money? ReadBudget(AskedReader reader, IReadOnlyList<PartsList> lists)
    {
        if (reader.Text(Budget) is not { } words)
        {
            return null;
        }

        string[] parts = [.. words.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
        var known = lists.Select(list => list.Currency).Where(c => c.Length > 0).Distinct().ToArray();
        if (parts.Length is 1 or 2 && QuantityText.Number(parts[0]) is { } value && value >= 0.0)
        {
            var currency = parts.Length == 2 ? parts[1] : known is [var one] ? one : "";
            if (known.Length == 0 || known.Contains(currency))
            {
                return new Money((decimal)value, currency);
            }

            reader.Object(Budget.Name, $"budget '{words}': the lists are in {string.Join(" and ", known)}.");
            return null;
        }

        reader.Object(Budget.Name, $"budget '{words}' is no amount of money: write it as 600 EUR.");
        return null;
    }

    private static ImmutableArray<LoadState> ReadLoads(AskedReader reader, Car car)
    {
        var names = reader.Texts(Loads);
        var loads = ImmutableArray.CreateBuilder<LoadState>();
        foreach (var name in names)
        {
            if (LoadedCar.LoadNamed(car, name) is { } load)
            {
                // Twice the same is no more than once.
                if (loads.All(one => one.Name != load.Name))
                {
                    loads.Add(load);
                }
            }
            else
            {
                reader.Object(Loads.Name, LoadedCar.NoLoad(car, name), isUsage: false);
            }
        }

        return names.Count > 0 ? loads.ToImmutable() : car.LoadStates.Count > 0 ? [.. car.LoadStates] : [LoadState.Reference];
    }
}
