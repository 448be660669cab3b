using Heaveline.Cars;
using Heaveline.Modes;

namespace Heaveline.References.BartonFieldhouse;

/// <summary>Automotive Chassis Engineering, printed pages 209 to 213: wheel hop and two coil springs.</summary>
public class BartonFieldhouseTests
{
    [Fact]
    public void Wheel_hop_of_the_example_is_the_printed_one()
    {
        var axle = AxleRide.Of(
            new HalfCar
            {
                Mass = 635.0, PitchInertia = 635.0, FrontArm = 1.0, RearArm = 1.0, FrontRate = 20630.0, RearRate = 20630.0,
                UnsprungPerAxle = 40.0, TyreRate = 300000.0,
            }.Model(),
            AxleEnd.Front);
        Assert.Equal(14.25, axle.Rates.HopFrequency, 5e-3);
        Assert.Equal(14.2493, axle.Rates.HopFrequency, 5e-5);
    }

    [Theory]
    [InlineData(0.120, 7.73, 19.3)]
    [InlineData(0.100, 6.10, 42.3)]
    public void Coils_with_the_printed_number_of_turns_have_the_rate_they_were_made_for(double diameter, double turns, double newtonsPerMillimetre)
    {
        var coil = new CoilDimensions { Wire = new(0.0127), MeanDiameter = new(diameter), ActiveCoils = new(turns) };
        Assert.Equal(newtonsPerMillimetre, coil.Rate / 1000.0, 0.05);
    }

    [Fact]
    public void The_first_coil_has_the_index_wahl_factor_and_stress_worked_out_independently()
    {
        var coil = new CoilDimensions { Wire = new(0.0127), MeanDiameter = new(0.120), ActiveCoils = new(7.73) };
        Assert.Equal(19305.0, coil.Rate, 0.5);
        Assert.Equal(9.449, coil.Index, 5e-4);
        Assert.Equal(1.15386, coil.WahlFactor, 5e-6);
        Assert.Equal(404.3e6, coil.StressUnder(2349.0), 0.05e6);
    }
}
