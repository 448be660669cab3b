using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Elements.Forces;

/// <summary>
/// Dry friction that sticks: a spring in series with a slider; what the spring cannot hold the slider gives way by. Right for travel that goes one
/// way since the last time.
/// </summary>
internal struct FrictionLaw<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Rate of its spring, N/m.</summary>
    public T Rate;

    /// <summary>How far the spring is pressed or drawn when the slider gives way, m.</summary>
    public T PreSliding;

    /// <summary>Adds its force at a travel from trim; moves the slider, the one thing that remembers the way here.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Add(T travel, ref T slider, ref T force)
    {
        // The slider lies within the pre-sliding travel of where the wheel is.
        var moved = T.Max(travel - PreSliding, T.Min(travel + PreSliding, slider));
        slider = moved;
        T.AddProduct(ref force, Rate, travel - moved);
    }
}
