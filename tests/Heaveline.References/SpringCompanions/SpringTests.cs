using Heaveline.Cars;
using static Heaveline.References.Customary;

namespace Heaveline.References.SpringCompanions;

/// <summary>
/// Springs by their dimensions against textbook examples; three outputs of the public companion are wrong and must not come out here.
/// </summary>
public class SpringTests
{
    [Fact]
    public void Singh_8_1_wire_of_least_size_carries_the_stress_it_was_sized_for()
    {
        var coil = Singh(4.15078e-3);
        Assert.Equal(1.184, coil.WahlFactor, 5e-4);
        Assert.Equal(420e6, coil.StressUnder(300.0), 0.05e6);
    }

    [Fact]
    public void Singh_8_1_coil_of_stock_wire_has_the_rate_asked_for_and_surges_at_97_hertz_not_at_the_3_in_print()
    {
        var coil = Singh(4.25e-3);
        Assert.Equal(6.25, coil.Rate / 1000.0, 5e-4);
        var surge = coil.SurgeFrequency(7800.0);
        Assert.Equal(97.36, surge, 0.02);
        // The print mixed millimetres and metres: it is low by √1000.
        Assert.Equal(3.079, surge / Math.Sqrt(1000.0), 5e-4);
    }

    [Fact]
    public void Jindal_8_1_coil_is_not_the_one_of_the_companion()
    {
        var coil = new CoilDimensions { Wire = new(0.005), MeanDiameter = new(0.030), ActiveCoils = new(15.0), ShearModulus = new(84e9) };
        Assert.Equal(1.2525, coil.WahlFactor, 5e-5);
        Assert.Equal(16.2037, coil.Rate / 1000.0, 5e-5);
        Assert.Equal(18.5143, 300.0 / coil.Rate * 1000.0, 5e-5);
    }

    [Fact]
    public void Wentzell_8_2_coil_has_the_printed_rate()
    {
        var pascalsPerPsi = PoundForcePerInch / Inch;
        var coil = new CoilDimensions
        {
            Wire = new(0.105 * Inch),
            MeanDiameter = new(0.620 * Inch),
            ActiveCoils = new(12.79 - 2.0),
            ShearModulus = new(11.85e6 * pascalsPerPsi),
        };
        Assert.Equal(70.00, coil.Rate / PoundForcePerInch, 0.04);
    }

    [Fact]
    public void Sarkar_leaf_spring_needs_10_79_leaves_and_not_the_10_93_in_print()
    {
        var one = new LeafDimensions { Span = new(0.75), Width = new(0.084375), Thickness = new(0.0070313), Graduated = 1, Modulus = new(200e9) };
        Assert.Equal(10.788, 8000.0 / 0.020 / one.Rate, 2e-3);
        var leaves = one with { Graduated = 11 };
        Assert.Equal(200e6 * 10.788 / 11.0, leaves.StressUnder(8000.0), 0.1e6);
    }

    [Fact]
    public void Jindal_8_11_leaf_spring_has_the_printed_share_and_the_right_deflection()
    {
        var leaves =
            new LeafDimensions { Span = new(1.180), Width = new(0.075), Thickness = new(0.014), Graduated = 8, FullLength = 2, Modulus = new(207e9) };
        Assert.Equal(10909.0, 40000.0 * leaves.FullLengthShare, 0.5);
        Assert.Equal(52.593, 40000.0 / leaves.Rate * 1000.0, 5e-4);
    }

    private static CoilDimensions Singh(double wire) =>
        new() { Wire = new(wire), MeanDiameter = new(8.0 * wire), ActiveCoils = new(13.945), ShearModulus = new(84e9) };
}
