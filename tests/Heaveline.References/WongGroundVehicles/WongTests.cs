using Heaveline.Modes;

namespace Heaveline.References.WongGroundVehicles;

/// <summary>Example 7.2: data from memory, answers worked out apart from this program.</summary>
public class WongTests
{
    [Fact]
    public void Bounce_and_pitch_of_example_7_2_are_as_worked_out_independently()
    {
        var modes = BodyModes.Of(new HalfCar
        {
            Mass = 2120.0, PitchInertia = 2120.0 * 1.33 * 1.33, FrontArm = 1.267, RearArm = 1.548, FrontRate = 35000.0, RearRate = 38000.0,
            TyreRate = 1e12,
        }.Model());
        Assert.Equal(5.58341, modes.Bounce.Omega, 5e-6);
        Assert.Equal(6.52104, modes.Pitch.Omega, 5e-6);
        Assert.Equal(0.88863, modes.Bounce.Frequency, 5e-6);
        Assert.Equal(1.03786, modes.Pitch.Frequency, 5e-6);
        Assert.Equal(-2.0953, modes.Bounce.NodeAhead, 5e-5);
        Assert.Equal(0.8442, modes.Pitch.NodeAhead, 5e-5);
        Assert.Equal(0.9019, modes.DynamicIndex, 5e-5);
    }
}
