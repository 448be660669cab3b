using System.Runtime.InteropServices;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>How a car stands, four numbers each: what the blocks' numbers count from.</summary>
/// <param name="travel">Travel of the wheels from the reference state, m.</param>
/// <param name="force">Forces of the suspension, N.</param>
/// <param name="load">Loads of the tyres, N.</param>
/// <param name="flow">Fluid gone from front to rear: left, right, and the same again, m³.</param>
internal readonly ref struct TrimNumbers<T>(ReadOnlySpan<T> travel, ReadOnlySpan<T> force, ReadOnlySpan<T> load, ReadOnlySpan<T> flow)
    where T : unmanaged, ILane<T>
{
    public readonly ReadOnlySpan<T> Travel = travel;
    public readonly ReadOnlySpan<T> Force = force;
    public readonly ReadOnlySpan<T> Load = load;
    public readonly ReadOnlySpan<T> Flow = flow;
}

/// <summary>The same of a car that stands already.</summary>
internal static class TrimNumbers
{
    public static TrimNumbers<ScalarLane> Of(RideNumbers n) => new(Cast(n.TrimTravel), Cast(n.TrimForce), Cast(n.TrimLoad), Cast(n.TrimFlow));

    private static ReadOnlySpan<ScalarLane> Cast(double[] values) => MemoryMarshal.Cast<double, ScalarLane>(values);
}
