using Heaveline.Modes;

namespace Heaveline.References.OpenStaxCollegePhysics;

/// <summary>Examples 16.4 and 16.6: a car bouncing on its suspension after a bump.</summary>
public class OpenStaxTests
{
    [Fact]
    public void The_bouncing_car_has_the_printed_frequency_period_and_greatest_speed()
    {
        var bounce = BodyModes.Of(HalfCar.Single(900.0, 6.53e4).Model()).Bounce;
        Assert.Equal(1.36, bounce.Frequency, 5e-3);
        Assert.Equal(1.35567, bounce.Frequency, 5e-6);
        Assert.Equal(0.738, 1.0 / bounce.Frequency, 5e-4);
        Assert.Equal(0.852, 0.100 * bounce.Omega, 5e-4);
        Assert.True(double.IsInfinity(bounce.NodeAhead));
    }
}
