using System.Runtime.CompilerServices;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// Elements beyond straight laws at the wheels, stops of curved force and friction: those that see more, and links between the axles.
/// </summary>
internal static unsafe class FurtherStep<T, TSample, TSides, TEnds>
    where T : unmanaged, ILane<T>
    where TSample : unmanaged, ILane<TSample>
    where TSides : unmanaged, ISides<TSides, T>
    where TEnds : IEnds<T, TSample>
{
    /// <summary>Works them out, for what the axles' steps start from.</summary>
    /// <param name="set">The cars.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Add(BlockSet<T, TSides> set)
    {
        var needs = set.Plan.Needs;
        Add(set, &set.Front->State, set.FrontFurther);
        if (TEnds.Blocks == 2)
        {
            Add(set, &set.Rear->State, set.RearFurther);
        }

        if ((needs & Needs.ElasticLink) != 0)
        {
            BetweenAxles<T, TSample, TEnds>.Elastic(
                &set.Front->State, &set.Rear->State, set.FrontFurther, set.RearFurther, set.Link, (needs & Needs.FluidGas) != 0);
        }
        else if ((needs & Needs.FluidLink) != 0)
        {
            BetweenAxles<T, TSample, TEnds>.Fluid(
                &set.Front->State,
                &set.Rear->State,
                set.FrontFurther,
                set.RearFurther,
                set.Link,
                (needs & Needs.FluidGas) != 0,
                (needs & Needs.ResistiveLine) != 0);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static void Add(BlockSet<T, TSides> set, AxleState<T>* axle, FurtherBlock<T>* elements)
    {
        var needs = set.Plan.Needs;
        FurtherForces<T>.Begin(axle, set.Body, elements);
        if (set.Plan.IsShaped)
        {
            FurtherForces<T>.Shaped(axle, elements, set.Plan.Shaped);
        }
        else if ((needs & Needs.CurvedStop) != 0)
        {
            FurtherForces<T>.Stops(axle, elements);
        }

        if ((needs & Needs.Friction) != 0)
        {
            FurtherForces<T>.Friction(axle, elements);
        }
    }
}
