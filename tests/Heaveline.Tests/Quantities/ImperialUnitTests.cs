using System.Globalization;
using CsCheck;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Tests.Quantities;

public class ImperialUnitTests
{
    // What is stated in SI wherever English is read, or has no unit: it stays.
    private static readonly string[] Staying = ["–", "%", "s", "ms", "Hz", "°", "°/s", "° s½", "rad/s²", "m/s²", "m/s³", "m/s^1.75", "g"];

    // One imperial unit in SI units, NIST SP 811 (2008), appendix B.8, to its seven digits; products of them where B.8 lists none.
    private static readonly Dictionary<string, double> Published = new()
    {
        ["in"] = 2.54e-2,
        ["ft"] = 3.048e-1,
        ["mi"] = 1.609344e3,
        ["mph"] = 4.4704e-1,
        ["in/s"] = 2.54e-2,
        ["in/mi"] = 2.54e-2 / 1.609344e3,
        ["lb"] = 4.535924e-1,
        ["lbf"] = 4.448222,
        ["lbf/in"] = 1.751268e2,
        ["lbf s/in"] = 1.751268e2,
        ["lbf ft"] = 1.355818,
        ["lbf ft/°"] = 1.355818,
        ["lbf ft/rad"] = 1.355818,
        ["lbf ft s/rad"] = 1.355818,
        ["lbf ft s"] = 1.355818,
        ["slug ft²"] = 1.459390e1 * 3.048e-1 * 3.048e-1,
        ["psi"] = 6.894757e3,
        ["ksi"] = 6.894757e6,
        ["in²"] = 6.4516e-4,
        ["in³"] = 1.638706e-5,
        ["in³/psi"] = 1.638706e-5 / 6.894757e3,
    };

    // The metric unit in SI units.
    private static readonly Dictionary<string, double> Si = new()
    {
        ["mm"] = 1e-3, ["cm"] = 1e-2, ["m"] = 1.0, ["km"] = 1e3, ["km/h"] = 1.0 / 3.6, ["m/s"] = 1.0, ["mm/s"] = 1e-3, ["m/km"] = 1e-3,
        ["kg"] = 1.0, ["N"] = 1.0, ["kN"] = 1e3, ["N/mm"] = 1e3, ["kN/m"] = 1e3, ["N/m"] = 1.0, ["N s/m"] = 1.0, ["kN s/m"] = 1e3,
        ["N m"] = 1.0, ["N m/°"] = 1.0, ["N m/rad"] = 1.0, ["kN m/rad"] = 1e3, ["N m s/rad"] = 1.0, ["N m s"] = 1.0, ["kg m²"] = 1.0,
        ["bar"] = 1e5, ["kPa"] = 1e3, ["MPa"] = 1e6, ["GPa"] = 1e9, ["cm²"] = 1e-4, ["mm²"] = 1e-6, ["cm³"] = 1e-6, ["cm³/bar"] = 1e-11,
    };

    public static TheoryData<string> All => [.. ImperialUnits.All.Select(unit => unit.Metric)];

    [Theory, MemberData(nameof(All))]
    public void A_unit_has_the_published_factor(string metric)
    {
        var unit = ImperialUnits.For(metric)!;
        Assert.Equal(Si[metric] / Published[unit.Symbol], unit.Factor, 5e-7 * unit.Factor);
    }

    [Fact]
    public void The_exact_ones_are_exact()
    {
        Assert.Equal(1.0, 25.4 * ImperialUnits.For("mm")!.Factor, 1e-15);
        Assert.Equal(1.0, 4.4482216152605 * ImperialUnits.For("N")!.Factor, 1e-15);
        Assert.Equal(1.0, 0.45359237 * ImperialUnits.For("kg")!.Factor, 1e-15);
        Assert.Equal(1.0, 1.609344 * ImperialUnits.For("km/h")!.Factor, 1e-15);
    }

    [Fact]
    public void Every_measure_is_turned_by_a_published_factor_or_stays_by_name() => Assert.All(
        MeasureCatalogue.Subjects.SelectMany(subject => subject.Measures),
        measure =>
        {
            var metric = measure.Unit.Symbol;
            Assert.True(
                ImperialUnits.For(metric) is not null || Staying.Contains(metric) || metric.StartsWith("% of ", StringComparison.Ordinal),
                $"{measure.Key}: {metric} is neither turned nor named as one that stays.");
            if (ImperialUnits.For(metric) is { } unit)
            {
                Assert.Equal(measure.Unit.Factor * unit.Factor, Shown(metric, measure), 1e-6 * measure.Unit.Factor * unit.Factor);
            }
        });

    [Fact]
    public void An_imperial_print_turns_back_into_the_metric_print() =>
        Gen.Select(Gen.Int[0, ImperialUnits.All.Count - 1].Select(k => ImperialUnits.All[k]), Gen.Double[-2000.0, 2000.0], Gen.Int[0, 4])
            .Where((unit, _, decimals) => unit.Metric != "km/h" || decimals == 0)
            .Sample((unit, value, decimals) =>
            {
                var metric = Numeral.Of(value, decimals);
                var imperial = ReaderUnits.Imperial.Number(unit.Metric, metric);
                var back = double.Parse(imperial.Replace('−', '-'), CultureInfo.InvariantCulture) / unit.Factor;
                Assert.Equal(metric, Numeral.Of(back, decimals));
            });

    [Theory]
    [InlineData("at 50 km/h", "at 31.1 mph")]
    [InlineData("at 32.2 km/h.", "at 20 mph.")]
    [InlineData("from 20 to 30 km/h", "from 12.4 to 18.6 mph")]
    [InlineData("true from 20 to 30, at 50 and from 70 to 80 km/h;", "true from 12.4 to 18.6, at 31.1 and from 43.5 to 49.7 mph;")]
    [InlineData("at ratio 1.2, at 30 km/h", "at ratio 1.2, at 18.6 mph")]
    [InlineData("20, 40 and 80 km/h", "12.4, 24.9 and 49.7 mph")]
    [InlineData("−12.3 mm, +5 mm and -9 mm", "−0.484 in, +0.20 in and -0.35 in")]
    [InlineData("24.5 N/mm ± 0.5", "139.9 lbf/in ± 2.9")]
    [InlineData("24.5 N/mm ± 5 %", "139.9 lbf/in ± 5 %")]
    [InlineData("3 mm ± 1 mm", "0.12 in ± 0.04 in")]
    [InlineData("2 N s/m, 10 N m/°, 900 N m, 4 N.", "0.011 lbf s/in, 7.4 lbf ft/°, 663.8 lbf ft, 0.9 lbf.")]
    [InlineData("4.0 m/s² and 0.4 m/rad at 0.1 cycles/m, 5 m/s^1.75, 16e-6 m³", "4.0 m/s² and 0.4 m/rad at 0.1 cycles/m, 5 m/s^1.75, 16e-6 m³")]
    [InlineData("wheels 1 and 2; 3 s later, 0.6 L f/V", "wheels 1 and 2; 3 s later, 0.6 L f/V")]
    [InlineData("0.00 mm", "0.0000 in")]
    public void A_sentence_is_turned_amount_by_amount(string metric, string imperial)
    {
        Assert.Equal(imperial, ReaderUnits.Imperial.Text(metric));
        Assert.Equal(metric, ReaderUnits.Metric.Text(metric));
    }

    [Fact]
    public void A_name_that_its_owner_gave_stays()
    {
        var units = ReaderUnits.Imperial.Leaving(["Fern, 20 mm lower", "driver"]);
        Assert.Equal("Fern, 20 mm lower, driver, falls 0.79 in.", units.Text("Fern, 20 mm lower, driver, falls 20 mm."));
    }

    [Fact]
    public void Units_have_two_words() => Assert.Throws<RefusedValueException>(() => ReaderUnits.Of("furlongs"));

    // A second way to the same factor: what the measure shows of one SI unit, in the published imperial one.
    private static double Shown(string metric, Measure measure)
    {
        var unit = ImperialUnits.For(metric)!;
        return measure.Unit.Of(1.0) * Si[metric] / Published[unit.Symbol];
    }
}
