using Heaveline.Cars;
using Heaveline.Modes;
using static Heaveline.References.Customary;

namespace Heaveline.References.BevanTheoryOfMachines;

/// <summary>Page 552: 50 lb on 100 lb/in whose amplitude halves with every cycle.</summary>
public class BevanTests
{
    [Fact]
    public void An_amplitude_that_halves_with_every_cycle_gives_the_printed_frequencies()
    {
        // Given to the program as the damping ratio that belongs to a halving: ln 2/√(4π² + ln² 2) = 0.109659.
        var car = HalfCar.Single(2.0 * MassOf(50.0, 386.4), 2.0 * 100.0 * PoundForcePerInch) with
        {
            Damper = new RatioDamper { Ratio = new(0.109659) },
            TyreRate = 1e9,
            UnsprungPerAxle = 1e-2,
        };
        var axle = AxleRide.Of(car.Model(), AxleEnd.Front);
        Assert.Equal(4.424, axle.Rates.FrequencyOnRigidTyres, 5e-4);
        Assert.Equal(4.398, 1.0 / axle.Quarter.BodyPeriod!.Value, 5e-4);
        Assert.Equal(0.994, 1.0 / (axle.Quarter.BodyPeriod.Value * axle.Rates.FrequencyOnRigidTyres), 5e-4);
        Assert.Equal(0.5, Math.Exp(axle.Quarter.Body.Real * axle.Quarter.BodyPeriod.Value), 2e-5);
    }
}
