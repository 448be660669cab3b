using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Tests.Measures;
using Heaveline.Tuning;

namespace Heaveline.Tests.Tuning;

public class PipeFlowTests
{
    // Slow: the steady parabola, whose kinetic energy is 4/3 of a plug's. Fast: a plug with a thin layer at the wall, of resistance ωρl/a·√2/α and so
    // α/(4·√2) times 8·ω·(ρl/a)/α². Womersley, J. Physiol. 127 (1955) 553.
    [Fact]
    public void Swinging_flow_has_the_known_limits()
    {
        var (slowResistance, slowMass) = PipeFlow.Swinging(0.01);
        Assert.Equal(1.0, slowResistance, 1e-6);
        Assert.Equal(4.0 / 3.0, slowMass, 1e-5);
        const double fast = 300.0;
        var (fastResistance, fastMass) = PipeFlow.Swinging(fast);
        Assert.Equal(1.0, fastResistance / (fast / (4.0 * Math.Sqrt(2.0))), 0.02);
        Assert.Equal(1.0, fastMass, 0.01);
    }

    // J₀/J₂ summed as power series in z²/4 at α = 2: J₂(λ)/J₀(λ) of λ² = −j·α².
    [Fact]
    public void Between_the_limits_it_is_the_ratio_of_two_Bessel_functions()
    {
        const double alpha = 2.0;
        var quarter = new System.Numerics.Complex(0.0, -alpha * alpha) / 4.0;
        System.Numerics.Complex Series(int order)
        {
            var (term, sum) = (System.Numerics.Complex.One, System.Numerics.Complex.Zero);
            for (var m = 1; m <= order; m++)
            {
                term /= m;
            }

            for (var m = 1; m < 60; m++)
            {
                sum += term;
                term *= -quarter / (m * (m + order));
            }

            return sum;
        }

        // J₂ = (λ/2)²·Σ, and 1 − 2·J₁/(λ·J₀) = −J₂/J₀ by the recurrence.
        var impedance = System.Numerics.Complex.ImaginaryOne / (-quarter * Series(2) / Series(0));
        var (resistance, mass) = PipeFlow.Swinging(alpha);
        Assert.Equal(impedance.Real * alpha * alpha / 8.0, resistance, 1e-12);
        Assert.Equal(impedance.Imaginary, mass, 1e-12);
    }

    // 64/Re below, Blasius 0.3164/Re^¼ above: 0.02583 at 22 500 by hand (22 500^0.25 = 12.247), 9.08 times the laminar 0.00284.
    [Fact]
    public void Turbulent_friction_is_that_of_a_smooth_pipe()
    {
        Assert.Equal(64.0 / 1000.0, PipeFlow.Friction(1000.0), 1e-12);
        Assert.Equal(0.02583, PipeFlow.Friction(22500.0), 1e-5);
        Assert.Equal(9.08, PipeFlow.Friction(22500.0) * 22500.0 / 64.0, 0.01);
    }

    [Fact]
    public void The_flow_of_a_pass_is_told_by_its_own_record()
    {
        var link = new FluidLink
        {
            FrontArea = new(6e-4), RearArea = new(6e-4),
            Front = new Accumulator { Compliance = new Amount<Compliance>(3e-11) },
            Rear = new Accumulator { Compliance = new Amount<Compliance>(3e-11) },
            BasePressure = new(15e5),
            Line = FluidLine.FromPipe(new(0.010), new(2.2), new(1030.0), new(2.5e-3)),
        };
        var car = BodyOnSprings.Of(1200.0, 15000.0, tyre: 2e5, unsprung: 80.0) with { Interconnection = link };
        var road = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
        var pass = Pass.Of(RideModel.Of(car), road, 40.0 / 3.6);
        var flow = PipeFlow.Of(pass)!;
        var area = Math.PI * 25e-6;
        var peak = pass.FlowRate(0).Concat(pass.FlowRate(1)).Max(Math.Abs);
        Assert.Equal(peak / area, flow.PeakVelocity, 1e-9);
        Assert.Equal(1030.0 * flow.PeakVelocity * 0.010 / 2.5e-3, flow.Reynolds, 1e-6 * flow.Reynolds);
        Assert.True(flow.Reynolds > PipeFlow.Critical && flow.TurbulentShare is > 0.0 and < 1.0);
        Assert.Equal(link.Line.Resistance.Si * peak, flow.CountedLoss, 1e-6 * flow.CountedLoss);
        Assert.Equal(flow.SmoothPipeLoss * 6e-4, flow.FrontForce, 1e-9 * flow.FrontForce);

        // The same flow by itself: I·q̈ = (A·s_f − q)/C − (A·s_r + q)/C − R·q̇ along the recorded travels, in steps of a hundredth of a sample.
        var (front, rear) = (pass.Travel(0), pass.Travel(2));
        var (q, rate, most) = (0.0, 0.0, 0.0);
        const int parts = 100;
        var step = pass.SampleStep / parts;
        for (var k = 1; k < pass.Count; k++)
        {
            for (var part = 0; part < parts; part++)
            {
                double At(IReadOnlyList<double> s) => s[k - 1] + ((s[k] - s[k - 1]) * part / parts) - s[0];
                var pressure = ((6e-4 * (At(front) - At(rear))) - (2.0 * q)) / 3e-11;
                rate += step * (pressure - (link.Line.Resistance.Si * rate)) / link.Line.Inertance.Si;
                q += step * rate;
                most = Math.Max(most, Math.Abs(rate));
            }
        }

        Assert.Equal(1.0, peak / most, 0.01);
        // Without its bore nobody can tell.
        var unknown = car with { Interconnection = link with { Line = link.Line with { Bore = null } } };
        Assert.Null(PipeFlow.Of(Pass.Of(RideModel.Of(unknown), road, 40.0 / 3.6)));
    }
}
