using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Tests.Files;

public class CarFileTests
{
    [Fact]
    public void A_car_is_read_with_its_units_doubts_and_seats()
    {
        var reading = TextCar.Read(TextCar.Sound);
        Assert.Equal("", reading.Format());
        var car = reading.Value!;
        Assert.Equal(("Test car", VehicleKind.Car, 2.5), (car.Name, car.Kind, car.Wheelbase.Si));
        Assert.Equal(300.0, car.Weighing.FrontRight.Si);
        Assert.Equal(new Doubt(1.0, "front axle weighing", OfOneCar: true), car.Weighing.FrontLeft.Doubt);
        Assert.Equal(22000.0, car.Front.Spring.Law.RateAtReference(0.0));
        Assert.Equal(0.9, car.Front.Spring.MotionRatio.AtReference.Si);
        Assert.Equal(MotionRatio.One, car.Rear.Spring.MotionRatio);
        Assert.Equal(0.3, Assert.IsType<RatioDamper>(car.Front.Damper.Law).Ratio.Si);
        Assert.Equal([0.1, 0.3], Assert.IsType<TableDamper>(car.Rear.Damper.Law).Bump.At);
        Assert.Equal(0.060, car.Front.BumpStop!.Clearance.Si);
        var load = Assert.Single(Assert.Single(car.LoadStates).Loads);
        Assert.Equal((75.0, 1.30, 0.35, 0.55), (load.Mass.Si, load.BehindFrontAxle.Si, load.LeftOfMiddle.Si, load.Height.Si));
    }

    [Fact]
    public void A_named_scale_and_tester_make_doubts_that_move_together()
    {
        var text = TextCar.With("rear: 500 kg ± 2 kg", "rear-left: 255 kg ± 1 kg, rear-right: 245 kg ± 1 kg, scale: shop scale")
            .Replace("rate: 22 N/mm", "rate: 22 N/mm ± 5 %\n    tester: press", StringComparison.Ordinal);
        var car = TextCar.Read(text).Value!;
        Assert.Equal(
            [new Doubt(1.0, "shop scale"), new Doubt(1.0, "shop scale"), new Doubt(1.0, "shop scale")],
            [car.Weighing.FrontLeft.Doubt, car.Weighing.RearLeft.Doubt, car.Weighing.RearRight.Doubt]);
        var doubt = Assert.IsType<LinearSpring>(car.Front.Spring.Law).Rate.Doubt;
        Assert.Equal(("press", 1100.0), (doubt.Shared, Math.Round(doubt.HalfWidth, 9)));
    }

    // JCGM 100:2008 (GUM) 5.1.6: relative errors of a product of powers add in squares, each times its power.
    [Fact]
    public void Dimensions_give_a_rate_with_the_doubt_that_follows_from_theirs()
    {
        var car = TextCar.Read(TextCar.With("rate: 22 N/mm", "coil: {wire: 12 mm ± 1 %, mean-diameter: 120 mm ± 1 %, active-coils: 5 ± 2 %}")).Value!;
        var rate = Assert.IsType<LinearSpring>(car.Front.Spring.Law).Rate;
        Assert.Equal(79.3e9 * Math.Pow(0.012, 4) / (8.0 * 5.0 * Math.Pow(0.120, 3)), rate.Si, 1e-6);
        Assert.Equal(Math.Sqrt((4.0 * 4.0) + (3.0 * 3.0) + (2.0 * 2.0)) / 100.0, rate.Doubt.HalfWidth / rate.Si, 1e-12);
    }

    [Theory]
    [InlineData("spring-per-wheel: 0.62 ± 2 %", 0.62, 0.0124)]
    [InlineData("wheel-per-spring: 1.6 ± 2 %", 0.625, 0.0125)]
    [InlineData("moves: 31 mm ± 1 % for 50 mm ± 1 % at the wheel", 0.62, 0.62 * 0.01414213562373095)]
    [InlineData("moves: 31 mm for 50 mm", 0.62, 0.0)]
    [InlineData("moves: 1.55 in for 2.5 in at the wheel", 0.62, 0.0)]
    [InlineData("sweep: [[-20 mm, -12.4 mm], [0 mm, 0 mm], [20 mm, 12.4 mm]]", 0.62, 0.0)]
    public void A_motion_ratio_is_read_in_either_direction(string words, double ratio, double doubt)
    {
        var read = TextCar.Read(TextCar.With("spring-per-wheel: 0.90", words)).Value!.Front.Spring.MotionRatio.AtReference;
        Assert.Equal(ratio, read.Si, 1e-12);
        Assert.Equal(doubt, read.Doubt.HalfWidth, 1e-12);
    }

    [Fact]
    public void A_sweep_and_a_change_make_a_ratio_that_grows_with_bump()
    {
        var swept = TextCar.Read(TextCar.With(
            "spring-per-wheel: 0.90",
            "sweep: [[-40 mm, -24 mm], [-20 mm, -12.2 mm], [0 mm, 0 mm], [20 mm, 12.6 mm], [40 mm, 25.6 mm]]")).Value!.Front.Spring.MotionRatio;
        Assert.Equal(0.0256, swept.Travel(0.040), 1e-4);
        Assert.True(swept.At(0.040) > swept.At(-0.040));
        var changing = TextCar.Read(TextCar.With(
            "spring-per-wheel: 0.90", "spring-per-wheel: 0.90\n    ratio-change: 0.5 1/m")).Value!.Front.Spring.MotionRatio;
        Assert.Equal(0.95, changing.At(0.1), 1e-12);
    }

    [Theory]
    [InlineData("{elastic: {rate: 5 N/mm, front-per-wheel: 0.6, rear-per-wheel: -0.6, carried-force: 0 N}}", typeof(ElasticLink))]
    [InlineData("{elastic: {rate: 5 N/mm, damping: 400 N s/m ± 50}}", typeof(ElasticLink))]
    [InlineData(
        "{fluid: {front-area: 5 cm², rear-area: 4 cm², front: {gas-volume: 0.2 L}, rear: {gas-volume: 0.2 L}, "
        + "pressure: 10 bar, line: {state: open}}}",
        typeof(FluidLink))]
    [InlineData(
        "{fluid: {front-area: 5 cm², rear-area: 4 cm², front: {compliance: 4 cm³/bar}, rear: {compliance: 4 cm³/bar}, pressure: 10 bar, line: "
        + "{inertance: 5e7 kg/m⁴, resistance: 2e8 Pa s/m³}}}",
        typeof(FluidLink))]
    [InlineData(
        "{fluid: {front-area: 5 cm², rear-area: 4 cm², front: {compliance: 4 cm³/bar}, rear: {compliance: 4 cm³/bar}, pressure: 10 bar, line: "
        + "{resistance: 2e8 Pa s/m³}}}",
        typeof(FluidLink))]
    public void Interconnections_are_read(string words, Type kind)
    {
        var reading = TextCar.Read(TextCar.Sound + "interconnection: " + words);
        Assert.Equal("", reading.Format());
        Assert.IsType(kind, reading.Value!.Interconnection);
    }

    [Theory]
    [InlineData("{resistance: 2 Pa s/m³}", "line resistance is 2 Pa s/m³; it must be at least 5000000 Pa s/m³ for a line without inertance")]
    [InlineData("{inertance: 0 kg/m⁴}", "line resistance is 0 Pa s/m³; it must be at least")]
    [InlineData("{resistance: 2e8 Pa s/m³, bore: 8 mm}", "is given beside resistance")]
    public void A_line_that_neither_weighs_nor_resists_is_refused_in_its_place(string line, string words)
    {
        var refusal = Assert.Single(TextCar.Read(TextCar.Sound
            + "interconnection: {fluid: {front-area: 5 cm², rear-area: 4 cm², front: {compliance: 4 cm³/bar}, rear: {compliance: 4 cm³/bar}, "
            + $"pressure: 10 bar, line: {line}}}}}").Refusals);
        Assert.Contains(words, refusal.Message, StringComparison.Ordinal);
        Assert.Equal(29, refusal.Line);
    }

    [Fact]
    public void A_common_damper_is_read_with_its_doubt_and_needs_no_spring()
    {
        var link = Assert.IsType<ElasticLink>(
            TextCar.Read(TextCar.Sound + "interconnection: {elastic: {rate: 0 N/mm, damping: 0.4 N s/mm ± 0.05}}").Value!.Interconnection);
        Assert.Equal(0.0, link.Rate.Si);
        Assert.Equal(400.0, link.Damping.Si, 1e-9);
        Assert.Equal(50.0, link.Damping.Doubt.HalfWidth, 1e-9);
        Assert.Equal(
            0.0,
            Assert.IsType<ElasticLink>(TextCar.Read(TextCar.Sound + "interconnection: {elastic: {rate: 5 N/mm}}").Value!.Interconnection).Damping.Si);
    }

    [Fact]
    public void A_gas_spring_a_table_and_a_torsion_bar_are_read()
    {
        var text = TextCar.With("rate: 22 N/mm", "gas: {area: 40 cm², volume: 1.4 L}")
            .Replace("{wheel-rate: 17 N/mm}", "{torsion-bar: {diameter: 22 mm, length: 0.9 m, arm: 0.40 m}}", StringComparison.Ordinal);
        var car = TextCar.Read(text).Value!;
        Assert.IsType<GasSpring>(car.Front.Spring.Law);
        Assert.Equal("from the torsion bar", Assert.IsType<LinearSpring>(car.Rear.Spring.Law).Origin);
        var table = TextCar.Read(TextCar.With("rate: 22 N/mm", "table: [[0 mm, 0 N], [100 mm, 2200 N], [150 mm, 4500 N]]")).Value!;
        Assert.Equal(22000.0, table.Front.Spring.Law.RateAtReference(1000.0), 1e-6);
    }
}
