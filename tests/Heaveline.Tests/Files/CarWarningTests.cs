using Heaveline.Tests.House;

namespace Heaveline.Tests.Files;

public class CarWarningTests
{
    private const string Tables = "    bump: [[0.1 m/s, 120 N], [0.3 m/s, 300 N]]\n    rebound: [[0.1 m/s, 240 N], [0.3 m/s, 600 N]]\n";

    [Theory]
    [InlineData("[0.3 m/s, 300 N]", "[0.3 m/s, 620000 N]", 0)]
    [InlineData("[0.3 m/s, 300 N]", "[0.3 m/s, 62000000 N]", 1)]
    [InlineData("[[0.1 m/s, 120 N], [0.3 m/s, 300 N]]", "[[0 m/s, 0 N], [0.1 m/s, 120 N], [0.3 m/s, 62000000 N]]", 1)]
    public void A_row_that_forces_steps_of_a_microsecond_is_told_in_its_place(string row, string mistyped, int refused)
    {
        var text = TextCar.With(row, mistyped);
        var reading = TextCar.Read(text);
        Assert.Equal(refused, reading.Refusals.Count);
        var line = text.Split('\n')[18];
        var (at, column, message) = refused > 0
            ? (reading.Refusals[0].Line, reading.Refusals[0].Column, reading.Refusals[0].Message)
            : (reading.Warnings[0].Line, reading.Warnings[0].Column, reading.Warnings[0].Message);
        Assert.Equal((19, line.IndexOf("[0.3", StringComparison.Ordinal) + 1), (at, column));
        Assert.StartsWith("the rear damper forces steps of ", message, StringComparison.Ordinal);
    }

    // One row a thousand times too large damps the pitch and looks like a cure: it is told in its place.
    [Theory]
    [InlineData("[0.3 m/s, 300 N]", "[0.3 m/s, 30000 N]", "this row of bump rises 124 times as steeply as the one before it.")]
    [InlineData("[0.3 m/s, 600 N]", "[0.3 m/s, 60 kN]", "this row of rebound rises 124 times as steeply as the one before it.")]
    [InlineData(
        "[[0.1 m/s, 120 N], [0.3 m/s, 300 N]]",
        "[[10 m/s, 120 N], [30 m/s, 300 N]]",
        "bump goes up to 30 m/s; on the road a damper sees 0.5 to 3 m/s.")]
    public void A_row_of_a_damper_that_does_not_go_with_its_neighbours_is_told(string row, string mistyped, string words)
    {
        var warning = Assert.Single(
            TextCar.Read(TextCar.With(row, mistyped)).Warnings, w => w.Message.StartsWith(words, StringComparison.Ordinal));
        Assert.Equal(words.Contains("rebound", StringComparison.Ordinal) ? 20 : 19, warning.Line);
    }

    [Theory]
    [InlineData(
        "rate: 22 N/mm",
        "rate: 22 N/m",
        9,
        11,
        "the front axle rides at 0.04 Hz; road cars lie between 0.8 and 2.5 Hz.",
        "the rate in N/mm written as N/m (without it 1.25 Hz)")]
    [InlineData(
        "rate: 22 N/mm", "rate: 22000 N/mm", 9, 11, "the front axle rides at 4.24 Hz", "the rate in N/m written as N/mm (without it 1.25 Hz)")]
    [InlineData(
        "front: 600 kg ± 2 kg",
        "front: 5884 kg",
        3,
        19,
        "the front axle rides at 0.38 Hz; road cars lie between 0.8 and 2.5 Hz.",
        "a weight in newtons written as a mass in kilograms (without it 1.18 Hz)")]
    [InlineData(
        "    rate: 22 N/mm\n    spring-per-wheel: 0.90",
        "    rate: 90 N/mm\n    spring-per-wheel: 1.8",
        10,
        23,
        "the front axle rides at 3.32 Hz",
        "the motion ratio upside down (without it 1.52 Hz)")]
    [InlineData(
        "    rate: 22 N/mm\n    spring-per-wheel: 0.90",
        "    rate: 18 N/mm\n    spring-per-wheel: 0.5",
        9,
        11,
        "the front axle rides at 0.65 Hz",
        "a rate measured at the wheel given as the spring's (then it is wheel-rate)")]
    [InlineData(
        "spring-per-wheel: 0.90",
        "spring-per-wheel: 1.11",
        10,
        23,
        "front spring spring per wheel makes the spring move 1.11 times as far as the wheel; few do.",
        "The other way up it is 0.90.")]
    [InlineData(
        "damper-per-wheel: 0.9",
        "damper-per-wheel: 1.25",
        21,
        23,
        "rear damper damper per wheel makes the damper move 1.25 times as far as the wheel; few do.",
        "The other way up it is 0.80.")]
    [InlineData(
        "unsprung-mass: 70 kg",
        "unsprung-mass: 170 kg",
        7,
        18,
        "front unsprung mass is 28 % of what the axle weighs; up to 25 % is usual.",
        "half of arms and springs")]
    [InlineData(
        "tyre: {rate: 190 N/mm}",
        "tyre: {rate: 40 N/mm}",
        13,
        16,
        "front tyre rate is 2.2 times the wheel rate; tyres are usually more than 3 times as stiff as the springs.",
        "150 to 300 N/mm")]
    [InlineData("0.55 m}", "0.25 m}", 4, 34, "body centre of gravity height is 0.25 m; 0.3 to 1.1 m is usual.", "from the ground")]
    [InlineData("0.55 m}", "1.4 m}", 4, 34, "body centre of gravity height is 1.4 m; 0.3 to 1.1 m is usual.", "not the roof or a load")]
    [InlineData("wheelbase: 2.50 m", "wheelbase: 1.42 m", 2, 12, "wheelbase is 1.42 m, less than a track.", "wheelbase and track swapped")]
    [InlineData(
        "clearance: 60 mm",
        "clearance: 0 mm",
        12,
        26,
        "front bump stop clearance is 0: the stop touches in the state described.",
        "measure the gap in wheel travel")]
    [InlineData(
        Tables,
        "    bump: [[100 m/s, 120 N]]\n    rebound: [[100 m/s, 240 N]]\n",
        19,
        5,
        "rear damper bump makes",
        "velocities in mm/s written as m/s")]
    [InlineData(
        "[[0.1 m/s, 120 N], [0.3 m/s, 300 N]]",
        "[[0.1 mm/s, 120 N], [0.3 mm/s, 300 N]]",
        19,
        5,
        "rear damper bump makes",
        "velocities in m/s written as mm/s")]
    [InlineData(
        "rate: 22 N/mm",
        "rate: 80 N/mm",
        9,
        11,
        "the front axle rides at 2.15 Hz, and its tyres are only 2.9 times as stiff as the wheel rate.",
        "a rate in lbf/in written as N/mm (without it 1.01 Hz)")]
    [InlineData(
        "  tyre: {rate: 190 N/mm}\nrear",
        "  tyre: {rate: 1900 N/mm}\nrear",
        13,
        16,
        "front tyre rate makes the front wheels hop at 37.3 Hz; 6 to 25 Hz is usual.",
        "unsprung mass")]
    [InlineData(
        "  tyre: {rate: 190 N/mm}\nrear",
        "  tyre: {rate: 190 N/mm, damping: 8000 N s/m}\nrear",
        13,
        35,
        "front tyre damping is 8000 N s/m; a tyre has 50 to 200 N s/m, 1000 at most.",
        "the damper's figure")]
    [InlineData(
        "  tyre: {rate: 190 N/mm}\nrear",
        "  friction: {half-width: 6000 N}\n  tyre: {rate: 190 N/mm}\nrear",
        13,
        26,
        "front friction half width is 6000 N, 204 % of the wheel's load; up to 25 % is usual.",
        "Half of the loop")]
    [InlineData(
        "clearance: 60 mm", "clearance: 620 mm", 12, 26, "front bump stop clearance is 620 mm; up to 250 mm is usual.", "a digit too many")]
    [InlineData(
        "  tyre: {rate: 190 N/mm}\nrear",
        "  anti-roll-bar: {wheel-rate: 320 N/mm}\n  tyre: {rate: 190 N/mm}\nrear",
        13,
        31,
        "front anti roll bar wheel rate makes the bar 18.0 times as stiff as the wheel rate; up to 3 times is usual.",
        "at the bar's end")]
    [InlineData("mass: 75 kg, in: driver", "mass: 780 kg, in: driver", 28, 28, "loads driver item 1 mass is 780 kg in one seat", "newtons")]
    public void A_likely_slip_is_named_in_its_place(string old, string slip, int line, int column, string message, string advice)
    {
        var reading = TextCar.Read(TextCar.With(old, slip));
        Assert.True(reading.Refusals.Count == 0, reading.Format());
        Assert.NotNull(reading.Value);
        var warning = reading.Warnings
            .FirstOrDefault(w => (w.Line, w.Column) == (line, column) && w.Message.StartsWith(message, StringComparison.Ordinal));
        Assert.True(warning is not null, reading.Format());
        Assert.Contains(advice, warning.Advice, StringComparison.Ordinal);
    }

    // 22 N/mm written as pounds per inch are 126: too stiff for the car, and for its tyres only because of that.
    [Fact]
    public void A_spring_too_stiff_is_told_before_all_else_and_its_tyre_not_blamed()
    {
        var warnings = TextCar.Read(TextCar.With("rate: 22 N/mm", "rate: 126 N/mm").Replace("0.55 m}", "0.25 m}", StringComparison.Ordinal)).Warnings;
        Assert.Equal((9, 11), (warnings[0].Line, warnings[0].Column));
        Assert.Contains("a rate in lbf/in written as N/mm", warnings[0].Advice, StringComparison.Ordinal);
        Assert.DoesNotContain(warnings, w => w.Message.Contains("tyre rate", StringComparison.Ordinal));
        Assert.Contains(warnings, w => w.Line == 4);
    }

    // Every example car, its front spring's unit slipped: the slip is the first thing said, whether the car still stands or not.
    [Theory]
    [InlineData("drover-van.yaml", "37.7 N/mm", "37.7 N/m", "the rate in N/mm written as N/m")]
    [InlineData("fern-saloon.yaml", "20.7 N/mm", "20.7 N/m", "the rate in N/mm written as N/m")]
    [InlineData("plover-motorcycle.yaml", "10.1 N/mm", "10.1 N/m", "the rate in N/mm written as N/m")]
    [InlineData("tarn-off-roader.yaml", "35.8 N/mm", "35.8 N/m", "the rate in N/mm written as N/m")]
    [InlineData("thimble-city-car.yaml", "19.1 N/mm", "19.1 N/m", "the rate in N/mm written as N/m")]
    [InlineData("fern-saloon.yaml", "20.7 N/mm", "118 N/mm", "a rate in lbf/in written as N/mm")]
    [InlineData("sprig-kit-car.yaml", "172.5 lbf/in", "172.5 N/mm", "a rate in lbf/in written as N/mm")]
    [InlineData("tarn-off-roader.yaml", "35.8 N/mm", "204 N/mm", "a rate in lbf/in written as N/mm")]
    public void A_slip_in_the_unit_of_a_spring_is_the_first_thing_said(string file, string old, string slip, string words)
    {
        var text = File.ReadAllText(Path.Combine(Checkout.Root, "examples", "garage", file));
        var at = text.IndexOf(old, StringComparison.Ordinal);
        Assert.True(at >= 0);
        var reading = TextCar.Read(text[..at] + slip + text[(at + old.Length)..]);
        var (line, advice) = reading.Refusals.Select(r => (r.Line, r.Advice)).Concat(reading.Warnings.Select(w => (w.Line, w.Advice))).First();
        Assert.Equal(1 + text[..at].Count(c => c == '\n'), line);
        Assert.Contains(words, advice, StringComparison.Ordinal);
        Assert.DoesNotContain("interconnection", reading.Format(), StringComparison.Ordinal);
    }

    // Both ends so soft that nothing holds the body: what the model stumbles over is not what the owner wrote.
    [Fact]
    public void A_slip_that_keeps_the_car_from_standing_is_named_and_no_part_that_is_not_there()
    {
        var text = TextCar.With("rate: 22 N/mm", "rate: 0.12 N/m").Replace("wheel-rate: 17 N/mm", "wheel-rate: 17 N/m", StringComparison.Ordinal);
        var reading = TextCar.Read(text);
        Assert.True(reading.Refusals.Count > 0, reading.Format());
        Assert.Contains(reading.Refusals, r => r.Advice.Contains("the rate in N/mm written as N/m", StringComparison.Ordinal));
        Assert.DoesNotContain("interconnection", reading.Format(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_axle_that_is_nearly_all_unsprung_is_named()
    {
        var reading = TextCar.Read(TextCar.With("unsprung-mass: 70 kg", "unsprung-mass: 590 kg"));
        Assert.Contains(
            [.. reading.Refusals.Select(r => r.Message), .. reading.Warnings.Select(w => w.Message)],
            m => m.StartsWith("front unsprung mass is 98 % of what the axle weighs", StringComparison.Ordinal));
    }

    [Fact]
    public void A_spring_table_that_ends_below_what_it_carries_is_named_with_the_load_that_goes_farthest()
    {
        // At rest the wheel carries (300 − 35)·9.80665 = 2599 N, the spring 1/0.9 of it; with the driver a little more.
        const string Short = "    table: [[0 mm, 0 N], [60 mm, 1300 N], [113 mm, 2500 N]]";
        var reading = TextCar.Read(TextCar.With("    rate: 22 N/mm", Short));
        var warning = Assert.Single(reading.Warnings, w => w.Line == 9);
        Assert.NotNull(reading.Value);
        Assert.StartsWith(
            "front spring table ends at 2500 N; standing under 'driver' the spring carries ", warning.Message, StringComparison.Ordinal);
        Assert.Contains("Press the spring further", warning.Advice, StringComparison.Ordinal);
        var enough = TextCar.Read(TextCar.With("    rate: 22 N/mm", Short.Replace("[113 mm, 2500 N]", "[240 mm, 5300 N]", StringComparison.Ordinal)));
        Assert.DoesNotContain(enough.Warnings, w => w.Message.Contains("table", StringComparison.Ordinal));
    }

    [Fact]
    public void Corner_springs_that_leave_the_body_loose_in_pitch_under_a_link_are_named()
    {
        var sound = TextCar.With("    rate: 22 N/mm", "    rate: 1 N/m")
            .Replace("wheel-rate: 17 N/mm", "wheel-rate: 1 N/m", StringComparison.Ordinal)
            .Replace(
                "seats:",
                "interconnection:\n  elastic: {rate: 16 N/mm, front-per-wheel: 1, rear-per-wheel: 1, carried-force: 2000 N}\nseats:",
                StringComparison.Ordinal);
        var reading = TextCar.Read(sound);
        Assert.True(reading.Value is not null, reading.Format());
        var warning = Assert.Single(reading.Warnings, w => w.Message.StartsWith("the body pitches at 0.0", StringComparison.Ordinal));
        Assert.Equal((9, "Likely slip: a rate in N/mm written as N/m."), (warning.Line, warning.Advice.Split(". ")[0] + "."));
    }

    [Fact]
    public void A_sweep_with_a_misread_row_is_named()
    {
        var warning = Assert.Single(
            TextCar.Read(TextCar.With(
                "spring-per-wheel: 0.90", "sweep: [[-100 mm, -90 mm], [-50 mm, -45 mm], [0 mm, 0 mm], [50 mm, 51 mm], [100 mm, 90 mm]]")).Warnings,
            w => w.Line == 10);
        Assert.StartsWith("front spring sweep misses a smooth curve through zero by 2.8 mm.", warning.Message, StringComparison.Ordinal);
    }
}
