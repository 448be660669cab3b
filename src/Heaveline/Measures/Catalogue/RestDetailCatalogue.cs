using Heaveline.Cars;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>
/// What stands behind the numbers of a car at rest: every wheel's load and travel, the axles' ride rates, the loaded body's inertias.
/// </summary>
public static class RestDetailCatalogue
{
    private const string Model = "theory/model.md";

    // What is said of a wheel among the side effects already.
    private static readonly string[] Travels = ["-sag", "-bump-left", "-droop-left"];

    /// <summary>All of them at some wheels, in the order of a table.</summary>
    /// <param name="wheels">The wheels, one each.</param>
    public static IReadOnlyList<Measure<CarAtRest>> Of(IEnumerable<WheelPlace> wheels) => [.. wheels.SelectMany(Wheel), .. Axles, .. Body];

    private static IReadOnlyList<Measure<CarAtRest>> Axles { get; } =
    [
        .. new[] { AxleEnd.Front, AxleEnd.Rear }.Select(end => new Measure<CarAtRest>(
            $"{CornerNames.Of(end)}-ride-rate",
            $"{CornerNames.Of(end)} ride rate, each",
            In.NewtonsPerMillimetre,
            2,
            c => c.Axle(end).Rates.RideRate / (c.Model.Rolls ? 2.0 : 1.0),
            "Rate of one wheel's springs and links with its tyre in series.")
        { Page = Model }),
    ];

    private static IReadOnlyList<Measure<CarAtRest>> Body { get; } =
    [
        Of("pitch-inertia", "pitch inertia of the sprung mass", In.KilogramSquareMetres, 0, c => c.Model.Body.PitchInertia,
            "Moment of inertia about the cross axis through the loaded centre of gravity."),
        Of("roll-inertia", "roll inertia of the sprung mass", In.KilogramSquareMetres, 0, c => c.Model.Rolls ? c.Model.Body.RollInertia : double.NaN,
            "Moment of inertia about the long axis through the loaded centre of gravity; none for a two-wheeler."),
        Of("centre-height", "height of its centre", In.Millimetres, 0, c => c.Model.Body.Height,
            "Centre of gravity of the loaded sprung mass above the ground, in the attitude of the empty car.") with
        {
            Name = "height of the centre of the sprung mass",
        },
        Of("centre-left", "its centre left of the middle", In.Millimetres, 0, c => c.Model.Body.LeftOfMiddle,
            "Centre of gravity of the loaded sprung mass from the middle plane; to the right it is negative.") with
        {
            Name = "centre of the sprung mass left of the middle",
            Nothing = 1e-6,
        },
    ];

    private static IEnumerable<Measure<CarAtRest>> Wheel(WheelPlace place)
    {
        var corner = place.Corners[0];
        var prefix = place.HasSides ? place.Key : $"{place.Key}-wheel";
        return
        [
            Of($"{prefix}-load", $"{place.Name}: load on the ground", In.KilogramsOfLoad, 1, c => c.Model.Trim.WheelLoad[corner],
                "What a scale under the wheel shows."),
            Of($"{prefix}-sprung-load", $"{place.Name}: sprung load", In.KilogramsOfLoad, 1, c => c.Model.Trim.SprungLoad[corner],
                "What spring, link and damper's gas carry at the wheel."),
            .. SideEffectCatalogue.Of(place).Where(m => Travels.Any(key => m.Key == prefix + key)),
        ];
    }

    private static Measure<CarAtRest> Of(string key, string label, ShownUnit unit, int digits, Func<CarAtRest, double> of, string says) =>
        new(key, label, unit, digits, of, says) { Page = Model };
}
