using Heaveline.Modes;

namespace Heaveline.References.CourseNotesRideDynamics;

/// <summary>The notes' quarter car: 300 kg, 30 kg, 20 kN/m, 160 kN/m, 1500 N s/m.</summary>
public class QuarterCarNotesTests
{
    // Two such quarter cars one behind the other, independent of each other because the dynamic index is 1.
    private static readonly HalfCar Quarters = new()
    {
        Mass = 600.0, PitchInertia = 600.0, FrontArm = 1.0, RearArm = 1.0, FrontRate = 20000.0, RearRate = 20000.0,
        FrontDamping = 1500.0, RearDamping = 1500.0, UnsprungPerAxle = 30.0, TyreRate = 160000.0,
    };

    [Fact]
    public void The_ride_rate_body_frequency_and_damping_ratio_are_the_printed_ones()
    {
        var axle = AxleRide.Of(Quarters.Model(), Cars.AxleEnd.Front);
        Assert.Equal(17777.78, axle.Rates.RideRate, 5e-3);
        Assert.Equal(7.70, 2.0 * Math.PI * axle.Rates.Frequency, 5e-3);
        Assert.Equal(7.69800, 2.0 * Math.PI * axle.Rates.Frequency, 5e-6);
        // The notes refer the damping ratio to the ride rate, this program to the wheel rate.
        var onRideRate = axle.Damping.Ratio * Math.Sqrt(axle.Rates.AxleRate / axle.Rates.RideRate);
        Assert.Equal(0.32, onRideRate, 5e-3);
        Assert.Equal(0.32476, onRideRate, 5e-6);
    }

    [Fact]
    public void Wheel_hop_is_77_radians_per_second_and_not_the_6000_in_print()
    {
        var omega = 2.0 * Math.PI * AxleRide.Of(Quarters.Model(), Cars.AxleEnd.Front).Rates.HopFrequency;
        Assert.Equal(77.460, omega, 5e-4);
        // The notes forgot the root: 6000 is the square of the circular frequency.
        Assert.Equal(6000.0, omega * omega, 1e-6);
    }

    [Fact]
    public void The_exact_undamped_modes_are_as_worked_out_independently()
    {
        var quarter = QuarterCar.Of(300.0, 30.0, 20000.0, 0.0, 160000.0);
        Assert.Equal(7.69321, 2.0 * Math.PI * quarter.BodyFrequency, 5e-6);
        Assert.Equal(77.50794, 2.0 * Math.PI * quarter.HopFrequency, 5e-6);

        var modes = DampedModes.Of((Quarters with { FrontDamping = 0.0, RearDamping = 0.0 }).Model());
        Assert.Equal([7.69321, 7.69321, 77.50794, 77.50794], modes.Swings.Select(m => 2.0 * Math.PI * m.Frequency), (a, b) => Math.Abs(a - b) < 5e-6);
    }
}
