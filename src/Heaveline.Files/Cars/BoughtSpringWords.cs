using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for a coil spring that takes the place of the one that was weighed.</summary>
internal static class BoughtSpringWords
{
    /// <summary>Rate.</summary>
    public static readonly Key<Amount<Stiffness>> Rate = Key.Optional(
        "rate",
        "Rate of one spring, at the spring itself. It moves with the wheel as the spring before it.",
        Kind.Amount<Stiffness>(),
        "24 N/mm ± 3 %")
        .Usually("1 N/mm", "1000 N/mm");

    /// <summary>Seat.</summary>
    public static readonly Key<Amount<Length>> Seat = Key.Optional(
        "seat",
        "Thickness of packing under the spring, or how far an adjustable seat is raised; lowered it is negative. None when left out.",
        Kind.Amount<Length>(),
        "6 mm")
        .Usually("-100 mm", "100 mm");

    /// <summary>Preload.</summary>
    public static readonly Key<Amount<Length>> Preload = Key.Optional(
        "preload",
        "How far the spring is still pressed together at full droop, instead of seat: full droop is the rebound stop's hard end, or its touch.",
        Kind.Amount<Length>(),
        "12 mm")
        .Usually("0 mm", "200 mm");

    /// <summary>The group.</summary>
    public static readonly Shape<BoughtSpring> Shape = new Shape(
        "bought spring",
        "A coil spring that now stands where spring stood on the scales. With its free-length, and the free-length or the installed-length of "
            + "spring, the car finds its new height; without one of them the height is kept, and what that takes is told.",
        [
            Rate, SpringWords.Table, SpringWords.Doubt, SpringWords.Coil, CoilLengths.Free, CoilLengths.Block, CoilLengths.SeatDiameter, Seat,
            Preload, SpringWords.Tester,
        ])
        .WithOneOf(Rate, SpringWords.Table, SpringWords.Coil)
        .As(Make);

    /// <summary>Refuses what a bought spring asks of its axle and does not find.</summary>
    /// <param name="axle">The axle as written.</param>
    /// <param name="bought">Its key.</param>
    /// <param name="spring">The key of the spring that was weighed.</param>
    /// <param name="droop">The key of the rebound stop.</param>
    /// <returns>Whether anything was refused.</returns>
    public static bool Refuse(Fields axle, Key<BoughtSpring> bought, Key<Spring> spring, Key<Stop> droop)
    {
        var (given, before) = (axle.Required(bought), axle.Required(spring));
        var written = axle.Node.At(spring.Name);
        Key[] others = [SpringWords.WheelRate, SpringWords.TorsionBar, SpringWords.Leaf];
        if (others.FirstOrDefault(key => written?.At(key.Name) is not null) is { } how)
        {
            axle.Refuse(
                bought,
                $"stands beside a spring that is given by {how.Name}, which says nothing of the seats of a coil spring.",
                $"Describe the coil that was weighed: {SpringWords.Rate.Name} or {SpringWords.Coil.Name}, and how far it moves with its wheel.");
            return true;
        }

        if (given.Preload is not null && !axle.Has(droop))
        {
            axle.Refuse(
                bought,
                $"gives {Preload.Name}, which counts from full droop, but the axle has no {droop.Name}.",
                $"Describe the {droop.Name}, or give {CoilLengths.Free.Name} instead of {Preload.Name}.");
            return true;
        }

        var isPlaced = given.Free is not null && (before.FreeLength is not null || before.InstalledLength is not null);
        if (axle.Node.At(bought.Name)?.At(Seat.Name) is not null && !isPlaced)
        {
            axle.Refuse(
                bought,
                $"gives {Seat.Name}, but not from where it counts: the lengths are missing.",
                $"Add {CoilLengths.Free.Name} here, and {CoilLengths.Free.Name} or {CoilLengths.Installed.Name} to spring; or take {Seat.Name} out.");
            return true;
        }

        return false;
    }

    private static BoughtSpring? Make(Fields f)
    {
        var tester = f.Optional(SpringWords.Tester);
        if (!f.Has(SpringWords.Table) && TableDoubt.RefuseWithout(f, SpringWords.Doubt, $"{Rate.Name}: {Rate.Example}"))
        {
            return null;
        }

        SpringLaw law = f.OptionalValue(Rate) is { } rate
            ? new LinearSpring { Rate = ProductDoubt.Under(rate, tester), Origin = "as bought" }
            : SpringWords.TableOrCoil(f, tester)!;
        if (f.Has(Seat) && f.Has(Preload))
        {
            f.Refuse(Seat, $"is given beside {Preload.Name}, which says where the spring stands already.", "Keep the one that was measured.");
            return null;
        }

        if (CoilLengths.RefuseTable(f, CoilLengths.Free, law)
            || CoilLengths.RefuseTable(f, Preload, law)
            || CoilLengths.RefuseNotBelow(f, CoilLengths.Block, CoilLengths.Free, "Measure both out of the car, without load and pressed solid.")
            || CoilLengths.RefuseNotBelow(f, Preload, CoilLengths.Free, "Preload is how far it is pressed together, not how long it is."))
        {
            return null;
        }

        return new BoughtSpring(
            law, Positive(f, CoilLengths.Free), Positive(f, CoilLengths.Block), f.Optional(Seat, default), f.OptionalValue(Preload) is { } preload
                ? Checked.NotNegative(preload, "0 where it just touches both seats with the wheel hanging.", Preload.Property)
                : null,
            Positive(f, CoilLengths.SeatDiameter));
    }

    private static Amount<Length>? Positive(Fields f, Key<Amount<Length>> key) => f.OptionalValue(key) is { } length
        ? Checked.Positive(length, "Measure it out of the car.", key.Property)
        : null;
}
