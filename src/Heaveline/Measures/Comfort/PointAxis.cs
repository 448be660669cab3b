using Heaveline.Quantities;

namespace Heaveline.Measures.Comfort;

/// <summary>
/// One of the twelve point-and-axis pairs of a seated person, with its weighting and factor k for comfort (ISO 2631-1 clause 8.2.2).
/// </summary>
/// <remarks>
/// After public transcriptions of ISO 2631-1:1997, tables 1 and 2 and 8.2.2; the standard itself was not used.
/// </remarks>
public sealed record PointAxis
{
    private PointAxis(MeasuringPoint point, MotionAxis axis, Weighting weighting, double comfort)
    {
        Point = point;
        Axis = axis;
        Weighting = weighting;
        ComfortFactor = comfort;
    }

    /// <summary>Where.</summary>
    public MeasuringPoint Point { get; }

    /// <summary>Along or about which axis.</summary>
    public MotionAxis Axis { get; }

    /// <summary>The weighting to use.</summary>
    public Weighting Weighting { get; }

    /// <summary>k for comfort: a pure number, or m/rad for a rotation.</summary>
    public double ComfortFactor { get; }

    /// <summary>Whether it is a rotation, in rad/s².</summary>
    public bool IsRotation => Axis >= MotionAxis.Roll;

    /// <summary>Unit of its acceleration.</summary>
    public string Unit => IsRotation ? "rad/s²" : "m/s²";

    /// <summary>Words for people: "seat z", "backrest x", "seat pitch".</summary>
    public string Words => $"{Point} {Axis}".ToLowerInvariant();

    /// <summary>All twelve: seat x, y, z, roll, pitch, yaw; backrest x, y, z; feet x, y, z.</summary>
    public static IReadOnlyList<PointAxis> All { get; } =
    [
        new(MeasuringPoint.Seat, MotionAxis.X, Weightings.Wd, 1.0),
        new(MeasuringPoint.Seat, MotionAxis.Y, Weightings.Wd, 1.0),
        new(MeasuringPoint.Seat, MotionAxis.Z, Weightings.Wk, 1.0),
        new(MeasuringPoint.Seat, MotionAxis.Roll, Weightings.We, 0.63),
        new(MeasuringPoint.Seat, MotionAxis.Pitch, Weightings.We, 0.4),
        new(MeasuringPoint.Seat, MotionAxis.Yaw, Weightings.We, 0.2),
        new(MeasuringPoint.Backrest, MotionAxis.X, Weightings.Wc, 0.8),
        new(MeasuringPoint.Backrest, MotionAxis.Y, Weightings.Wd, 0.5),
        new(MeasuringPoint.Backrest, MotionAxis.Z, Weightings.Wd, 0.4),
        new(MeasuringPoint.Feet, MotionAxis.X, Weightings.Wk, 0.25),
        new(MeasuringPoint.Feet, MotionAxis.Y, Weightings.Wk, 0.25),
        new(MeasuringPoint.Feet, MotionAxis.Z, Weightings.Wk, 0.4),
    ];

    /// <summary>The pair of a point and an axis.</summary>
    /// <exception cref="RefusedValueException">A rotation away from the seat: the standard gives no factor for it.</exception>
    public static PointAxis Of(MeasuringPoint point, MotionAxis axis)
    {
        foreach (var pair in All)
        {
            if (pair.Point == point && pair.Axis == axis)
            {
                return pair;
            }
        }

        throw new RefusedValueException(
            "point and axis", $"{point} {axis}".ToLowerInvariant(), "one of the twelve of ISO 2631-1", "Rotations are evaluated at the seat only.");
    }
}
