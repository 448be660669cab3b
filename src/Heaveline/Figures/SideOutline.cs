using System.Collections.Immutable;
using Heaveline.Cars;

namespace Heaveline.Figures;

/// <summary>
/// Plain outlines of our own, made up from wheelbase, heads and lamp. They show which end is which and how large things are, no more.
/// </summary>
internal static class SideOutline
{
    /// <summary>A three-box outline stretched over the places where people sit.</summary>
    public static (double WheelRadius, ImmutableArray<ScenePoint> Outline, ImmutableArray<(ScenePoint Body, ScenePoint Hub)> Arms) OfCar(Car car)
    {
        var length = car.Wheelbase.Si;
        var radius = Math.Clamp(0.118 * length, 0.24, 0.46);
        var heads = car.Seats.Select(seat => (X: -seat.BehindFrontAxle.Si, Z: seat.Height.Si + seat.HeadAboveSeat.Si)).ToArray();
        var roof = heads.Length > 0 ? heads.Max(head => head.Z) + 0.20 : Math.Clamp(0.53 * length, 1.25, 2.4);
        var lamp = car.Headlamp?.Height.Si ?? (0.44 * roof);
        var bonnet = Math.Clamp(0.62 * roof, lamp + 0.12, roof - 0.2);
        var sill = 0.75 * radius;

        var nose = Math.Max(0.29 * length, (car.Headlamp?.AheadOfFrontAxle.Si ?? 0.0) + 0.06);
        var tail = -length - (0.30 * length);
        var first = heads.Length > 0 ? heads.Max(head => head.X) : -0.5 * length;
        var last = heads.Length > 0 ? heads.Min(head => head.X) : -0.8 * length;
        var roofFront = Math.Min(first + 0.16, nose - 0.25);
        var roofRear = Math.Max(Math.Min(Math.Min(last, -0.62 * length) - 0.22, roofFront - 0.3), tail + 0.15);
        var screen = Math.Min(roofFront + (1.15 * (roof - bonnet)), nose - 0.15);
        var backlight = Math.Max(roofRear - (0.9 * (roof - bonnet)), tail + 0.06);
        return (radius,
            [
                new(nose - 0.06, sill), new(nose, sill + 0.08), new(nose - 0.01, lamp), new(nose - 0.10, Math.Min(lamp + 0.10, bonnet - 0.02)),
                new(screen, bonnet),
                new(roofFront, roof - 0.03), new(0.5 * (roofFront + roofRear), roof), new(roofRear, roof - 0.05),
                new(backlight, bonnet + 0.03), new(tail + 0.03, bonnet - 0.01), new(tail, sill + 0.12), new(tail + 0.08, sill),
            ],
            []);
    }

    /// <summary>Tank, seat, engine; a fork and a swinging arm.</summary>
    public static (double WheelRadius, ImmutableArray<ScenePoint> Outline, ImmutableArray<(ScenePoint Body, ScenePoint Hub)> Arms) OfTwoWheeler(
        Car car)
    {
        // Shares of the wheelbase.
        var s = car.Wheelbase.Si;
        var radius = 0.215 * s;
        ScenePoint At(double x, double z) => new(x * s, z * s);
        return (radius,
            [
                At(-0.15, 0.64), At(-0.22, 0.69), At(-0.42, 0.70), At(-0.54, 0.59), At(-0.85, 0.62), At(-1.04, 0.66), At(-1.05, 0.61),
                At(-0.80, 0.47), At(-0.70, 0.32), At(-0.62, 0.19), At(-0.33, 0.19), At(-0.27, 0.36), At(-0.22, 0.52),
            ],
            [(At(-0.155, 0.66), new(0.0, radius)), (At(-0.66, 0.31), new(-s, radius))]);
    }
}
