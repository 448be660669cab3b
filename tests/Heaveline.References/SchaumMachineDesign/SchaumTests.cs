using Heaveline.Cars;
using Heaveline.Modes;
using static Heaveline.References.Customary;

namespace Heaveline.References.SchaumMachineDesign;

/// <summary>Chapter 19: free vibrations with and without damping (g = 386 in/s²), and a torsion wire.</summary>
public class SchaumTests
{
    [Fact]
    public void Problem_19_2_has_the_printed_period()
    {
        var axle = AxleRide.Of(HalfCar.Single(2.0 * MassOf(35.0, 386.0), 2.0 * 18.0 * PoundForcePerInch).Model(), AxleEnd.Front);
        Assert.Equal(0.45, 1.0 / axle.Rates.Frequency, 5e-3);
        Assert.Equal(0.445948, 1.0 / axle.Rates.Frequency, 1e-6);
    }

    [Fact]
    public void Problems_19_19_and_19_20_swing_at_24_06_and_not_at_the_24_0_of_the_companion()
    {
        // 12 lb, 20 lb/in, 0.5 lb s/in.
        var car = HalfCar.Single(
            2.0 * MassOf(12.0, 386.0), 2.0 * 20.0 * PoundForcePerInch, 2.0 * 0.5 * PoundForcePerInch) with
        {
            TyreRate = 1e9,
            UnsprungPerAxle = 1e-2,
        };
        var axle = AxleRide.Of(car.Model(), AxleEnd.Front);
        Assert.Equal(25.3640, 2.0 * Math.PI * axle.Rates.FrequencyOnRigidTyres, 5e-5);
        Assert.Equal(0.31705, axle.Damping.Ratio, 5e-6);
        Assert.Equal(24.0555, axle.Quarter.Body.Imaginary, 1e-3);
        var decrement = -axle.Quarter.Body.Real * axle.Quarter.BodyPeriod!.Value;
        Assert.Equal(2.10045, decrement, 5e-4);
    }

    [Fact]
    public void The_torsion_wire_of_problem_19_11_has_the_stiffness_that_swings_its_disc_at_the_printed_rate()
    {
        var wire = new TorsionBarDimensions { Diameter = new(0.002), Length = new(0.9), Arm = new(1.0), ShearModulus = new(80e9) };
        Assert.Equal(0.139626, wire.TorsionalRate, 5e-7);
        Assert.Equal(0.24, Math.Sqrt(wire.TorsionalRate / 0.0616538) / (2.0 * Math.PI), 5e-3);
    }
}
