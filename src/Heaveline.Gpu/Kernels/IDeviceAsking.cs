using Heaveline.Numerics;

namespace Heaveline.Gpu.Kernels;

/// <summary>The questions to a signal one inside the other.</summary>
internal interface IDeviceAsking<TSelf, T>
    where TSelf : unmanaged, IDeviceAsking<TSelf, T>
    where T : unmanaged, ILane<T>
{
    /// <summary>How many there are.</summary>
    static abstract int Count { get; }

    /// <summary>How many of them ask for the mean square.</summary>
    static abstract int Squares { get; }

    /// <summary>Takes a piece that lies within the stretches of some questions.</summary>
    /// <param name="room">This thread's.</param>
    /// <param name="within">A bit a question, whether the piece lies within its stretch.</param>
    /// <param name="value">Where the piece begins.</param>
    /// <param name="square">∫x² over the piece.</param>
    /// <param name="least">The piece goes no lower.</param>
    /// <param name="most">Nor higher.</param>
    /// <returns>A bit a question, whether the piece must be looked at closely.</returns>
    static abstract int Fold(DeviceRoom<T> room, int within, T value, T square, T least, T most);
}
