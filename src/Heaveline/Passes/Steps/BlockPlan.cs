using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>What blocks are laid out for: the elements that any of the cars side by side has.</summary>
/// <param name="Needs">The further elements.</param>
/// <param name="Kinks">Kinks that follow each axle's block.</param>
/// <param name="Shaped">Kinks that follow each block of further elements.</param>
/// <param name="SidesAlike">Whether left and right have one number each for springs, stops, tyres and loads.</param>
internal sealed record BlockPlan(Needs Needs, KinkCount Kinks, ShapedCount Shaped, bool SidesAlike)
{
    // Elements that are not at the wheels, or see more than travel through a constant ratio.
    private const Needs ShapedNeeds = Needs.SolidAxle | Needs.VaryingRatio | Needs.Gas;

    /// <summary>Whether springs, dampers and stops are worked out beside the axle's step.</summary>
    public bool IsShaped => (Needs & ShapedNeeds) != 0;

    /// <summary>Whether anything is worked out beside the axle's step.</summary>
    public bool IsFurther => IsShaped || (Needs & (Needs.CurvedStop | Needs.Friction | Needs.ElasticLink | Needs.FluidLink)) != 0;

    /// <summary>Whether stops of curved force and friction are all that there is beyond straight laws at the wheels.</summary>
    public bool IsPlain => !IsShaped && (Needs & (Needs.ElasticLink | Needs.FluidLink)) == 0;

    /// <summary>The plan for some cars.</summary>
    public static BlockPlan Of(ReadOnlySpan<RideNumbers> cars)
    {
        var needs = Needs.None;
        foreach (var car in cars)
        {
            // A need is a term that is switched on; a car without it has zeros there, so cars of different needs can stand side by side,
            // save for the two kinds of interconnection, which exclude each other.
            needs |= car.Slots.Needs;
        }

        RefuseApart(cars, needs);
        var shaped = (needs & ShapedNeeds) != 0;
        var sides = true;
        var (kinks, apart) = (new KinkCount(0, 0, 0, (needs & Needs.SolidAxle) != 0), new ShapedCount());
        foreach (var car in cars)
        {
            sides &= AreSidesAlike(car.Slots, shaped);
            for (var i = 0; i < 4; i++)
            {
                if (shaped)
                {
                    apart = apart.And(car.Slots, i);
                }
                else
                {
                    kinks = kinks.And(car.Slots, i);
                }
            }
        }

        return new(
            needs,
            kinks,
            apart with { Gas = (needs & Needs.Gas) != 0, CurvedStops = (needs & Needs.CurvedStop) != 0 },
            sides);
    }

    // Whether one number does for both wheels of the axle, of everything but the dampers' kinks, which are always alike.
    private static bool AreSidesAlike(KernelSlots car, bool shaped)
    {
        var n = car.Numbers;
        for (var i = 0; i < 4; i += 2)
        {
            var trim = TrimNumbers.Of(n);
            var a = new FoldedCorner<ScalarLane>(car, i, trim);
            var b = new FoldedCorner<ScalarLane>(car, i + 1, trim);
            if (a.Rate(shaped) != b.Rate(shaped) || a.Cross != b.Cross || a.Damping(shaped) != b.Damping(shaped) || a.Unload.Value != b.Unload.Value
                || n.TyreRate[i] != n.TyreRate[i + 1] || n.TyreDamping[i] != n.TyreDamping[i + 1]
                || n.PerWheel[i] != n.PerWheel[i + 1] || n.AcrossAxle[i] != n.AcrossAxle[i + 1])
            {
                return false;
            }

            for (var k = 0; k < FoldedCorner<ScalarLane>.OverTravel && !shaped; k++)
            {
                var ((left, ratio), (right, other)) = (a.Travelled(k), b.Travelled(k));
                var kinks = left.Opens.Length + left.Closes.Length;
                if (ratio != other || !Hinge.Alike(left.Opens, right.Opens) || !Hinge.Alike(left.Closes, right.Closes)
                    || (kinks > 0 && a.Trim.Value != b.Trim.Value))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static void RefuseApart(ReadOnlySpan<RideNumbers> cars, Needs needs)
    {
        if ((needs & Needs.ElasticLink) != 0 && (needs & Needs.FluidLink) != 0)
        {
            throw new ArgumentException("Cars with a fluid line and cars with an elastic link cannot run side by side.", nameof(cars));
        }

        if ((needs & Needs.ResistiveLine) != 0)
        {
            foreach (var car in cars)
            {
                if (car.Elements.Line is { Resists: false })
                {
                    throw new ArgumentException("Cars with and without inertance in their fluid lines cannot run side by side.", nameof(cars));
                }
            }
        }
    }
}
