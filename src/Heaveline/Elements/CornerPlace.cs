using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Elements;

/// <summary>
/// One corner of a car and where its elements stand: at the wheel, or along a solid axle at a share (1 + base/track)/2 of the wheel's own travel.
/// </summary>
internal sealed class CornerPlace
{
    private static readonly double[][] Whole = [Felt(0, 1.0), Felt(1, 1.0), Felt(2, 1.0), Felt(3, 1.0)];

    private CornerPlace(Axle axle, int corner, double half, double spring, double damper, double stop) =>
        (Axle, Corner, Half, SpringShare, DamperShare, StopShare) = (axle, corner, half, spring, damper, stop);

    /// <summary>The axle.</summary>
    public Axle Axle { get; }

    /// <summary>0 to 3: front left, front right, rear left, rear right.</summary>
    public int Corner { get; }

    /// <summary>1, or 0.5 for each half of a two-wheeler.</summary>
    public double Half { get; }

    /// <summary>Share of the wheel's own travel at the spring (–).</summary>
    public double SpringShare { get; }

    /// <summary>The same at the damper.</summary>
    public double DamperShare { get; }

    /// <summary>The same at the stops.</summary>
    public double StopShare { get; }

    /// <summary>Which axle, in words.</summary>
    public string End => EndOf(Corner);

    /// <exception cref="RefusedValueException">A solid axle without roll inertia, or elements further apart than its wheels.</exception>
    public static CornerPlace Of(Car car, int corner)
    {
        var axle = corner < 2 ? car.Front : car.Rear;
        // A two-wheeler is computed as two coinciding halves, each with half of every element.
        var half = car.Kind == VehicleKind.TwoWheeler ? 0.5 : 1.0;
        if (axle.Suspension != SuspensionKind.SolidAxle)
        {
            return new CornerPlace(axle, corner, half, 1.0, 1.0, 1.0);
        }

        var end = EndOf(corner);
        if (axle.RollInertia is null)
        {
            throw new RefusedValueException(
                $"{end} axle roll inertia",
                "missing",
                "given for a solid axle",
                "Two wheels of mass m at half-track y have 2·m·y²; add the beam's m·track²/12.");
        }

        var springs = axle.SpringBase?.Si ?? axle.Track.Si;
        return new CornerPlace(
            axle,
            corner,
            half,
            Share(springs, axle.Track.Si, $"{end} spring base"),
            Share(axle.DamperBase?.Si ?? springs, axle.Track.Si, $"{end} damper base"),
            Share(axle.StopBase?.Si ?? springs, axle.Track.Si, $"{end} stop base"));
    }

    /// <summary>The element's law felt by its own wheel alone, times a number.</summary>
    public IReadOnlyList<double> FeltByOwn(double part = 1.0) => part == 1.0 ? Whole[Corner] : Felt(Corner, part);

    private static double[] Felt(int corner, double part)
    {
        var felt = new double[4];
        felt[corner] = part;
        return felt;
    }

    private static string EndOf(int corner) => corner < 2 ? "front" : "rear";

    private static double Share(double spread, double track, string what) => spread > 0.0 && spread <= track
        ? 0.5 * (1.0 + (spread / track))
        : throw new RefusedValueException(
            what, $"{spread:G4} m", $"above 0 m and at most the track of {track:G4} m", "Measure between the two elements along the axle.");
}
