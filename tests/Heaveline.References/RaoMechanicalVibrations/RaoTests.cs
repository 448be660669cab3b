using Heaveline.Modes;

namespace Heaveline.References.RaoMechanicalVibrations;

/// <summary>Automobile on two springs: frequencies and nodes as printed, half of the last digit allowed.</summary>
public class RaoTests
{
    [Fact]
    public void Bounce_and_pitch_of_the_automobile_have_the_printed_frequencies_and_nodes()
    {
        var modes = BodyModes.Of(
            new HalfCar { Mass = 1000.0, PitchInertia = 810.0, FrontArm = 1.0, RearArm = 1.5, FrontRate = 18000.0, RearRate = 22000.0 }.Model());
        Assert.Equal(5.8593, modes.Bounce.Omega, 5e-5);
        Assert.Equal(9.4341, modes.Pitch.Omega, 5e-5);
        Assert.Equal(-2.6461, modes.Bounce.NodeAhead, 5e-5);
        Assert.Equal(0.3061, modes.Pitch.NodeAhead, 5e-5);
        Assert.False(modes.Bounce.NodeBetweenAxles);
        Assert.True(modes.Pitch.NodeBetweenAxles);
    }

    [Fact]
    public void All_modes_of_the_full_equations_of_motion_hold_the_two_printed_ones()
    {
        var modes = DampedModes.Of(new HalfCar
        {
            Mass = 1000.0, PitchInertia = 810.0, FrontArm = 1.0, RearArm = 1.5, FrontRate = 18000.0, RearRate = 22000.0, UnsprungPerAxle = 1e-2,
            TyreRate = 1e9,
        }.Model());
        Assert.Equal(5.8593, 2.0 * Math.PI * modes.Swings[0].Frequency, 2e-4);
        Assert.Equal(9.4341, 2.0 * Math.PI * modes.Swings[1].Frequency, 2e-4);
        Assert.Equal(Motion.Heave, modes.Swings[0].Dominant);
        Assert.Equal(Motion.Pitch, modes.Swings[1].Dominant);
        Assert.Equal(-2.6461, modes.Swings[0].Node!.Ahead, 2e-4);
        Assert.Equal(0.3061, modes.Swings[1].Node!.Ahead, 2e-4);
        Assert.Equal(0.0, modes.Swings[0].Node!.Remaining, 1e-4);
    }
}
