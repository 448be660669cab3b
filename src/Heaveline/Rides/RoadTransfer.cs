using System.Numerics;
using Heaveline.Passes;

namespace Heaveline.Rides;

/// <summary>
/// Complex answers of one signal to the height of a road that passes at a constant speed, a unit wave e^{iωt} under the front wheel centres.
/// </summary>
public sealed record RoadTransfer
{
    internal RoadTransfer(RideSignal signal, IReadOnlyList<double> frequencies, Complex[] left, Complex[] right) =>
        (Signal, Frequencies, Left, Right) = (signal, frequencies, left, right);

    /// <summary>The signal.</summary>
    public RideSignal Signal { get; }

    /// <summary>Frequencies, Hz, shape (n).</summary>
    public IReadOnlyList<double> Frequencies { get; }

    /// <summary>Per metre of the left track alone, shape (n), unit of the signal per m.</summary>
    public IReadOnlyList<Complex> Left { get; }

    /// <summary>Per metre of the right track alone, shape (n).</summary>
    public IReadOnlyList<Complex> Right { get; }

    /// <summary>Per metre of both tracks together, shape (n).</summary>
    public IReadOnlyList<Complex> Both => [.. Left.Zip(Right, (l, r) => l + r)];

    /// <summary>Per metre of the left track up and the right track down, shape (n).</summary>
    public IReadOnlyList<Complex> Opposed => [.. Left.Zip(Right, (l, r) => l - r)];
}
