using Heaveline.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Files.Parts;

/// <summary>
/// Fitted parts as a variant of the car's file: reading it gives the car that they were fitted to, with them. A part's error keeps its name where a
/// car file has a place for one: at a spring's rate and at a damper's forces.
/// </summary>
public static class FittedVariant
{
    /// <summary>The text of the variant.</summary>
    /// <param name="fitted">The car and its parts.</param>
    /// <param name="before">The reading of the car without them.</param>
    /// <param name="title">What the variant is to be called.</param>
    /// <param name="of">The car's file, as seen from the variant's.</param>
    /// <exception cref="ArgumentException">The reading is not that of the car.</exception>
    public static string Of(Fitted fitted, Reading<Car> before, string title, string of)
    {
        ArgumentNullException.ThrowIfNull(fitted);
        ArgumentNullException.ThrowIfNull(before);
        if (before.Root is not { } root || before.Value != fitted.Before)
        {
            throw new ArgumentException("The parts were fitted to another car.", nameof(before));
        }

        var text = new ValueText("\n", 2, 2);
        var names = string.Join(", ", fitted.Parts.Select(part => $"{part.Option.Name} as {part.Place.Name()}"));
        (string Key, Node Value)[] lines =
        [
            ("variant", Node.Scalar(title)),
            ("of", Node.Scalar(of)),
            ("note", Node.Scalar($"Fitted: {names}.")),
            ("change", PartNodes.Group(
                ("weighing", Weighing(fitted, root)),
                ("front", Axle(fitted, root, AxleEnd.Front)),
                ("rear", Axle(fitted, root, AxleEnd.Rear)),
                ("interconnection", Link(fitted, root)))),
        ];
        return string.Concat(lines.Select(line => text.Entry(line.Key, line.Value, 0) + "\n"));
    }

    private static Node? Axle(Fitted fitted, Node root, AxleEnd end)
    {
        var (key, axle) = (end == AxleEnd.Front ? "front" : "rear", fitted.Car.Axles[(int)end]);
        (string Key, Node? Value)[] entries =
        [
            .. from part in fitted.Parts
               where part.Place.End() == end
               orderby part.Place
               from entry in Part(part, axle, root.At(key))
               where entry.Value is not null
               select entry,
        ];
        return entries.Length == 0 ? null : PartNodes.Group(entries);
    }

    private static IEnumerable<(string Key, Node? Value)> Part(FittedPart part, Axle axle, Node? before) => part.Place.Sort() switch
    {
        PartSort.Spring => [("bought-spring", Spring(axle.Spring, part.Option.Part).InPlaceOf(before?.At("bought-spring")))],
        PartSort.Damper =>
        [
            ("damper", Damper(axle.Damper, part.Option.Part).InPlaceOf(before?.At("damper"), Moves(before?.At("damper")))),
        ],
        PartSort.Bar =>
        [
            ("anti-roll-bar", axle.AntiRollBar.Si == 0.0
                ? before?.At("anti-roll-bar") is null ? null : Node.Nothing
                : PartNodes.Group(("wheel-rate", PartNodes.Amount(axle.AntiRollBar, In.NewtonsPerMillimetre, part.Option.Part, "wheel-rate")))
                    .InPlaceOf(before?.At("anti-roll-bar"))),
        ],
        PartSort.Stop => [("bump-stop", Stop(axle.BumpStop!, part.Option.Part).InPlaceOf(before?.At("bump-stop")))],
        _ =>
        [
            ("unsprung-mass", PartNodes.Amount(axle.UnsprungMass, In.Kilograms)),
            ("axle-inertia", PartNodes.Amount(axle.RollInertia, In.KilogramSquareMetres)),
            ("tyre", PartNodes.Group(
                ("rate", PartNodes.Amount(axle.Tyre.Rate, In.NewtonsPerMillimetre, part.Option.Part, "rate")),
                ("damping", PartNodes.Amount(axle.Tyre.Damping, In.NewtonSecondsPerMetre, part.Option.Part, "damping")),
                ("contact-length", PartNodes.Amount(axle.Tyre.ContactLength, In.Millimetres, part.Option.Part, "contact-length")))
                .InPlaceOf(before?.At("tyre"))),
        ],
    };

    private static Node Spring(Spring spring, Part part)
    {
        var (seat, table) = (spring.Swap!.Seat, (spring.Law as TableSpring)?.Table);
        var linear = spring.Law as LinearSpring;
        // A car file takes a rate or a wire: where both were given the rate is what was measured.
        var coil = linear is { Origin: LinearSpring.FromWire, Dimensions: CoilDimensions dimensions } ? dimensions : null;
        return PartNodes.Group(
            ("rate", linear is null || coil is not null ? null : PartNodes.Amount(linear.Rate, In.NewtonsPerMillimetre, part, "rate")),
            ("coil", coil is null ? null : PartNodes.Group(
                ("wire", PartNodes.Amount(coil.Wire, In.Millimetres, part, "wire")),
                ("mean-diameter", PartNodes.Amount(coil.MeanDiameter, In.Millimetres, part, "mean-diameter")),
                ("active-coils", PartNodes.Amount(coil.ActiveCoils, In.Plain, part, "active-coils")),
                ("shear-modulus", PartNodes.Amount(coil.ShearModulus, In.Megapascals, part, "shear-modulus")))),
            ("table", table is null ? null : PartNodes.Table(table, In.Millimetres)),
            ("table-doubt", table is null ? null : PartNodes.TableDoubt(table)),
            ("free-length", PartNodes.Amount(spring.FreeLength, In.Millimetres, part, "free-length")),
            ("block-length", PartNodes.Amount(spring.BlockLength, In.Millimetres, part, "block-length")),
            ("seat-diameter", PartNodes.Amount(spring.SeatDiameter, In.Millimetres, part, "seat-diameter")),
            ("seat", seat.Si == 0.0 ? null : PartNodes.Amount(seat, In.Millimetres)),
            ("tester", PartNodes.Name(table?.Factor.Doubt.Shared ?? (coil is null ? linear?.Rate.Doubt.Shared : null))));
    }

    private static Node Damper(Damper damper, Part part)
    {
        var law = (TableDamper)damper.Law;
        return PartNodes.Group(
            ("bump", PartNodes.Table(law.Bump, In.MetresPerSecond)),
            ("rebound", PartNodes.Table(law.Rebound, In.MetresPerSecond)),
            ("table-doubt", PartNodes.TableDoubt(law.Bump)),
            ("rig", PartNodes.Name(law.Factor.Doubt.Shared)),
            ("gas-force", PartNodes.Amount(damper.GasForce, In.Newtons, part, "gas-force")),
            ("weighed-gas-force", PartNodes.Amount(damper.WeighedGasForce, In.Newtons)));
    }

    // What a damper's keys say of how it moves stays: the new one stands where the old one stood.
    private static string[] Moves(Node? damper) => [.. (damper?.Entries ?? []).Select(entry => entry.Key).Except(
        ["bump", "rebound", "table-doubt", "rig", "damping-ratio", "rebound-per-bump", "gas-force", "weighed-gas-force"])];

    private static Node Stop(Stop stop, Part part) => PartNodes.Group(
        ("clearance", PartNodes.Amount(stop.Clearance, In.Millimetres)),
        ("table", PartNodes.Table(stop.Table!, In.Millimetres)),
        ("table-doubt", PartNodes.TableDoubt(stop.Table!)),
        ("solid-after", PartNodes.Amount(stop.SolidAfter, In.Millimetres, part, "solid-after")),
        ("length", PartNodes.Amount(stop.Length, In.Millimetres, part, "length")));

    private static Node? Weighing(Fitted fitted, Node root)
    {
        var (was, now) = (fitted.Before.Weighing, fitted.Car.Weighing);
        if (was == now || root.At("weighing") is not { } written)
        {
            return null;
        }

        Node? Wheel(string key, Amount<Mass> mass) => written.At(key) is null ? null : PartNodes.Amount(mass, In.Kilograms);
        Node? Both(string key, Amount<Mass> left, Amount<Mass> right) => written.At(key) is null ? null : PartNodes.Amount(
            new Amount<Mass>(left.Si + right.Si, new Doubt(left.Doubt.HalfWidth + right.Doubt.HalfWidth)), In.Kilograms);
        return PartNodes.Group(
            ("front", Both("front", now.FrontLeft, now.FrontRight)),
            ("rear", Both("rear", now.RearLeft, now.RearRight)),
            ("front-left", Wheel("front-left", now.FrontLeft)),
            ("front-right", Wheel("front-right", now.FrontRight)),
            ("rear-left", Wheel("rear-left", now.RearLeft)),
            ("rear-right", Wheel("rear-right", now.RearRight)));
    }

    private static Node? Link(Fitted fitted, Node root)
    {
        if (!fitted.Parts.Any(part => part.Place == PartPlace.Link))
        {
            return null;
        }

        var (link, before) = ((ElasticLink)fitted.Car.Interconnection!, root.At("interconnection"));
        var part = fitted.Parts.Single(one => one.Place == PartPlace.Link).Option.Part;
        return PartNodes.Group(("elastic", PartNodes.Group(
            ("rate", PartNodes.Amount(link.Rate, In.NewtonsPerMillimetre, part, "rate")),
            ("damping", PartNodes.Amount(link.Damping, In.NewtonSecondsPerMetre, part, "damping")),
            ("front-per-wheel", PartNodes.Amount(link.FrontRatio, In.Plain, part, "front-per-wheel")),
            ("rear-per-wheel", PartNodes.Amount(link.RearRatio, In.Plain, part, "rear-per-wheel")))
            .InPlaceOf(before?.At("elastic")))).InPlaceOf(before);
    }
}
