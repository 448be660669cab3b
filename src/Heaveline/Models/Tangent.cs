using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Models;

/// <summary>
/// Small motions about a trim, from the exact derivatives of the kernel. Dampers count with the mean of both slopes at zero velocity, stops as they
/// are touched at trim, friction is left out, every wheel stays on the ground.
/// </summary>
public sealed class Tangent
{
    private Tangent(Matrix<double> state, Matrix<double> road, double[] wheelRate, Matrix<double> suspensionRate, Matrix<double> suspensionDamping)
    {
        State = state;
        Road = road;
        WheelRate = wheelRate;
        SuspensionRate = suspensionRate;
        SuspensionDamping = suspensionDamping;
    }

    /// <summary>Number of positions: z, θ, φ, four wheels, then the fluid flow of the left and the right line when there is one.</summary>
    public int Positions => State.RowCount / 2;

    /// <summary>A of ẋ = A·x + B·r with x the positions and then their rates, shape (2n, 2n).</summary>
    public Matrix<double> State { get; }

    /// <summary>B of ẋ = A·x + B·r with r the road heights at the four wheels and then their rates, shape (2n, 8).</summary>
    public Matrix<double> Road { get; }

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
        var state = Matrix<double>.Build.Dense(2 * count, 2 * count);
        var road = Matrix<double>.Build.Dense(2 * count, 8);
        for (var k = 0; k < count; k++)
        {
            state[k, count + k] = 1.0;
        }

        for (var k = 0; k < (2 * count) + 8; k++)
        {
            var column = Column(c, n, count, k);
            for (var i = 0; i < count; i++)
            {
                if (k < 2 * count)
                {
                    state[count + i, k] = column[i];
                }
                else
                {
                    road[count + i, k - (2 * count)] = column[i];
                }
            }
        }

        var (rate, damping) = Suspension(c);
        return new Tangent(state, road, [.. Enumerable.Range(0, 4).Select(i => rate[i, i] + rate[i, i ^ 1])], rate, damping);
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
            column[7] = state.FlowDot.At(0).Slope;
            column[8] = state.FlowDot.At(1).Slope;
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
