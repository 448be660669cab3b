using Heaveline.Numerics;

namespace Heaveline.Passes;

/// <summary>A road under the wheels, step by step of a run: a table where it moves, a level before and a level after.</summary>
/// <param name="first">Step at which the table begins.</param>
/// <param name="moving">Heights and rates, two quads a step.</param>
/// <param name="after">Heights from the table's end on.</param>
/// <param name="jumps">Sharp steps, in the order of the run.</param>
internal readonly ref struct RoadSteps<TLane>(
    int first, ReadOnlySpan<Quad<TLane>> moving, Quad<TLane> after, ReadOnlySpan<RoadJump<TLane>> jumps = default)
    where TLane : struct, ILane<TLane>
{
    /// <summary>Step at which the table begins.</summary>
    public readonly int First = first;

    /// <summary>Heights and rates, two quads a step.</summary>
    public readonly ReadOnlySpan<Quad<TLane>> Moving = moving;

    /// <summary>The table of a road that all cars meet at the same time: four heights and four rates a step; in place of the other table.</summary>
    public ReadOnlySpan<double> Shared { get; init; }

    /// <summary>Sharp steps, in the order of the run.</summary>
    public readonly ReadOnlySpan<RoadJump<TLane>> Jumps = jumps;

    /// <summary>Heights before the table; every track counts from its first height.</summary>
    public readonly Quad<TLane> Before = Quad<TLane>.All(TLane.Of(0.0));

    /// <summary>Heights from the table's end on.</summary>
    public readonly Quad<TLane> After = after;

    /// <summary>Rates on the level.</summary>
    public readonly Quad<TLane> Still = Quad<TLane>.All(TLane.Of(0.0));
}
