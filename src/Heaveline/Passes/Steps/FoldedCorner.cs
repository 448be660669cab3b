using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// The numbers of one wheel's plain elements with motion ratios and trim folded in: as functions of wheel travel s from trim, in place of whole
/// travel S = s + S_trim through a ratio r. r·f(r·S) with a kink at x is a kink at x/r − S_trim with r² times the bend.
/// </summary>
/// <param name="car">The car.</param>
/// <param name="i">The corner.</param>
/// <param name="trim">How it stands.</param>
internal readonly ref struct FoldedCorner<T>(KernelSlots car, int i, TrimNumbers<T> trim)
    where T : unmanaged, ILane<T>
{
    // Sides whose trim differs by no more than rounding count as alike, m and of the load.
    private const double Same = 1e-12;

    /// <summary>Elements whose kinks stand over travel.</summary>
    public const int OverTravel = 3;

    private readonly TrimNumbers<T> trim = trim;

    /// <summary>Wheel travel at trim, m.</summary>
    public T Trim => Even(trim.Travel[i], trim.Travel[i ^ 1], T.Of(Same));

    /// <summary>−N, the change of load at which the tyre leaves the road.</summary>
    public T Unload => -Even(trim.Load[i], trim.Load[i ^ 1], T.Of(Same) * Size(trim.Load[i]));

    private double SpringRatio => car.Springs[i].Ratio.AtReference;

    private double DamperRatio => car.Dampers[i].Ratio.AtReference;

    private double Bar => car.Bars[i].OnTravel.Slope;

    /// <summary>Rate of spring and bar by the wheel's own travel, N/m; of the bar alone where the spring is worked out apart.</summary>
    public double Rate(bool shaped) => Bar
        + (shaped ? 0.0
            : (car.Springs[i].OnTravel.Slope * SpringRatio * SpringRatio) + car.BumpStops[i].OnTravel.Slope + car.ReboundStops[i].OnTravel.Slope);

    /// <summary>Rate of the bar by the other wheel's travel, N/m.</summary>
    public double Cross => -Bar;

    /// <summary>Damping, N s/m.</summary>
    public double Damping(bool shaped) => shaped ? 0.0 : car.Dampers[i].OnRate.Slope * DamperRatio * DamperRatio;

    /// <summary>What is left of all forces at s = 0 beside the terms in s: with the kinks' own share they cancel, the car stands.</summary>
    public T Constant(bool shaped)
    {
        var own = Trim;
        var other = Even(trim.Travel[i ^ 1], trim.Travel[i], T.Of(Same));
        var sum = (T.Of(Bar) * (own - other)) - trim.Force[i];
        if (shaped)
        {
            return sum;
        }

        sum += T.Of(DamperRatio * (car.Dampers[i].OnRate.Constant + car.Dampers[i].OnTravel.Constant));
        for (var k = 0; k < OverTravel; k++)
        {
            var (law, r) = Travelled(k);
            sum += T.Of(r * law.Constant) + (T.Of(r * r) * own * T.Of(law.Slope + Bends(law.Opens) + Bends(law.Closes)));
        }

        return sum;
    }

    /// <summary>Spring, bump stop and rebound stop by number: what they are made of, and their ratio.</summary>
    public (StraightLaw Law, double Ratio) Travelled(int k) => k switch
    {
        0 => (car.Springs[i].OnTravel, SpringRatio),
        1 => (car.BumpStops[i].OnTravel, 1.0),
        _ => (car.ReboundStops[i].OnTravel, 1.0),
    };

    /// <summary>A hinge over travel as a kink over travel from trim.</summary>
    public (T At, T Bend) Kink(Hinge hinge, double ratio) => (T.Of(hinge.At / ratio) - Trim, T.Of(hinge.Bend * ratio * ratio));

    /// <summary>Kinks over the wheel's rate.</summary>
    public ReadOnlySpan<Hinge> DamperHinges => car.Dampers[i].OnRate.Opens;

    /// <summary>A hinge over the damper's speed as a kink over the wheel's.</summary>
    public (double At, double Bend) DamperKink(Hinge hinge) => (hinge.At / DamperRatio, hinge.Bend * DamperRatio * DamperRatio);

    private static double Bends(ReadOnlySpan<Hinge> hinges)
    {
        var sum = 0.0;
        foreach (var hinge in hinges)
        {
            sum += hinge.Bend;
        }

        return sum;
    }

    private static T Even(T own, T other, T same) => T.WhereAtMost(Size(own - other), same, T.Of(0.5) * (own + other), own);

    private static T Size(T value) => T.Max(value, -value);
}
