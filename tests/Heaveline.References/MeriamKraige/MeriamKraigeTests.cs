using System.Numerics;
using Heaveline.Cars;
using Heaveline.Modes;
using static Heaveline.References.Customary;

namespace Heaveline.References.MeriamKraige;

/// <summary>Sample problems 8/1 (free, undamped) and 8/2 (free, damped), each as one end of a vehicle.</summary>
public class MeriamKraigeTests
{
    [Fact]
    public void Sample_problem_8_1_has_the_printed_deflection_and_frequency()
    {
        // 25 lb at g = 32.2 ft/s² on 160 lb/ft.
        var axle = AxleRide.Of(HalfCar.Single(2.0 * MassOf(25.0, 32.2 * 12.0), 2.0 * 160.0 * PoundForcePerFoot).Model(), AxleEnd.Front);
        Assert.Equal(14.3555, 2.0 * Math.PI * axle.Rates.FrequencyOnRigidTyres, 5e-5);
        Assert.Equal(14.36, 2.0 * Math.PI * axle.Rates.Frequency, 5e-3);
        Assert.Equal(2.28, axle.Rates.Frequency, 5e-3);
        Assert.Equal(0.438, 1.0 / axle.Rates.Frequency, 5e-4);
        // The book rounds g up by 0.08 %; the deflection under standard gravity is as much shorter.
        Assert.Equal(1.875, axle.Rates.Deflection / Inch, 1.875 * 1e-3);
    }

    [Fact]
    public void Sample_problem_8_2_has_the_printed_damping_and_place_after_two_seconds()
    {
        var axle = AxleRide.Of((HalfCar.Single(16.0, 64.0, 40.0) with { TyreRate = 1e9, UnsprungPerAxle = 1e-1 }).Model(), AxleEnd.Front);
        Assert.Equal(0.625, axle.Damping.Ratio, 5e-7);
        Assert.Equal(1.561, axle.Quarter.Body.Imaginary, 5e-4);
        Assert.Equal(1.561249, axle.Quarter.Body.Imaginary, 1e-5);
        // Released at rest from 0.2 m: x = 0.2·Im(λ̄·e^{λt})/Im λ̄.
        var root = axle.Quarter.Body;
        var conjugate = Complex.Conjugate(root);
        var place = 0.2 * (conjugate * Complex.Exp(root * 2.0)).Imaginary / conjugate.Imaginary;
        Assert.Equal(-0.01616, place, 5e-6);
    }
}
