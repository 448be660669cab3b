using Heaveline.Elements;
using Heaveline.Models;

namespace Heaveline.Passes.Steps;

/// <summary>
/// The numbers of one wheel's plain elements with motion ratios and trim folded in: as functions of wheel travel s from trim, in place of whole
/// travel S = s + S_trim through a ratio r. r·f(r·S) with a kink at x is a kink at x/r − S_trim with r² times the bend.
/// </summary>
/// <param name="car">The car.</param>
/// <param name="i">The corner.</param>
internal readonly struct FoldedCorner(KernelSlots car, int i)
{
    // Sides whose trim differs by no more than rounding count as alike, m and of the load.
    private const double Same = 1e-12;

    /// <summary>Elements whose kinks stand over travel.</summary>
    public const int OverTravel = 3;

    private readonly RideNumbers n = car.Numbers;

    /// <summary>Wheel travel at trim, m.</summary>
    public double Trim => Even(n.TrimTravel[i], n.TrimTravel[i ^ 1], Same);

    /// <summary>−N, the change of load at which the tyre leaves the road.</summary>
    public double Unload => -Even(n.TrimLoad[i], n.TrimLoad[i ^ 1], Same * Math.Abs(n.TrimLoad[i]));

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
    public double Constant(bool shaped)
    {
        var other = Even(n.TrimTravel[i ^ 1], n.TrimTravel[i], Same);
        var sum = (Bar * (Trim - other)) - n.TrimForce[i];
        if (shaped)
        {
            return sum;
        }

        sum += DamperRatio * (car.Dampers[i].OnRate.Constant + car.Dampers[i].OnTravel.Constant);
        for (var k = 0; k < OverTravel; k++)
        {
            var (law, r) = Travelled(k);
            sum += (r * law.Constant) + (r * r * Trim * (law.Slope + Bends(law.Opens) + Bends(law.Closes)));
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
    public (double At, double Bend) Kink(Hinge hinge, double ratio) => ((hinge.At / ratio) - Trim, hinge.Bend * ratio * ratio);

    /// <summary>Kinks over the wheel's rate.</summary>
    public ReadOnlySpan<Hinge> DamperHinges => car.Dampers[i].OnRate.Opens;

    /// <summary>A hinge over the damper's speed as a kink over the wheel's.</summary>
    public (double At, double Bend) DamperKink(Hinge hinge) => (hinge.At / DamperRatio, hinge.Bend * DamperRatio * DamperRatio);

    /// <summary>Whether one number does for both wheels of the axle, of everything but the dampers' kinks, which are always alike.</summary>
    public static bool SidesAlike(KernelSlots car, bool shaped)
    {
        var n = car.Numbers;
        for (var i = 0; i < 4; i += 2)
        {
            var (a, b) = (new FoldedCorner(car, i), new FoldedCorner(car, i + 1));
            if (a.Rate(shaped) != b.Rate(shaped) || a.Cross != b.Cross || a.Damping(shaped) != b.Damping(shaped) || a.Unload != b.Unload
                || n.TyreRate[i] != n.TyreRate[i + 1] || n.TyreDamping[i] != n.TyreDamping[i + 1]
                || n.PerWheel[i] != n.PerWheel[i + 1] || n.AcrossAxle[i] != n.AcrossAxle[i + 1])
            {
                return false;
            }

            for (var k = 0; k < OverTravel && !shaped; k++)
            {
                var ((left, ratio), (right, other)) = (a.Travelled(k), b.Travelled(k));
                var kinks = left.Opens.Length + left.Closes.Length;
                if (ratio != other || !Hinge.Alike(left.Opens, right.Opens) || !Hinge.Alike(left.Closes, right.Closes)
                    || (kinks > 0 && a.Trim != b.Trim))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static double Bends(ReadOnlySpan<Hinge> hinges)
    {
        var sum = 0.0;
        foreach (var hinge in hinges)
        {
            sum += hinge.Bend;
        }

        return sum;
    }

    private static double Even(double own, double other, double same) => Math.Abs(own - other) <= same ? 0.5 * (own + other) : own;
}
