using Heaveline.Modes;

namespace Heaveline.References.GillespieVehicleDynamics;

/// <summary>Chapter 5, bounce and pitch example: data from memory, answers worked out apart from this program (g = 386 in/s²).</summary>
public class GillespieTests
{
    private static readonly HalfCar Sedan = Build();

    [Fact]
    public void Axle_frequencies_of_the_example_are_as_worked_out_independently()
    {
        var axles = AxleRide.Of(Sedan.Model());
        Assert.Equal(1.1391, axles[0].Rates.Frequency, 5e-5);
        Assert.Equal(1.1119, axles[1].Rates.Frequency, 5e-5);
    }

    [Fact]
    public void Bounce_and_pitch_of_the_example_are_as_worked_out_independently()
    {
        var modes = BodyModes.Of(Sedan.Model());
        Assert.Equal(1.1, modes.DynamicIndex, 1e-9);
        Assert.Equal(1.13026, modes.Bounce.Frequency, 5e-6);
        Assert.Equal(-233.9, modes.Bounce.NodeAhead / Customary.Inch, 0.05);
        Assert.Equal(1.06841, modes.Pitch.Frequency, 5e-6);
        Assert.Equal(11.69, modes.Pitch.NodeAhead / Customary.Inch, 5e-3);
    }

    private static HalfCar Build()
    {
        var front = Customary.MassOf(2.0 * 957.0, 386.0);
        var rear = Customary.MassOf(2.0 * 730.0, 386.0);
        var length = 100.6 * Customary.Inch;
        var (b, c) = (length * rear / (front + rear), length * front / (front + rear));
        return new HalfCar
        {
            Mass = front + rear,
            PitchInertia = 1.1 * (front + rear) * b * c,
            FrontArm = b,
            RearArm = c,
            FrontRate = 2.0 * 127.0 * Customary.PoundForcePerInch,
            RearRate = 2.0 * 92.3 * Customary.PoundForcePerInch,
            TyreRate = 1e12,
        };
    }
}
