using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Models;

/// <summary>
/// Small motions about a trim, from the exact derivatives of the kernel. Dampers count with the mean of both slopes at zero velocity, stops as they
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
        var c = RidePacking.Pack<Quad<DualLane>, DualLane>([n]);
        c.Needs &= ~(Needs.Friction | Needs.ElasticLink | Needs.FluidLink);
        return Suspension(c);
    }

    internal static Tangent Of(RideNumbers n)
    {
        var c = RidePacking.Pack<Quad<DualLane>, DualLane>([n]);
        c.Needs &= ~Needs.Friction;
        var count = n.Laws.FluidFlows ? 9 : 7;
        var rates = n.Laws.FluidResists ? 7 : count;
        var state = Matrix<double>.Build.Dense(count + rates, count + rates);
        var road = Matrix<double>.Build.Dense(count + rates, 8);
        for (var k = 0; k < rates; k++)
        {
            state[k, count + k] = 1.0;
        }

        for (var k = 0; k < (2 * count) + 8; k++)
        {
            var column = Column(c, n, count, k);
            for (var i = 0; i < count; i++)
            {
                var row = i < rates ? count + i : i;
                if (k < count + rates)
                {
                    state[row, k] = column[i];
                }
                else if (k >= 2 * count)
                {
                    road[row, k - (2 * count)] = column[i];
                }
            }
        }

        var (rate, damping) = Suspension(c);
        return new Tangent(count, state, road, [.. Enumerable.Range(0, 4).Select(i => rate[i, i] + rate[i, i ^ 1])], rate, damping);
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

    // Derivative of all accelerations with respect to variable k: positions, rates, then road heights and road rates.
    private static double[] Column(RideConstants<Quad<DualLane>, DualLane> c, RideNumbers n, int count, int k)
    {
        DualLane D(int i) => new(0.0, i == k ? 1.0 : 0.0);
        Quad<DualLane> Four(int from) => new(D(from), D(from + 1), D(from + 2), D(from + 3));
        Quad<DualLane> Sides(int from) => count == 9 ? new(D(from), D(from + 1), D(from), D(from + 1)) : default;
        var state = new RideState<Quad<DualLane>, DualLane>
        {
            Z = D(0),
            Theta = D(1),
            Phi = D(2),
            U = Four(3),
            Flow = Sides(7),
            ZRate = D(count),
            ThetaRate = D(count + 1),
            PhiRate = D(count + 2),
            URate = Four(count + 3),
            FlowRate = Sides(count + 7),
        };
        RideKernel<Quad<DualLane>, DualLane>.Accelerations(c, state, Four(2 * count), Four((2 * count) + 4));
        var column = new double[count];
        column[0] = state.ZDot.Slope;
        column[1] = state.ThetaDot.Slope;
        column[2] = n.Rolls ? state.PhiDot.Slope : 0.0;
        for (var i = 0; i < 4; i++)
        {
            column[3 + i] = state.UDot.At(i).Slope;
        }

        if (count == 9)
        {
            var flow = n.Laws.FluidResists ? state.FlowRate : state.FlowDot;
            column[7] = flow.At(0).Slope;
            column[8] = flow.At(1).Slope;
        }

        return column;
    }

    private static (Matrix<double> Rate, Matrix<double> Damping) Suspension(RideConstants<Quad<DualLane>, DualLane> c)
    {
        var rate = Matrix<double>.Build.Dense(4, 4);
        var damping = Matrix<double>.Build.Dense(4, 4);
        for (var j = 0; j < 4; j++)
        {
            Quad<DualLane> Seed() => new(D(0, j), D(1, j), D(2, j), D(3, j));
            var byTravel = new RideState<Quad<DualLane>, DualLane> { Travel = Seed() + c.TrimTravel };
            var byRate = new RideState<Quad<DualLane>, DualLane> { Travel = c.TrimTravel, Rate = Seed() };
            ElementForces<Quad<DualLane>, DualLane>.Suspension(c, byTravel);
            ElementForces<Quad<DualLane>, DualLane>.Suspension(c, byRate);
            for (var i = 0; i < 4; i++)
            {
                rate[i, j] = byTravel.Force.At(i).Slope;
                damping[i, j] = byRate.Force.At(i).Slope;
            }
        }

        return (rate, damping);

        static DualLane D(int i, int j) => new(0.0, i == j ? 1.0 : 0.0);
    }
}
