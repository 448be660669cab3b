using Heaveline.Cars;

namespace Heaveline.Figures.Silhouettes;

/// <summary>Which silhouette a vehicle is drawn with, and whether its file said so.</summary>
/// <param name="Kind">The silhouette.</param>
/// <param name="IsGuess">Whether the file names no body style, so that it is guessed from what was measured.</param>
internal sealed record SilhouetteChoice(SilhouetteKind Kind, bool IsGuess)
{
    // Judged by eye: the heads of a car that one steps up into, and a wheelbase that only vans have.
    private const double HighHead = 1.45;
    private const double LongWheelbase = 3.0;

    /// <summary>The kind in words of the trade.</summary>
    public string Word => Kind switch
    {
        SilhouetteKind.PickUp => "pick-up",
        SilhouetteKind.OffRoader => "off-roader",
        SilhouetteKind.KitCar => "kit car",
        _ => Kind.ToString().ToLowerInvariant(),
    };

    /// <summary>What a caption says of the drawing.</summary>
    public string Caption => IsGuess
        ? $"Drawn as a generic {Word}, guessed, since its file names no body-style; axles, heads and lamp stand where they were measured."
        : $"Drawn as a generic {Word}; axles, heads and lamp stand where they were measured.";

    /// <summary>The choice for a vehicle.</summary>
    public static SilhouetteChoice Of(Car car) => car switch
    {
        { Kind: VehicleKind.TwoWheeler } => new(SilhouetteKind.Motorcycle, IsGuess: false),
        { BodyStyle: { } style } => new(Of(style), IsGuess: false),
        _ => new(Guess(car), IsGuess: true),
    };

    private static SilhouetteKind Of(BodyStyle style) => style switch
    {
        BodyStyle.Hatchback => SilhouetteKind.Hatchback,
        BodyStyle.Estate => SilhouetteKind.Estate,
        BodyStyle.Van => SilhouetteKind.Van,
        BodyStyle.PickUp => SilhouetteKind.PickUp,
        BodyStyle.OffRoader => SilhouetteKind.OffRoader,
        BodyStyle.KitCar => SilhouetteKind.KitCar,
        _ => SilhouetteKind.Saloon,
    };

    private static SilhouetteKind Guess(Car car)
    {
        var isHigh = car.Seats.Any(seat => seat.Height.Si + seat.HeadAboveSeat.Si > HighHead);
        return (isHigh && car.Rear.Suspension == SuspensionKind.SolidAxle, car.Wheelbase.Si > LongWheelbase) switch
        {
            (true, true) => SilhouetteKind.Van,
            (true, false) => SilhouetteKind.OffRoader,
            _ => SilhouetteKind.Saloon,
        };
    }
}
