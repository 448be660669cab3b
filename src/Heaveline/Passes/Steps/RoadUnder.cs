using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>The road under the two wheels of an axle, as it stands in eight numbers: four heights, then four rates.</summary>
internal struct RoadUnder<T> : IRoadUnder<T>
    where T : unmanaged, ILane<T>
{
    public T HeightL { [MethodImpl(MethodImplOptions.AggressiveInlining)] readonly get; set; }

    public T HeightR { [MethodImpl(MethodImplOptions.AggressiveInlining)] readonly get; set; }

    /// <summary>The other axle's.</summary>
    public T OtherL { readonly get; set; }

    public T OtherR { readonly get; set; }

    public T RiseL { [MethodImpl(MethodImplOptions.AggressiveInlining)] readonly get; set; }

    public T RiseR { [MethodImpl(MethodImplOptions.AggressiveInlining)] readonly get; set; }
}
