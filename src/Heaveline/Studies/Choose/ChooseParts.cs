using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>The parts that may be chosen, place by place, and the setups that they make.</summary>
internal sealed class ChooseParts
{
    /// <summary>What an option is called that leaves a place as it is.</summary>
    public const string AsItIs = "as it is";

    // Where a damper is looked at, m/s: as slow as a body moves, as fast as a wheel does, both ways.
    private static readonly double[] DamperSpeeds = [0.1, 0.5, -0.1, -0.5];

    private readonly Car car;
    private readonly ImmutableArray<ImmutableArray<PartOption?>> options;

    /// <param name="asked">What is asked.</param>
    /// <exception cref="RefusedValueException">No part fits any open place; too many setups; the lists cannot be taken together.</exception>
    public ChooseParts(ChooseAsked asked)
    {
        car = asked.Car;
        if (ChooseLists.Against(asked.Lists) is { } wrong)
        {
            throw wrong;
        }

        var lists = PartsLists.Apart(asked.Lists);
        // Beside a part that nobody sells no setup has a price.
        var known = !asked.HasRanges && lists.SelectMany(list => list.Parts).Any(part => part.Price is not null);
        var (places, all, open) = (new List<PartPlace>(), new List<ImmutableArray<PartOption?>>(), new List<OpenPlace>());
        var (unfit, unpriced) = (new List<Misfit>(), new SortedSet<string>(StringComparer.Ordinal));
        foreach (var place in asked.Open.Distinct().Order())
        {
            // By name, so that the order of a list changes nothing.
            var fits = new List<PartOption?> { null };
            foreach (var part in
                lists.SelectMany(list => list.For(place)).Where(Takes(asked, place)).OrderBy(part => part.Name, StringComparer.Ordinal))
            {
                if (known && part.Price is null)
                {
                    unpriced.Add(part.Name);
                    continue;
                }

                foreach (var option in part.Options)
                {
                    if (Fitting.Of(car, [new FittedPart(place, option)]) is Misfit misfit && !HangsOnOthers(misfit.Kind))
                    {
                        unfit.Add(misfit);
                        break;
                    }

                    fits.Add(option);
                }
            }

            if (asked.RangeAt(place) is { } range)
            {
                AddFree(place, range, fits, unfit);
            }

            if (fits.Count > 1)
            {
                places.Add(place);
                all.Add([.. fits]);
                open.Add(new OpenPlace(place.Name(), [.. fits.Select(option => Option(place, option))])
                {
                    IsSilent = place is PartPlace.FrontBar or PartPlace.RearBar,
                });
            }
        }

        if (places.Count == 0)
        {
            throw new RefusedValueException(
                "parts that fit", unfit.Count == 0 ? "none for the open places" : $"none: {unfit[0].Words}", "one at least",
                "'heaveline parts check' says of each why it does not fit.");
        }

        (Places, options, Unfit, Unpriced, HasPrices) = ([.. places], [.. all], unfit, [.. unpriced], known);
        Currency = lists.SelectMany(list => list.Parts)
            .Select(part => part.Price?.Currency).FirstOrDefault(currency => !string.IsNullOrEmpty(currency)) ?? "";
        IsJoined = car.Interconnection is not null || Places.Contains(PartPlace.Link);
        Space = new SetupSpace(IsJoined ? [.. open.Select(place => place with { IsSilent = false })] : open);
    }

    /// <summary>The open places for which there is a choice.</summary>
    public ImmutableArray<PartPlace> Places { get; }

    /// <summary>The setups.</summary>
    public SetupSpace Space { get; }

    /// <summary>Parts that fit in no way.</summary>
    public IReadOnlyList<Misfit> Unfit { get; }

    /// <summary>Parts that are left out since nobody said their price.</summary>
    public ImmutableArray<string> Unpriced { get; }

    /// <summary>
    /// Whether something joins front and rear, or may: then no axle tells by itself how the car stands, and bars are driven as all else is.
    /// </summary>
    public bool IsJoined { get; }

    /// <summary>Whether prices are known at all.</summary>
    public bool HasPrices { get; }

    /// <summary>The currency of the prices.</summary>
    public string Currency { get; }

    /// <summary>A setup as parts at places.</summary>
    public FittedPart[] Fitted(long setup)
    {
        var parts = new List<FittedPart>(Places.Length);
        for (var k = 0; k < Places.Length; k++)
        {
            if (options[k][Space.OptionAt(setup, k)] is { } option)
            {
                parts.Add(new FittedPart(Places[k], option));
            }
        }

        return [.. parts];
    }

    /// <summary>The car with a setup in it, or why it does not fit.</summary>
    public FittingResult Fit(long setup) => Fitting.Of(car, Fitted(setup));

    /// <summary>What changes with a setup, in words ("front spring Larch L-170, rear damper Wren W3 at click 6").</summary>
    public string Words(long setup) => setup == 0L
        ? AsItIs
        : string.Join(", ", Fitted(setup).Select(part => $"{part.Place.Name()} {part.Option.Name}"));

    /// <summary>What stands at a place.</summary>
    public string At(long setup, int place) => options[place][Space.OptionAt(setup, place)]?.Name ?? AsItIs;

    /// <summary>What stands at a place; null where it stays as it is.</summary>
    public PartOption? OptionOf(int place, int option) => options[place][option];

    /// <summary>Whether any part states a doubt, as it stands in the car.</summary>
    /// <param name="load">Any load.</param>
    public bool StatesDoubts(LoadState load) => Places.Index().SelectMany(place => options[place.Index].OfType<PartOption>()
            .Select(option => Fitting.Of(car, [new FittedPart(place.Item, option)])))
        .OfType<Fitted>().Any(fitted => CarDoubts.Of(fitted.Car, load).AreStated);

    /// <summary>What a setup costs.</summary>
    public Money Price(long setup) => new((decimal)Space.Price(setup), Currency);

    private void AddFree(PartPlace place, ChooseRange range, List<PartOption?> fits, List<Misfit> unfit)
    {
        if (place.Sort() == PartSort.Damper && car.Axles[(int)place.End()!.Value].Damper.Law is RatioDamper)
        {
            throw new RefusedValueException(
                $"{place.Name()}, a range of its forces", "given to a car whose damper is described by a damping ratio", "one with a table",
                "Measure the damper, or give the parts of a list.");
        }

        foreach (var option in ChooseFree.Options(car, place, range))
        {
            if (Fitting.Of(car, [new FittedPart(place, option)]) is Misfit misfit && !HangsOnOthers(misfit.Kind))
            {
                unfit.Add(misfit);
                return;
            }

            fits.Add(option);
        }
    }

    // What nothing was said of takes whatever goes there.
    private static Func<Part, bool> Takes(ChooseAsked asked, PartPlace place) =>
        asked.Filters.FirstOrDefault(filter => filter.Place == place) is { } filter ? filter.Takes : _ => true;

    // These may fit beside another stop or spring than that which is there.
    private static bool HangsOnOthers(MisfitKind kind) =>
        kind is MisfitKind.CoilsTouch or MisfitKind.LooseSpring or MisfitKind.ShortStroke or MisfitKind.WireStress or MisfitKind.StopTouches;

    private SetupOption Option(PartPlace place, PartOption? option)
    {
        if (option is null)
        {
            return new SetupOption(AsItIs, 0.0) { Numbers = Numbers(place, car), Strength = Strength(place, car) };
        }

        var price = option.Part.CostOn(car.Kind) is { } cost ? (double)cost.Value : 0.0;
        return new SetupOption(option.Name, price)
        {
            Numbers = Numbers(place, Fitting.Of(car, [new FittedPart(place, option)]) is Fitted fitted ? fitted.Car : car),
            Strength = option.Spring?.Law.MeanRate ?? (option.Damping is { } damping ? Force(damping) : option.BarRate?.Si),
        };
    }

    // What a search may go by: logarithms of rates and forces, lengths in decimetres.
    private static ImmutableArray<double> Numbers(PartPlace place, Car car)
    {
        var axle = place.End() is { } end ? car.Axles[(int)end] : car.Front;
        return place.Sort() switch
        {
            PartSort.Spring => [Math.Log(axle.Spring.Law.MeanRate ?? 1.0), 10.0 * (axle.Spring.FreeLength?.Si ?? 0.0)],
            PartSort.Damper when axle.Damper.Law is TableDamper { Whole: var whole } =>
                [.. DamperSpeeds.Select(v => Math.Log(Math.Max(1.0, Math.Abs(whole.ForceAt(v))))), axle.Damper.GasForce.Si / 500.0],
            PartSort.Damper => [0.0, 0.0, 0.0, 0.0, 0.0],
            PartSort.Bar => [axle.AntiRollBar.Si / 10_000.0],
            PartSort.Stop => [10.0 * (axle.BumpStop?.Clearance.Si ?? 1.0), 10.0 * (axle.BumpStop?.SolidAfter?.Si ?? 1.0)],
            PartSort.Tyre => [Math.Log(axle.Tyre.Rate.Si), axle.Tyre.Damping.Si / 500.0, axle.UnsprungMass.Si / 50.0],
            _ => car.Interconnection is ElasticLink link ? [link.Rate.Si / 10_000.0, link.Damping.Si / 1_000.0] : [0.0, 0.0],
        };
    }

    // By what one part of a place is softer than another. Of a stop, a tyre or a link no single number says it.
    private static double? Strength(PartPlace place, Car car)
    {
        var axle = place.End() is { } end ? car.Axles[(int)end] : car.Front;
        return place.Sort() switch
        {
            PartSort.Spring => axle.Spring.Law.MeanRate,
            PartSort.Damper => axle.Damper.Law is TableDamper law ? Force(law) : null,
            PartSort.Bar => axle.AntiRollBar.Si,
            _ => null,
        };
    }

    private static double Force(TableDamper law) => DamperSpeeds.Average(v => Math.Abs(law.Whole.ForceAt(v)));
}
