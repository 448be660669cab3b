using Heaveline.Cars;
using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Elements;

/// <summary>Motion ratio r(S) = r₀ + r₁·S + r₂·S² of an element in what it sees, S; its own travel x is the integral.</summary>
internal readonly record struct RatioCurve(double AtReference, double PerTravel = 0.0, double PerTravelSquared = 0.0)
{
    /// <summary>The element moves as what it sees.</summary>
    public static RatioCurve One { get; } = new(1.0);

    public bool Varies => PerTravel != 0.0 || PerTravelSquared != 0.0;

    public static RatioCurve Of(MotionRatio ratio) => new(ratio.AtReference.Si, ratio.PerTravel.Si, ratio.PerTravelSquared);

    /// <summary>r(S).</summary>
    public T At<T>(T sight)
        where T : unmanaged, ILane<T> => Law<T>().At(sight);

    /// <summary>x(S).</summary>
    public T Travel<T>(T sight)
        where T : unmanaged, ILane<T> => Law<T>().Along(sight);

    /// <summary>S at which x(S) is <paramref name="travel"/>, by Newton's method; not finite where the element never moves so far.</summary>
    public double SightAt(double travel)
    {
        var (b, c) = (PerTravel / 2.0, PerTravelSquared / 3.0);
        var s = travel / AtReference;
        for (var turn = 0; turn < 30 && Varies; turn++)
        {
            s -= ((s * (AtReference + (s * (b + (s * c))))) - travel) / (AtReference + (s * ((2.0 * b) + (3.0 * s * c))));
        }

        return s;
    }

    private RatioLaw<T> Law<T>()
        where T : unmanaged, ILane<T> => new() { R0 = T.Of(AtReference), R1 = T.Of(PerTravel), R2 = T.Of(PerTravelSquared) };
}
