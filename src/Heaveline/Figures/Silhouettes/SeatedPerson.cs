using Heaveline.Cars;

namespace Heaveline.Figures.Silhouettes;

/// <summary>A person as one shape under a head: back, and an arm towards the wheel or the bars, m as in the silhouette.</summary>
/// <param name="Head">The ear, where it was measured.</param>
/// <param name="Body">Shoulders, arm and, in the open, legs; closed.</param>
/// <param name="IsFar">Whether it sits on the right, behind whoever sits on the left.</param>
internal sealed record SeatedPerson(ScenePoint Head, SilhouettePath Body, bool IsFar)
{
    /// <summary>Radius of a head, m.</summary>
    public const double HeadRadius = 0.105;

    /// <summary>Radius of a helmet, m.</summary>
    public const double HelmetRadius = 0.13;

    /// <summary>A person on a seat.</summary>
    /// <param name="car">The vehicle.</param>
    /// <param name="seat">The seat.</param>
    /// <param name="isAstride">Whether one sits astride, as on a motorcycle.</param>
    public static SeatedPerson On(Car car, Seat seat, bool isAstride)
    {
        var (x, hip, ear) = (car.Wheelbase.Si - seat.BehindFrontAxle.Si, seat.Height.Si, seat.Height.Si + seat.HeadAboveSeat.Si);
        var body = isAstride ? Rider(x, hip, ear) : Sitting(x, ear);
        return new(new(x, ear), body, seat.LeftOfMiddle.Si < 0.0);
    }

    private static SilhouettePath Sitting(double x, double ear) => SilhouettePath.Rounded(
    [
        new(x - 0.17, ear - 0.52, 0.05), new(x - 0.14, ear - 0.20, 0.12), new(x - 0.03, ear - 0.14, 0.06), new(x + 0.09, ear - 0.17, 0.08),
        new(x + 0.15, ear - 0.32, 0.06), new(x + 0.33, ear - 0.44, 0.03), new(x + 0.32, ear - 0.50, 0.03), new(x + 0.09, ear - 0.52, 0.04),
    ]);

    // Upright, since the head's place is the measured one; hands ahead, feet under the seat.
    private static SilhouettePath Rider(double x, double hip, double ear)
    {
        var neck = ear - 0.12;
        return SilhouettePath.Rounded(
        [
            new(x - 0.14, hip, 0.08), new(x - 0.15, hip + 0.30, 0.20), new(x - 0.06, neck, 0.12), new(x + 0.09, neck - 0.06, 0.08),
            new(x + 0.46, hip + 0.20, 0.03), new(x + 0.43, hip + 0.14, 0.03), new(x + 0.12, hip + 0.28, 0.08), new(x + 0.10, hip + 0.16, 0.08),
            new(x + 0.16, hip + 0.08, 0.06), new(x + 0.40, hip - 0.06, 0.07), new(x + 0.22, hip - 0.46, 0.05), new(x + 0.12, hip - 0.46, 0.04),
            new(x + 0.20, hip - 0.14, 0.07), new(x + 0.02, hip - 0.08, 0.05),
        ]);
    }
}
