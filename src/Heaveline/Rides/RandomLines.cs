using System.Runtime.Intrinsics;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Rides;

/// <summary>
/// A car on a random road, frequency by frequency: positions and road heights in each independent wave, as many frequencies side by side as a
/// register holds. A sum over them is an integral over the band; its terms are added up in one order whatever the register.
/// </summary>
internal sealed class RandomLines
{
    private readonly RideGrid grid;
    private readonly double[] heights;
    private readonly int waves;
    private readonly double[] positions;
    private readonly int count;

    private RandomLines(RideGrid grid, double[] heights, int waves, double[] positions, int count) =>
        (this.grid, this.heights, this.waves, this.positions, this.count) = (grid, heights, waves, positions, count);

    /// <summary>Frequencies, Hz.</summary>
    public IReadOnlyList<double> Frequencies => grid.Frequencies;

    // As wide as this processor has them.
    private static LaneLines Best { get; } = Numbers(Vector512.IsHardwareAccelerated ? 8 : LaneWidth.Best);

    /// <summary>The road alone, under the wheels of a car.</summary>
    public static RandomLines Of(RideModel model, RideGrid grid)
    {
        var (gamma, q) = (new double[4, 4], new double[4, 4]);
        var apart = new double[4, 4][];
        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
            {
                apart[i, j] = grid.Together(
                    grid.Tracks is null ? Math.Abs(model.Y[i] - model.Y[j]) : (i + j) % 2 == 0 ? 0.0 : grid.Tracks.Track.Si);
            }
        }

        var all = new double[32 * grid.Omegas.Length];
        var most = 0;
        for (var k = 0; k < grid.Omegas.Length; k++)
        {
            for (var i = 0; i < 4; i++)
            {
                for (var j = 0; j < 4; j++)
                {
                    gamma[i, j] = apart[i, j][k];
                }
            }

            RoadDrive.Factor(gamma, q);
            var wheels = WheelWaves.Of(model, grid.Frequencies[k] / grid.Speed);
            var wave = 0;
            for (var column = 0; column < 4; column++)
            {
                if (q[0, column] == 0.0 && q[1, column] == 0.0 && q[2, column] == 0.0 && q[3, column] == 0.0)
                {
                    continue;
                }

                for (var i = 0; i < 4; i++)
                {
                    var at = (32 * (k - (k % RideGrid.Block))) + (2 * RideGrid.Block * ((4 * wave) + i)) + (k % RideGrid.Block);
                    (all[at], all[at + RideGrid.Block]) = (q[i, column] * wheels[i].Real, q[i, column] * wheels[i].Imaginary);
                }

                most = Math.Max(most, ++wave);
            }
        }

        return new RandomLines(grid, all, most, [], 0);
    }

    /// <summary>The same road with a car on it.</summary>
    public RandomLines Under(LinearRide ride) => new(grid, heights, waves, Best.Positions(grid, heights, waves, ride), ride.Count);

    /// <summary>Mean squares of Σ rowᵢ·pᵢ and of its rate for a car on this road.</summary>
    /// <param name="ride">The car.</param>
    /// <param name="rows">One after another, shape (n, positions).</param>
    /// <param name="place">Mean squares, shape (n).</param>
    /// <param name="speed">Mean squares of the rates, shape (n).</param>
    public void Squares(LinearRide ride, ReadOnlySpan<double> rows, Span<double> place, Span<double> speed) =>
        Squares(Best, ride, rows, place, speed);

    /// <summary>The same in registers of another width, to be held against each other.</summary>
    public void Squares(LaneLines numbers, LinearRide ride, ReadOnlySpan<double> rows, Span<double> place, Span<double> speed) =>
        numbers.Squares(grid, heights, waves, ride, rows, place, speed);

    /// <summary>Mean square of a signal, weighted by the square of a factor over frequency in Hz.</summary>
    public double MeanSquare(RideSignal signal, Func<double, double>? factor = null)
    {
        var (weights, squares) = (grid.Weighted(factor), Squares(signal));
        Span<double> sums = stackalloc double[RideGrid.Block];
        sums.Clear();
        for (var k = 0; k < squares.Length; k++)
        {
            sums[k % RideGrid.Block] += weights[k] * squares[k];
        }

        var sum = 0.0;
        foreach (var part in sums)
        {
            sum += part;
        }

        return sum;
    }

    /// <summary>What each panel of frequencies adds to the mean square of a signal.</summary>
    public double[] PanelSquares(RideSignal signal)
    {
        var (squares, sums) = (Squares(signal), new double[grid.Blocks]);
        for (var k = 0; k < squares.Length; k++)
        {
            sums[k / RideGrid.Block] += grid.Weights[k] * squares[k];
        }

        return sums;
    }

    /// <summary>Squares of a signal's magnitude per density of the road's height at every frequency.</summary>
    public double[] Squares(RideSignal signal) => Best.Signal(grid, heights, waves, positions, count, signal);

    /// <summary>The sums in registers of 1, 2, 4 or 8 places.</summary>
    public static LaneLines Numbers(int width) => width switch
    {
        8 => new WideLines<Lane512>(),
        4 => new WideLines<Lane256>(),
        2 => new WideLines<Lane128>(),
        _ => new WideLines<ScalarLane>(),
    };
}
