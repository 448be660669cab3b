using Heaveline.Modes;
using static Heaveline.References.Customary;

namespace Heaveline.References.EdwardsPenney;

/// <summary>Section 7.4, problem 24: natural frequencies of a car with unequal arms.</summary>
public class EdwardsPenneyTests
{
    [Fact]
    public void The_natural_frequencies_of_problem_24_are_the_printed_ones()
    {
        var modes = BodyModes.Of(new HalfCar
        {
            Mass = 100.0 * Slug, PitchInertia = 1000.0 * Slug * Foot * Foot, FrontArm = 6.0 * Foot, RearArm = 4.0 * Foot,
            FrontRate = 2000.0 * PoundForcePerFoot, RearRate = 2000.0 * PoundForcePerFoot, TyreRate = 1e12,
        }.Model());
        // Printed with two decimals, cut off rather than rounded in the second one.
        Assert.Equal(6.13, modes.Bounce.Omega, 0.01);
        Assert.Equal(10.31, modes.Pitch.Omega, 0.01);
        Assert.Equal(6.1311, modes.Bounce.Omega, 5e-5);
        Assert.Equal(10.3155, modes.Pitch.Omega, 5e-5);
    }
}
