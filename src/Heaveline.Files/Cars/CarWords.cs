using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for a whole vehicle.</summary>
internal static class CarWords
{
    private static readonly Key<string> Name = Key.Required("car", "What the vehicle is called.", Kind.Text(), "Fern estate", property: "Name");
    private static readonly Key<VehicleKind> VehicleKind = Key.Optional(
        "kind",
        "A car (when left out) or a two-wheeler.",
        Kind.Choice(("car", Heaveline.Cars.VehicleKind.Car), ("two-wheeler", Heaveline.Cars.VehicleKind.TwoWheeler)),
        "car");
    private static readonly Key<BodyStyle> BodyStyle = Key.Optional(
        "body-style",
        "What the car looks like from its side; guessed when left out. The page of a pass draws it so; nothing is computed from it. "
            + "A two-wheeler has none.",
        Kind.Choice(
            ("hatchback", Heaveline.Cars.BodyStyle.Hatchback),
            ("saloon", Heaveline.Cars.BodyStyle.Saloon),
            ("estate", Heaveline.Cars.BodyStyle.Estate),
            ("van", Heaveline.Cars.BodyStyle.Van),
            ("pick-up", Heaveline.Cars.BodyStyle.PickUp),
            ("off-roader", Heaveline.Cars.BodyStyle.OffRoader),
            ("kit-car", Heaveline.Cars.BodyStyle.KitCar)),
        "estate");
    private static readonly Key<string> Note = Key.Optional("note", "How and when it was measured.", Kind.Lines(), "Weighed with a full tank.");
    private static readonly Key<Amount<Length>> Wheelbase = Key.Required(
        "wheelbase", "From front to rear wheel centre along the car.", Kind.Amount<Length>(), "2.70 m ± 5 mm")
        .Usually("1 m", "4.5 m");
    private static readonly Key<Weighing> Weighing = Key.Required("weighing", "What the scales read.", BodyWords.Weighing);
    private static readonly Key<Body> Body = Key.Required("body", "The body on its springs.", BodyWords.Body);
    private static readonly Key<Axle> Front = Key.Required("front", "The front axle.", AxleWords.Shape);
    private static readonly Key<Axle> Rear = Key.Required("rear", "The rear axle.", AxleWords.Shape);
    private static readonly Key<Interconnection> Interconnection = Key.Optional(
        "interconnection", "What joins front and rear; nothing when left out.", InterconnectionWords.Shape);
    private static readonly Key<BrakeGeometry> Brakes = Key.Optional(
        "brakes", "How the links carry braking and driving forces; nothing carried when left out.", BrakeWords.Shape);
    private static readonly Key<IReadOnlyList<KeyValuePair<string, Seat>>> Seats = Key.Optional(
        "seats", "Places where people sit, each under a name of your choice.", Kind.Named(LoadWords.Seat));
    private static readonly Key<Headlamp> Headlamp = Key.Optional("headlamp", "The dipped headlamp.", LoadWords.Headlamp);
    private static readonly Key<IReadOnlyList<KeyValuePair<string, IReadOnlyList<LoadAsWritten>>>> Loads = Key.Optional(
        "loads",
        "Who and what may be in it: lists of loads, each under a name of your choice. The state described is always there.",
        Kind.Named(Kind.List(LoadWords.Load)));

    /// <summary>The whole file.</summary>
    public static readonly Shape<Car> Shape = new Shape(
        "car file",
        "One vehicle as measured, standing on its wheels without the loads listed below.",
        Name,
        VehicleKind,
        BodyStyle,
        Note,
        Wheelbase,
        Weighing,
        Body,
        Front,
        Rear,
        Interconnection,
        Brakes,
        Seats,
        Headlamp,
        Loads)
        .As(Make);

    // Every one is a car of its own to whatever is worked out over all.
    private const int MostLoads = 60;

    private static Car Make(Fields f)
    {
        if (f.Optional(Loads, []) is { Count: > MostLoads } loads)
        {
            f.Refuse(
                Loads,
                FormattableString.Invariant($"has {loads.Count} load states; it must have at most {MostLoads}."),
                "Keep those that are driven: descriptions, reports and rules work out every one of them.");
        }

        if (f.Optional(VehicleKind, Heaveline.Cars.VehicleKind.Car) == Heaveline.Cars.VehicleKind.TwoWheeler && f.Has(BodyStyle))
        {
            f.Refuse(BodyStyle, "stands in the file of a two-wheeler, which is drawn as a motorcycle.", "Take the key out, or write kind: car.");
        }

        var seats = f.Optional(Seats, []).Select(pair => pair.Value with { Name = pair.Key }).ToList();
        return new Car
        {
            Name = f.Required(Name),
            Kind = f.Optional(VehicleKind, Heaveline.Cars.VehicleKind.Car),
            BodyStyle = f.OptionalValue(BodyStyle),
            Note = f.Optional(Note) ?? "",
            Wheelbase = f.Required(Wheelbase),
            Weighing = f.Required(Weighing),
            Body = f.Required(Body),
            Front = f.Required(Front),
            Rear = f.Required(Rear),
            Interconnection = f.Optional(Interconnection),
            Brakes = f.Optional(Brakes),
            Seats = seats,
            Headlamp = f.Optional(Headlamp),

            // A load in a seat that is not there is refused by the checks of the whole file.
            LoadStates = [.. f.Optional(Loads, [])
                .Select(state => new LoadState { Name = state.Key, Loads = [.. state.Value.Select(load => load.Placed(seats)).OfType<Load>()] })],
        };
    }
}
