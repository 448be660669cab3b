using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Numerics;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>What can be chosen about a choice of parts, and how it is read.</summary>
internal static class ChooseChoices
{
    /// <summary>What is driven over where nothing else is said, a line each.</summary>
    public static readonly string[] UsualUse =
        ["village-hump at 25 km/h, 40 km/h, 60 km/h", "short-bump at 50 km/h, 80 km/h", "class C at 60 km/h, 100 km/h"];

    /// <summary>A car, or a study.</summary>
    public static readonly Choice Car = Choices.Car with
    {
        Says = "A car file or a variant; or the file of a study, which names the car and says all that the options say.",
    };

    /// <summary>Lists of parts.</summary>
    public static readonly Choice Lists = new()
    {
        Name = "parts",
        Kind = ChoiceKind.Parts,
        Says = "A list of parts with their prices; may be given more than once.",
        HelpName = "FILE",
        IsRepeated = true,
    };

    /// <summary>What is driven over.</summary>
    public static readonly Choice Use = new()
    {
        Name = "use",
        Kind = ChoiceKind.Word,
        Says = "An obstacle and speeds that count, or the class of a random road for the ride: \"village-hump at 25 km/h, 40 km/h\", \"class C at "
            + "80 km/h\"; behind a semicolon the loads with which it counts and what it weighs beside the other obstacles, \"plank at 30 km/h; loads "
            + $"driver; weight 2\"; may be given more than once. Without it: {string.Join("; ", UsualUse)}.",
        HelpName = "ROAD at SPEEDS",
        IsRepeated = true,
    };

    /// <summary>The loads that count.</summary>
    public static readonly Choice Loads = new()
    {
        Name = "load",
        Kind = ChoiceKind.Load,
        Says = "A load that counts, by its name in the car file, or 'empty'; may be given more than once. Without it: every load of the file.",
        HelpName = "NAME",
        IsRepeated = true,
    };

    /// <summary>The places whose part may change.</summary>
    public static readonly Choice Open = new()
    {
        Name = "open",
        Kind = ChoiceKind.Word,
        Says = $"A place whose part may change ({string.Join(", ", PartPlaces.All.Select(place => place.Name()))}), and behind a colon what may go "
            + "there: \"front spring: at most 120\" a piece, the names of parts with commas between, or a free range, \"front spring: "
            + $"{ChooseRange.ExampleOf(PartSort.Spring)}\", of the present dampers \"{ChooseRange.ExampleOf(PartSort.Damper)}\"; may be given "
            + "more than once. Without it: springs, dampers and bars.",
        HelpName = "PLACE",
        IsRepeated = true,
    };

    /// <summary>The places that stay as they are.</summary>
    public static readonly Choice Keep = new()
    {
        Name = "keep",
        Kind = ChoiceKind.Word,
        Says = "A place that stays as it is, of those that are open without a word; may be given more than once.",
        HelpName = "PLACE",
        IsRepeated = true,
    };

    /// <summary>What is wished.</summary>
    public static readonly Choice Wish = new()
    {
        Name = "wish",
        Kind = ChoiceKind.Word,
        Says = $"A number that is wished small ({string.Join(", ", ChooseWishes.Words)}); may be given more than once, settling is always the first. "
            + "Without it: settling, hit, ride, money and parts changed, as far as they can be told.",
        HelpName = "WISH",
        IsRepeated = true,
    };

    /// <summary>What it may cost.</summary>
    public static readonly Choice Budget = new()
    {
        Name = "budget",
        Kind = ChoiceKind.Quantity,
        Says = "What it may cost, in the currency of the lists (\"600 EUR\"). Without it: no limit.",
        HelpName = "MONEY",
    };

    /// <summary>Other limits.</summary>
    public static readonly Choice With = new()
    {
        Name = "with",
        Kind = ChoiceKind.Word,
        Says = $"Another limit than usual, \"{ChooseLimitReader.Example}\": of {string.Join(", ", ChooseLimitReader.Names)}; "
            + "\"hit at most 5 % more, in 19 of 20 cars\" says in what share of the drawn cars; may be given more than once. "
            + $"Without it: {ChooseLimitReader.Usual}.",
        HelpName = "LIMIT",
        IsRepeated = true,
    };

    /// <summary>In how many drawn cars.</summary>
    public static readonly Choice Draws = new()
    {
        Name = "draws",
        Kind = ChoiceKind.Number,
        Says = "In how many cars drawn within the stated doubts the best are driven, 10 to 10000.",
        HelpName = "NUMBER",
        Usual = "200",
        Range = (10, 1e4),
    };

    /// <summary>The seed.</summary>
    public static readonly Choice Seed = Choices.Seed();

    /// <summary>All of them, in the order of the help.</summary>
    public static IReadOnlyList<Choice> All { get; } = [Car, Lists, Use, Loads, Open, Keep, Wish, Budget, With, Draws, Seed];

    /// <summary>Reads what is asked; null where anything was objected to.</summary>
    public static ChooseAsked? Read(AskedReader reader)
    {
        if (!reader.OpenStudy(Car))
        {
            return null;
        }

        var (draws, seed) = (reader.Whole(Draws), reader.Seed(Seed));
        var use = ChooseUseReader.Read(reader);
        var (open, filters) = ChooseOpenReader.Read(reader);
        var lists = reader.Parts(Lists);
        var car = reader.Car(Car);
        // Of a file that cannot be read nobody knows whether it names its lists.
        if (!reader.IsUnreadable(Car) && reader.Given.All(Lists).Count == 0
            && !(open.Length > 0 && open.All(place => filters.Any(f => f.Place == place && f.Range is not null))))
        {
            reader.Object(Lists.Name, $"{Lists.Name} must be given: {Lists.Says}");
        }

        if (ChooseLists.Against(lists) is { } wrong)
        {
            reader.Object(Lists.Name, wrong.Message, isUsage: false);
        }

        ChooseOpenReader.RefuseUnknown(reader, filters, lists);
        var limits = ChooseLimitReader.Read(reader, With) with { Cost = ReadBudget(reader, lists) };
        var isFree = filters.Any(filter => filter.Range is not null);
        if (isFree && limits.Cost is not null)
        {
            reader.Object(Budget.Name, "A budget is given beside a free range: nobody knows the price of what is not sold. Leave one of them out.");
        }

        RefuseUnshown(reader, limits, draws);
        if (limits.Grip is not null && use.Speeds.IsEmpty)
        {
            reader.Object(With.Name, $"'grip' is limited, and nothing is driven over for it: give a class, {UsualUse[^1]}.");
        }

        var wishes = ReadWishes(reader, use.Speeds.IsEmpty, isFree || lists.SelectMany(list => list.Parts).All(part => part.Price is null));
        var loads = car is null ? [] : ReadLoads(reader, car);
        use.RefuseUnknown(reader, car is null ? null : loads);
        use.RefuseTooMany(reader, loads.Length);
        return reader.IsRefused
            ? null
            : new ChooseAsked
            {
                Car = car!,
                Lists = [.. lists],
                Open = open,
                Filters = filters,
                Wishes = wishes,
                Roads = use.Roads,
                IsUsualUse = reader.Given.All(Use).Count == 0,
                Class = use.Class ?? RoadClass.C,
                RideSpeeds = use.Speeds,
                RideLoads = use.Loads,
                Loads = loads,
                Limits = limits,
                Draws = draws!.Value,
                Seed = seed!.Value,
            };
    }

    private static ImmutableArray<ChooseWish> ReadWishes(AskedReader reader, bool isWithoutRide, bool isWithoutPrices)
    {
        var wishes = ImmutableArray.CreateBuilder<ChooseWish>();
        foreach (var word in reader.Texts(Wish))
        {
            if (ChooseWishes.Of(word) is not { } wish)
            {
                reader.Object(Wish.Name, $"'{word}' is no wish; there are {string.Join(", ", ChooseWishes.Words)}.");
                continue;
            }

            if (wish is ChooseWish.Ride or ChooseWish.Grip && isWithoutRide)
            {
                reader.Object(Wish.Name, $"'{word}' is wished, and nothing is driven over for it: give a class, {UsualUse[^1]}.");
            }
            else if (wish == ChooseWish.Money && isWithoutPrices)
            {
                reader.Object(Wish.Name, $"'{word}' is wished, and nothing has a price here.", isUsage: false);
            }

            if (wishes.Contains(wish))
            {
                reader.Object(Wish.Name, $"'{word}' is wished twice: it counts once. Leave one of them out.");
            }

            wishes.Add(wish);
        }

        return wishes.Count == 0 ? [] : [.. wishes.Append(ChooseWish.Settling).Distinct().Order()];
    }

    // Of few draws a share is told as not sure yet; of many it must be one that so many can show.
    private static void RefuseUnshown(AskedReader reader, ChooseLimits limits, int? draws)
    {
        if (draws is { } count and >= TriedSetup.Few && WilsonInterval.Of(count, count).Low < limits.GreatestShare)
        {
            reader.Object(With.Name, FormattableString.Invariant(
                $"Of {count} drawn cars none can show a limit in {In.Percent.Of(limits.GreatestShare):0.#} % of them: draw more, or ask for less."));
        }
    }

    private static Money? ReadBudget(AskedReader reader, IReadOnlyList<PartsList> lists)
    {
        if (reader.Text(Budget) is not { } words)
        {
            return null;
        }

        var (money, refusal) = ChooseBudget.Read(words);
        if (refusal is not null)
        {
            reader.Object(Budget.Name, $"budget '{words}' is no amount of money: write it as 600 EUR.");
            return null;
        }

        var known = lists.Select(list => list.Currency).Where(c => c.Length > 0).Distinct().ToArray();
        var currency = money.Currency.Length > 0 ? money.Currency : known is [var one] ? one : "";
        if (known.Length == 0 || known.Contains(currency))
        {
            return money with { Currency = currency };
        }

        reader.Object(Budget.Name, $"budget '{words}': the lists are in {string.Join(" and ", known)}.");
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
                if (loads.Any(one => one.Name == load.Name))
                {
                    reader.Object(Loads.Name, $"'{name}' is given twice: it counts once. Leave one of them out.");
                    continue;
                }

                loads.Add(load);
            }
            else
            {
                reader.Object(Loads.Name, LoadedCar.NoLoad(car, name), isUsage: false);
            }
        }

        return names.Count > 0 ? loads.ToImmutable() : car.LoadStates.Count > 0 ? [.. car.LoadStates] : [LoadState.Reference];
    }
}
