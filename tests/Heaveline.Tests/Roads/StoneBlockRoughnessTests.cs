using System.Globalization;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Roads;

/// <summary>
/// A measured stone-block test road, 10 m by 10 mm (OpenCRG, crg-bin/belgian_block.crg, Apache License 2.0): long enough for a spectrum of its
/// stones, not for a class.
/// </summary>
public class StoneBlockRoughnessTests
{
    [Fact]
    public void Ten_metres_of_stone_blocks_have_a_spectrum_but_neither_class_nor_index()
    {
        var profile = Road.FromMeasured("stone blocks", [.. Enumerable.Range(0, 1001).Select(i => 0.01 * i)], Heights("0.00"), null).Left;
        var spectrum = ProfileSpectrum.Of(profile, new(0.01));
        Assert.InRange(spectrum.Bands[0].Band.Low, 0.4, 0.45);
        Assert.All(spectrum.Bands, band => Assert.True(band.Density > 0.0));
        var noClass = Assert.Throws<RefusedValueException>(() => SpectrumFit.Of(spectrum));
        Assert.Contains("10.01 m", noClass.Value, StringComparison.Ordinal);
        Assert.Contains("0.1 cycles/m", noClass.Advice, StringComparison.Ordinal);
        var noIndex = Assert.Throws<RefusedValueException>(() => Iri.Of(profile, new(0.01)));
        Assert.Contains("31 m", noIndex.Limit, StringComparison.Ordinal);
    }

    private static double[] Heights(string column)
    {
        var lines = File.ReadAllLines(SharedData.Require("stone-block-road-right", "grid.csv"));
        var at = Array.IndexOf(lines[0].Split(','), column);
        return [.. lines.Skip(1).Select(line => 1e-3 * double.Parse(line.Split(',')[at], CultureInfo.InvariantCulture))];
    }
}
