using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>How a number of one car, or of one axle, stands in a lane beside those of others.</summary>
internal unsafe interface IPlaces<T, TNumber>
    where T : unmanaged, ILane<T>
    where TNumber : unmanaged, ILane<TNumber>
{
    /// <summary>Writes one place; the others stay.</summary>
    static abstract void Put(T* to, int place, TNumber value);
}
