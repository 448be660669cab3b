using Heaveline.Cars;
using Heaveline.Measures;

namespace Heaveline.Ties;

/// <summary>The places of ties in words and among a car's wheels.</summary>
public static class TiePlaces
{
    /// <summary>The axle.</summary>
    public static AxleEnd EndOf(TiePlace place) =>
        place is TiePlace.Front or TiePlace.FrontLeft or TiePlace.FrontRight ? AxleEnd.Front : AxleEnd.Rear;

    /// <summary>The place in words ("front left").</summary>
    public static string Words(TiePlace place) => place switch
    {
        TiePlace.Front => "front",
        TiePlace.Rear => "rear",
        TiePlace.FrontLeft => "front left",
        TiePlace.FrontRight => "front right",
        TiePlace.RearLeft => "rear left",
        _ => "rear right",
    };

    /// <summary>The same place at the other axle.</summary>
    public static TiePlace Other(TiePlace place) => place switch
    {
        TiePlace.Front => TiePlace.Rear,
        TiePlace.Rear => TiePlace.Front,
        TiePlace.FrontLeft => TiePlace.RearLeft,
        TiePlace.FrontRight => TiePlace.RearRight,
        TiePlace.RearLeft => TiePlace.FrontLeft,
        _ => TiePlace.FrontRight,
    };

    /// <summary>The wheels of a place.</summary>
    /// <param name="place">The place.</param>
    /// <param name="hasSides">Whether the vehicle has left and right wheels.</param>
    internal static WheelPlace Wheels(TiePlace place, bool hasSides) => place switch
    {
        TiePlace.Front or TiePlace.Rear => WheelPlace.Axles(hasSides)[(int)EndOf(place)],
        TiePlace.FrontLeft => WheelPlace.Of(0, hasSides),
        TiePlace.FrontRight => WheelPlace.Of(1, hasSides),
        TiePlace.RearLeft => WheelPlace.Of(2, hasSides),
        _ => WheelPlace.Of(3, hasSides),
    };

    /// <summary>Whether it names a side of an axle.</summary>
    internal static bool IsSided(TiePlace place) => place is not (TiePlace.Front or TiePlace.Rear);
}
