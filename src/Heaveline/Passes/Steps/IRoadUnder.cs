using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>The road under the two wheels of an axle, wherever it stands.</summary>
internal interface IRoadUnder<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Height under the left wheel, m.</summary>
    T HeightL { get; }

    T HeightR { get; }

    /// <summary>Its rate, m/s.</summary>
    T RiseL { get; }

    T RiseR { get; }
}
