using Heaveline.Passes;

namespace Heaveline.Rides;

/// <summary>
/// The sums of <see cref="RandomLines"/> in registers of one width. Heights lie block by block of frequencies, wave by wave of four, wheel by
/// wheel, real before imaginary; positions in the same way for the waves that there are.
/// </summary>
internal abstract class LaneLines
{
    /// <summary>Positions of a car in every wave at every frequency.</summary>
    public abstract double[] Positions(RideGrid grid, double[] heights, int waves, LinearRide ride);

    /// <summary>Mean squares of rows of positions and of their rates.</summary>
    public abstract void Squares(
        RideGrid grid, double[] heights, int waves, LinearRide ride, ReadOnlySpan<double> rows, Span<double> place, Span<double> speed);

    /// <summary>Squares of a signal's magnitude at every frequency.</summary>
    public abstract double[] Signal(RideGrid grid, double[] heights, int waves, double[] positions, int count, RideSignal signal);
}
