namespace Heaveline.Tests.Files;

public class CarWarningTests
{
    private const string Tables = "    bump: [[0.1 m/s, 120 N], [0.3 m/s, 300 N]]\n    rebound: [[0.1 m/s, 240 N], [0.3 m/s, 600 N]]\n";

    [Theory]
    [InlineData(
        "rate: 22 N/mm",
        "rate: 22 N/m",
        9,
        11,
        "the front axle rides at 0.04 Hz; road vehicles lie between 0.7 and 3.2 Hz.",
        "the rate in N/mm written as N/m (without it 1.25 Hz)")]
    [InlineData(
        "rate: 22 N/mm", "rate: 22000 N/mm", 9, 11, "the front axle rides at 4.24 Hz", "the rate in N/m written as N/mm (without it 1.25 Hz)")]
    [InlineData(
        "front: 600 kg ± 2 kg",
        "front: 5884 kg",
        3,
        19,
        "the front axle rides at 0.38 Hz; road vehicles lie between 0.7 and 3.2 Hz.",
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
