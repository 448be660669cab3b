using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Tests.Measures;
using Heaveline.Studies;
using Heaveline.Tuning;

namespace Heaveline.Tests.Tuning;

public class InterconnectionBenchTests
{
    private const double Rate = 15000.0;
    private const double Common = 4000.0;

    private static Car Plain => BodyOnSprings.Of(1200.0, Rate, tyre: 2e5, unsprung: 80.0);

    // F = [[k_f + k, k], [k, k_r + k]]·s for each side: heave + 4·k, pitch about the middle + 0, one wheel's + k.
    [Fact]
    public void A_common_spring_adds_4k_per_side_to_heave_and_nothing_to_pitch()
    {
        var bench = InterconnectionBench.Of(RideModel.Of(Plain with { Interconnection = new ElasticLink { Rate = new(Common) } }))!;
        Assert.Equal(4.0 * Rate, bench.Without.Stiffness.Heave, 1e-6);
        Assert.Equal((4.0 * Rate) + (2.0 * 4.0 * Common), bench.With.Stiffness.Heave, 1e-6);
        Assert.Equal(4.0 * Rate * 1.35 * 1.35, bench.With.Stiffness.Pitch, 1e-5);
        Assert.Equal(bench.Without.Stiffness.Pitch, bench.With.Stiffness.Pitch, 1e-6);
        // Both sides roll apart, so that each common spring works: 4·k·(t/2)² per side. Warp moves its ends against each other: nothing.
        Assert.Equal(bench.Without.Stiffness.Roll + (2.0 * 4.0 * Common * 0.75 * 0.75), bench.With.Stiffness.Roll, 1e-5);
        Assert.Equal(bench.Without.Stiffness.Warp, bench.With.Stiffness.Warp, 1e-6);
        Assert.Equal(0.0, bench.PitchShare, 1e-9);
        Assert.Equal(bench.Without.BrakingPitch, bench.With.BrakingPitch, 1e-9);
        Assert.Null(bench.Line);
    }

    // The same sums with c: heat a second c·(ṡ_f + ṡ_r)² is 4·c·ẇ² in heave, c·t²·ω² in roll for each side (4·c·(t/2)²), none in pitch and warp.
    [Fact]
    public void A_common_damper_adds_4c_per_side_to_heave_and_nothing_to_pitch()
    {
        const double damping = 350.0;
        var bench = InterconnectionBench.Of(RideModel.Of(
            Plain with { Interconnection = new ElasticLink { Rate = new(0.0), Damping = new(damping) } }))!;
        var (without, with) = (bench.Without.Damping, bench.With.Damping);
        Assert.Equal(without.Heave + (2.0 * 4.0 * damping), with.Heave, 1e-6);
        Assert.Equal(without.Pitch, with.Pitch, 1e-6);
        Assert.Equal(without.Roll + (2.0 * 4.0 * damping * 0.75 * 0.75), with.Roll, 1e-6);
        Assert.Equal(without.Warp, with.Warp, 1e-6);
        Assert.Equal(bench.Without.Stiffness.Heave, bench.With.Stiffness.Heave, 1e-9);
        Assert.Equal(0.0, bench.HeaveShare, 1e-12);
    }

    [Fact]
    public void Opposite_ratios_stiffen_pitch_and_leave_heave_alone()
    {
        var link = new ElasticLink { Rate = new(Common), FrontRatio = new(1.0), RearRatio = new(-1.0) };
        var bench = InterconnectionBench.Of(RideModel.Of(Plain with { Interconnection = link }))!;
        Assert.Equal(bench.Without.Stiffness.Heave, bench.With.Stiffness.Heave, 1e-6);
        Assert.Equal(bench.Without.Stiffness.Pitch + (2.0 * Common * 2.7 * 2.7), bench.With.Stiffness.Pitch, 1e-5);
        Assert.True(bench.With.BrakingPitch < bench.Without.BrakingPitch);
    }

    /// <summary>
    /// ρ·l·A²/a and 128·μ·l·A²/(π·d⁴) (Hagen–Poiseuille) worked out by hand for a line of 2.5 m, 1030 kg/m³, 2.5 mPa s and displacers of 50 cm².
    /// </summary>
    [Theory]
    [InlineData(8.0, 1281.0, 1554.0)]
    [InlineData(10.0, 820.0, 637.0)]
    [InlineData(12.0, 569.0, 307.0)]
    [InlineData(15.0, 364.0, 126.0)]
    [InlineData(20.0, 205.0, 40.0)]
    [InlineData(25.0, 131.0, 16.0)]
    [InlineData(32.0, 80.0, 6.0)]
    public void A_thin_pipe_adds_mass_and_resistance_at_the_wheel(double bore, double mass, double resistance)
    {
        var line = InterconnectionBench.Of(RideModel.Of(Piped(bore, 50e-4)))!.Line!;
        Assert.Equal(mass, line.FrontMass, 0.55);
        Assert.Equal(resistance, line.FrontResistance, 0.55);
        // Every one of these weighs more than the 40 kg of the wheel itself.
        Assert.Contains(line.Warnings, w => w.Contains("too thin", StringComparison.Ordinal));
    }

    [Fact]
    public void Small_displacers_feel_less_of_the_same_pipe()
    {
        var line = InterconnectionBench.Of(RideModel.Of(Piped(15.0, 15e-4)))!.Line!;
        Assert.Equal(33.0, line.FrontMass, 0.5);
        Assert.DoesNotContain(line.Warnings, w => w.Contains("feels like", StringComparison.Ordinal));
    }

    // Two equal units of compliance C and area A: shut each wheel has A²/C; open, heave keeps all of it and pitch loses all of it.
    [Fact]
    public void An_open_line_carries_heave_as_a_shut_one_does_and_gives_pitch_nothing()
    {
        var bench = InterconnectionBench.Of(RideModel.Of(Piped(15.0, 15e-4)))!;
        var unit = 15e-4 * 15e-4 / Compliance;
        var (without, open, shut) = (bench.Without, bench.With, bench.States[3]);
        Assert.Equal(without.Stiffness.Heave + (4.0 * unit), open.Stiffness.Heave, 1e-3);
        Assert.Equal(open.Stiffness.Heave, shut.Stiffness.Heave, 1e-3);
        Assert.Equal(without.Stiffness.Pitch, open.Stiffness.Pitch, 1e-3);
        Assert.Equal(without.Stiffness.Pitch + (4.0 * unit * 1.35 * 1.35), shut.Stiffness.Pitch, 1e-3);
        Assert.True(shut.BrakingPitch < open.BrakingPitch);
    }

    // One side's fluid between two springs 1/C: natural frequency √(2/(C·I)); a pipe swinging slower than the body pitches is in its own way.
    [Fact]
    public void The_pipe_has_a_frequency_of_its_own_and_damps_pitch_below_it()
    {
        var car = Piped(15.0, 15e-4);
        var model = RideModel.Of(car);
        var bench = InterconnectionBench.Of(model)!;
        var inertance = ((FluidLink)car.Interconnection!).Line.Inertance.Si;
        Assert.Equal(Math.Sqrt(2.0 / (Compliance * inertance)) / (2.0 * Math.PI), bench.Line!.NaturalFrequency, 1e-6);
        Assert.True(bench.States[2].Damping.Pitch > bench.Without.Damping.Pitch);
        Assert.Equal(bench.Without.Damping.Heave, bench.States[2].Damping.Heave, 1e-3);

        // At its corner the flow in pitch is 1/√2 of the slow one: the lost part of the stiffness |K_shut − K(ω)| has fallen likewise.
        double Lost(double hertz)
        {
            var rates = FluidLineFlow.Rates(model, 2.0 * Math.PI * hertz);
            return (rates[0, 0] - model.Tangent.SuspensionRate[0, 0]).Magnitude;
        }

        Assert.Equal(1.0 / Math.Sqrt(2.0), Lost(bench.Line.CornerFrequency) / Lost(0.0), 1e-6);
        Assert.Contains(
            InterconnectionBench.Of(RideModel.Of(Piped(8.0, 50e-4)))!.Line!.Warnings,
            w => w.Contains("times the body's pitch", StringComparison.Ordinal));
    }

    // Without inertance the fluid does not swing: a low pass of first order with its corner at (1/C_f + 1/C_r)/(2πR), and no mass at the wheel.
    [Fact]
    public void A_line_that_only_resists_has_a_corner_and_no_frequency_of_its_own()
    {
        var piped = (FluidLink)Piped(15.0, 15e-4).Interconnection!;
        const double Resistance = 5e8;
        var model = RideModel.Of(Plain with { Interconnection = piped with { Line = new FluidLine { Resistance = new(Resistance) } } });
        var line = InterconnectionBench.Of(model)!.Line!;
        Assert.Equal(0.0, line.FrontMass);
        Assert.Equal(double.PositiveInfinity, line.NaturalFrequency);
        Assert.Equal(2.0 / (2.0 * Math.PI * Resistance * Compliance), line.CornerFrequency, 1e-9);
        double Lost(double hertz) =>
            (FluidLineFlow.Rates(model, 2.0 * Math.PI * hertz)[0, 0] - model.Tangent.SuspensionRate[0, 0]).Magnitude;
        Assert.Equal(1.0 / Math.Sqrt(2.0), Lost(line.CornerFrequency) / Lost(0.0), 1e-9);
        Assert.DoesNotContain(LinkTable.Line(line).Rows, row => row.Key is "line-frequency" or "line-damping");
    }

    [Fact]
    public void A_car_without_an_interconnection_has_no_bench() => Assert.Null(InterconnectionBench.Of(RideModel.Of(Plain)));

    private const double Compliance = 3e-10;

    private static Car Piped(double boreMillimetres, double area) => Plain with
    {
        Interconnection = new FluidLink
        {
            FrontArea = new(area),
            RearArea = new(area),
            Front = new Accumulator { Compliance = new Amount<Compliance>(Compliance) },
            Rear = new Accumulator { Compliance = new Amount<Compliance>(Compliance) },
            BasePressure = new(2e5),
            Line = FluidLine.FromPipe(new(1e-3 * boreMillimetres), new(2.5), new(1030.0), new(2.5e-3)),
        },
    };
}
