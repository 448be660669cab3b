using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Models;

/// <summary>
/// Small motions about a trim, from the exact slopes of the elements. Dampers count with the mean of both slopes at zero velocity, stops as they
/// are touched at trim, friction is left out, every wheel stays on the ground.
/// </summary>
public sealed class Tangent
{
    private Tangent(
        int positions,
        Matrix<double> state,
        Matrix<double> road,
        double[] wheelRate,
        Matrix<double> suspensionRate,
        Matrix<double> suspensionDamping)
    {
        Positions = positions;
        State = state;
        Road = road;
        WheelRate = wheelRate;
        SuspensionRate = suspensionRate;
        SuspensionDamping = suspensionDamping;
    }

    /// <summary>Number of positions: z, θ, φ, four wheels, then the fluid flow of the left and the right line when there is one.</summary>
    public int Positions { get; }

    /// <summary>
    /// A of ẋ = A·x + B·r with x the n positions and then their rates, shape (2n, 2n). A fluid line without inertance has no rate of its own: its
    /// flows' rows give their rates, and n is 9 with 7 rates, shape (16, 16).
    /// </summary>
    public Matrix<double> State { get; }

    /// <summary>B of ẋ = A·x + B·r with r the road heights at the four wheels and then their rates, shape (2n, 8), or (16, 8).</summary>
    public Matrix<double> Road { get; }

    /// <summary>Number of positions that have a rate of their own, the first ones: all, or 7 beside a fluid line without inertance.</summary>
    internal int Rates => State.RowCount - Positions;

    /// <summary>
    /// A_p of p̈ = A_p·p + A_v·ṗ, shape (n, n). A flow without inertance has 0 = A_p·p + A_v·ṗ in its row: its rate is 1/R times the pressures.
    /// </summary>
    internal Matrix<double> ByPlace => Rows(State, 0, Positions);

    /// <summary>A_v, shape (n, n); −1 on the diagonal for a flow without inertance.</summary>
    internal Matrix<double> BySpeed
    {
        get
        {
            var speeds = Matrix<double>.Build.Dense(Positions, Positions);
            speeds.SetSubMatrix(0, 0, Rows(State, Positions, Rates));
            for (var i = Rates; i < Positions; i++)
            {
                speeds[i, i] = -1.0;
            }

            return speeds;
        }
    }

    /// <summary>The same rows per road height and per its rate, shape (n, 8).</summary>
    internal Matrix<double> ByRoad => Rows(Road, 0, 8);

    /// <summary>
    /// Rate at each wheel when both wheels of its axle move together and the other axle is held, N/m: r²·k + P·dr/dS and an interconnection's own
    /// part (its line shut for the moment). An anti-roll bar has no say in it.
    /// </summary>
    public IReadOnlyList<double> WheelRate { get; }

    /// <summary>
    /// ∂F_i/∂s_j of the suspension at the four wheels, bars and interconnection included (the line's flow held), N/m, shape (4, 4).
    /// </summary>
    public Matrix<double> SuspensionRate { get; }

    /// <summary>∂F_i/∂ṡ_j of the suspension at the four wheels, N s/m, shape (4, 4).</summary>
    public Matrix<double> SuspensionDamping { get; }

    /// <summary>
    /// Rates and damping of the suspension at the same trim with the interconnection's forces taken out, N/m and N s/m, shape (4, 4).
    /// </summary>
    internal static (Matrix<double> Rate, Matrix<double> Damping) WithoutInterconnection(RideNumbers n)
    {
        var slopes = new TangentSlopes(n, element => !element.Joins);
        return (slopes.SuspensionRate, slopes.SuspensionDamping);
    }

    internal static Tangent Of(RideNumbers n)
    {
        var count = n.Positions;
        var rates = n.Elements.Line is { Resists: true } ? 7 : count;
        var slopes = new TangentSlopes(n);
        var state = Matrix<double>.Build.Dense(count + rates, count + rates);
        var road = Matrix<double>.Build.Dense(count + rates, 8);
        for (var k = 0; k < rates; k++)
        {
            state[k, count + k] = 1.0;
        }

        for (var i = 0; i < count; i++)
        {
            var row = i < rates ? count + i : i;
            for (var j = 0; j < count; j++)
            {
                state[row, j] = slopes.ByPlace[(i * count) + j];
            }

            for (var j = 0; j < rates; j++)
            {
                state[row, count + j] = slopes.BySpeed[(i * count) + j];
            }
        }

        for (var i = 0; i < 4; i++)
        {
            for (var w = i & 2; w < (i & 2) + 2; w++)
            {
                // A tyre's push on its own wheel, and on the other through a solid axle.
                var per = i == w ? n.PerWheel[i] : n.AcrossAxle[i];
                road[count + 3 + i, w] = per * n.TyreRate[w];
                road[count + 3 + i, 4 + w] = per * n.TyreDamping[w];
            }
        }

        var rate = slopes.SuspensionRate;
        return new Tangent(
            count, state, road, [.. Enumerable.Range(0, 4).Select(i => rate[i, i] + rate[i, i ^ 1])], rate, slopes.SuspensionDamping);
    }

    // The accelerations' rows, then the flows' that have none.
    private Matrix<double> Rows(Matrix<double> of, int from, int columns)
    {
        var rows = Matrix<double>.Build.Dense(Positions, columns);
        rows.SetSubMatrix(0, 0, of.SubMatrix(Positions, Rates, from, columns));
        if (Rates < Positions)
        {
            rows.SetSubMatrix(Rates, 0, of.SubMatrix(Rates, Positions - Rates, from, columns));
        }

        return rows;
    }
}
