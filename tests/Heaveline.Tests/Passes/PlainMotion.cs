using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Tests.Passes;

/// <summary>
/// The equations of motion as they stand in the books, in plain doubles over the list of elements: what the kernel in blocks is held to. Signs of
/// ISO 8855; corner i at (x, y) from the loaded centre of gravity; travel s = u − (z − x·θ + y·φ), S = s + S_trim. M z̈ = ΣF,
/// I_yy θ̈ − P φ̈ = −ΣxF + M g h_θ θ, I_xx φ̈ − P θ̈ = ΣyF + M g h_φ φ, wheels m ü = T − F, F and T the changes from trim; by virtual work an
/// element's force acts on each wheel and each line's flow by its share. Steps: Adams–Bashforth of fourth order (Hairer, Nørsett, Wanner, Solving
/// Ordinary Differential Equations I, III.1 and III.10): v += h(55a₀ − 59a₁ + 37a₂ − 9a₃)/24, x += h·v + h²(323a₀ − 264a₁ + 159a₂ − 38a₃)/360.
/// </summary>
/// <param name="n">The car, at rest at trim on a flat road when it begins.</param>
internal sealed class PlainMotion(RideNumbers n)
{
    private const int Flow = Channel.Flow;
    private readonly double[,] perForce = n.PerForce().ToArray();
    private readonly double[] slides = new double[n.Elements.All.Count];
    private readonly double[][] past = [new double[9], new double[9], new double[9]];

    private bool Resists => n.Elements.Line is { Resists: true };

    /// <summary>z, θ, φ, u of the wheels, q of the lines, about trim.</summary>
    public double[] Place { get; } = new double[9];
    public double[] Rate { get; } = new double[9];
    public double[] Acceleration { get; } = new double[9];
    /// <summary>Whole suspension force at the wheels.</summary>
    public double[] Force { get; } = new double[4];

    /// <summary>Change of tyre load from trim.</summary>
    public double[] Tyre { get; } = new double[4];

    /// <summary>Heat of friction's sliders at the last <see cref="Push"/>, J: their force by the way that they gave.</summary>
    public double Rubbed { get; private set; }

    /// <summary>
    /// Works out what acts on the wheels, and on each line's flow (returned, Pa), at places and rates from the reference state. Friction's sliders
    /// give way for good.
    /// </summary>
    public double[] Push(double[] travel, double[] rate, double[] gone, double[] flow, bool rubs = true)
    {
        var pressure = new double[2];
        Force.AsSpan().Clear();
        Rubbed = 0.0;
        for (var k = 0; k < slides.Length; k++)
        {
            var element = n.Elements.All[k];
            var sight = element.Sight;
            var at = sight.Of(travel, gone);
            var own = element.Force(new ScalarLane(at), new ScalarLane(sight.Of(rate, flow))).Value;
            if (rubs && element.Slider is { } slider)
            {
                // A spring in series with a slider: what the spring cannot hold the slider gives way by.
                var apart = at - n.AtTrim(sight) - slides[k];
                var held = Math.Clamp(apart, -slider.PreSliding, slider.PreSliding);
                slides[k] += apart - held;
                own += slider.Rate * held;
                Rubbed += slider.Rate * held * (apart - held);
            }

            for (var i = 0; i < 4; i++)
            {
                Force[i] += sight.Wheels[i] * own;
            }

            pressure[0] -= sight.Flows[0] * own;
            pressure[1] -= sight.Flows[1] * own;
        }

        return pressure;
    }

    /// <summary>Works out forces and accelerations over a road.</summary>
    public void Accelerate(Quad<ScalarLane> road, Quad<ScalarLane> roadRate, bool rubs = true)
    {
        double[] travel = [.. n.TrimTravel.Select((trim, i) => trim + Seen(Place, i))];
        double[] rate = [Seen(Rate, 0), Seen(Rate, 1), Seen(Rate, 2), Seen(Rate, 3)];
        double[] gone = [n.TrimFlow[0] + Place[Flow], n.TrimFlow[1] + Place[Flow + 1]];
        // Where a line only resists, its rate follows from what is left.
        var pressure = Push(travel, rate, gone, Resists ? new double[2] : Rate[Flow..], rubs);
        var acting = new double[9];
        (acting[1], acting[2]) = (n.PitchGravity * Place[1], n.RollGravity * Place[2]);
        for (var i = 0; i < 4; i++)
        {
            var force = Force[i] - n.TrimForce[i];
            Tyre[i] = TyreAt(i, road, roadRate);
            acting[0] += force;
            acting[1] -= n.X[i] * force;
            acting[2] += n.Y[i] * force;
            acting[3 + i] = Tyre[i] - force;
        }

        pressure.CopyTo(acting, Flow);
        for (var row = 0; row < n.Positions; row++)
        {
            Acceleration[row] = 0.0;
            for (var k = 0; k < n.Positions; k++)
            {
                Acceleration[row] += perForce[row, k] * acting[k];
            }
        }

        if (Resists)
        {
            (Rate[Flow], Rate[Flow + 1]) = (pressure[0] / n.Elements.Line!.Resistance, pressure[1] / n.Elements.Line.Resistance);
        }
    }

    /// <summary>Gives the wheels what the tyres' jump makes on its far side, by its share of this step.</summary>
    public void Jump(RoadJump<ScalarLane> jump)
    {
        for (var i = 0; i < 4; i++)
        {
            var change = jump.Share.At(i).Value * (TyreAt(i, jump.Far, default) - TyreAt(i, jump.Near, default));
            Acceleration[3 + i] += n.PerWheel[i] * change;
            Acceleration[3 + (i ^ 1)] += n.AcrossAxle[i] * change;
        }
    }

    /// <summary>Moves a step on.</summary>
    public void Advance(double h)
    {
        var oldest = past[2];
        for (var k = 0; k < n.Positions; k++)
        {
            // A flow without an acceleration of its own: the formula of velocities on its rate.
            var flows = Resists && k >= Flow;
            var (a0, a1, a2, a3) = (flows ? Rate[k] : Acceleration[k], past[0][k], past[1][k], oldest[k]);
            Place[k] += flows ? 0.0 : (h * Rate[k]) + (h * h * ((323.0 * a0) - (264.0 * a1) + (159.0 * a2) - (38.0 * a3)) / 360.0);
            (flows ? Place : Rate)[k] += h * ((55.0 * a0) - (59.0 * a1) + (37.0 * a2) - (9.0 * a3)) / 24.0;
            oldest[k] = a0;
        }

        (past[0], past[1], past[2]) = (oldest, past[0], past[1]);
    }

    private double Seen(double[] x, int i) => x[Channel.Wheel + i] - (x[0] - (n.X[i] * x[1]) + (n.Y[i] * x[2]));

    // Never below −N, and −N while the tyre is clear of the road.
    private double TyreAt(int i, Quad<ScalarLane> road, Quad<ScalarLane> roadRate)
    {
        var elastic = n.TyreRate[i] * (road.At(i).Value - Place[3 + i]);
        return elastic <= -n.TrimLoad[i]
            ? -n.TrimLoad[i]
            : Math.Max(-n.TrimLoad[i], elastic + (n.TyreDamping[i] * (roadRate.At(i).Value - Rate[3 + i])));
    }
}
