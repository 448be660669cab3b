namespace Heaveline.Tests.Files;

public class CarRefusalTests
{
    private const string Bar = "  tyre: {rate: 190 N/mm}\nrear:";

    [Theory]
    // Values.
    [InlineData(
        "wheelbase: 2.50 m", "wheelbase: 250 m", 2, 12, 5, "wheelbase is 250 m; it must be between 0.5 and 10 m.", "Measure from wheel centre")]
    [InlineData("wheelbase: 2.50 m", "wheelbase: 2.50", 2, 12, 4, "wheelbase: 2.50 has no unit; a length is wanted, e.g. 2.50 mm.", "")]
    [InlineData("front: 600 kg ± 2 kg", "front: 5900 N", 3, 19, 6, "weighing front: 5900 N is a force; a mass is wanted, e.g. 601.6 kg.", "")]
    [InlineData(
        "front: 600 kg ± 2 kg", "front: -600 kg", 3, 19, 7, "weighing front is -600 kg; it must be above 0 kg.", "Give the reading of the scale")]
    [InlineData("front: 600 kg ± 2 kg, ", "front-left: 300 kg, ", 3, 24, 6, "weighing front left is given without front-right.", "Weigh both wheels")]
    [InlineData(
        "front: 600 kg ± 2 kg",
        "front: 600 kg, front-right: 290 kg",
        3,
        40,
        6,
        "weighing front right is given beside front, which is both wheels together.",
        "Give front, or front-left and front-right.")]
    [InlineData("0.55 m}", "5.5 m}", 4, 34, 5, "body centre of gravity height is 5.5 m; it must be between 0.1 and 3 m.", "tilt test")]
    [InlineData(
        "0.55 m}",
        "0.55 m, pitch-inertia: 1500 kg m2, pitch-index: 1}",
        4,
        82,
        1,
        "body pitch index is given beside pitch-inertia.",
        "Keep the one that was measured.")]
    [InlineData(
        "unsprung-mass: 70 kg",
        "unsprung-mass: 700 kg",
        7,
        18,
        6,
        "front unsprung mass is 700 kg; it must be below the 600 kg that the axle weighs.",
        "Unsprung is only the wheels")]
    [InlineData("rate: 22 N/mm", "rate: -22 N/mm", 9, 11, 8, "front spring rate is -22 N/mm; it must be above 0 N/mm.", "positive number")]
    [InlineData("rate: 22 N/mm", "rate: 22 mm", 9, 11, 5, "front spring rate: 22 mm is a length; a spring rate is wanted, e.g. 22 N/mm.", "")]
    [InlineData("wheel-rate: 17 N/mm", "wheel-rate: 0 N/mm", 17, 24, 6, "rear spring wheel rate is 0 N/mm; it must be above 0 N/mm.", "at its wheel")]
    [InlineData(
        "clearance: 60 mm", "clearance: -5 mm", 12, 26, 5, "front bump stop clearance is -5 mm; it must be 0 mm or above.", "Measure the gap")]
    // Motion ratios.
    [InlineData(
        "    spring-per-wheel: 0.90\n",
        "",
        8,
        3,
        6,
        "front spring has none of moves, spring-per-wheel, wheel-per-spring, sweep; it must have one.",
        "spring-per-wheel: 1 when it stands at the wheel")]
    [InlineData(
        "spring-per-wheel: 0.90",
        "spring-per-wheel: 0.90\n    moves: 45 mm for 50 mm",
        10,
        23,
        4,
        "front spring spring per wheel is given beside moves; it must have one of moves, spring-per-wheel, wheel-per-spring, sweep.",
        "Keep the one")]
    [InlineData(
        "spring-per-wheel: 0.90",
        "spring-per-wheel: 3",
        10,
        23,
        1,
        "front spring spring per wheel is 3; it must be above 0 and at most 2.",
        "which one was divided by which")]
    [InlineData(
        "spring-per-wheel: 0.90",
        "wheel-per-spring: 0.2",
        10,
        23,
        3,
        "front spring wheel per spring is 0.2, a ratio of 5; spring travel per wheel travel must be above 0 and at most 2.",
        "which one was divided by which")]
    [InlineData(
        "spring-per-wheel: 0.90",
        "moves: 45 mm of 50 mm",
        10,
        12,
        14,
        "front spring moves: \"45 mm of 50 mm\" is not two travels.",
        "31 mm for 50 mm at the wheel")]
    [InlineData(
        "spring-per-wheel: 0.90",
        "moves: 45 mm for 50 kg at the wheel",
        10,
        22,
        5,
        "front spring moves: 50 kg is a mass; a length is wanted, e.g. 50 mm.",
        "")]
    [InlineData(
        "spring-per-wheel: 0.90",
        "sweep: [[0 mm, 0 mm], [20 mm, 18 mm], [10 mm, 9 mm]]",
        10,
        5,
        5,
        "front spring sweep does not rise from row 2 to row 3; wheel and spring travel must both rise.",
        "from droop to bump")]
    [InlineData(
        "{wheel-rate: 17 N/mm}",
        "{wheel-rate: 17 N/mm, spring-per-wheel: 0.8}",
        17,
        51,
        3,
        "rear spring spring per wheel is given beside wheel-rate, which is at the wheel already.",
        "Leave spring-per-wheel out")]
    [InlineData(
        "{wheel-rate: 17 N/mm}",
        "{wheel-rate: 17 N/mm, rate: 20 N/mm}",
        17,
        12,
        10,
        "rear spring has rate and wheel-rate; it must have one of rate, wheel-rate, table, coil, leaf, torsion-bar, gas.",
        "Keep the one that was measured.")]
    // Tables.
    [InlineData(
        "[0.3 m/s, 300 N]",
        "[0.3 m/s, 100 N]",
        19,
        40,
        5,
        "rear damper bump item 2 has a force of 100 N; it must be at least the 120 N of the row before.",
        "past the end of the range")]
    [InlineData(
        "[0.3 m/s, 300 N]",
        "[0.1 m/s, 300 N]",
        19,
        31,
        7,
        "rear damper bump item 2 begins with 0.1 m/s; it must be above the 0.1 m/s of the row before.",
        "Sort the rows")]
    [InlineData(
        "[[0.1 m/s, 240 N]",
        "[[-0.1 m/s, -240 N]",
        20,
        16,
        8,
        "rear damper rebound item 1 begins with -0.1 m/s; it must be 0 m/s or above.",
        "for rebound too",
        1)]
    [InlineData("    rebound: [[0.1 m/s, 240 N], [0.3 m/s, 600 N]]\n", "", 18, 3, 6, "rear damper has bump but no rebound.", "Add rebound:")]
    [InlineData(
        "damping-ratio: 0.3",
        "damping-ratio: 400 %",
        11,
        27,
        5,
        "front damper damping ratio is 400 %; it must be between 0 and 300 %.",
        "a per cent needs its sign")]
    [InlineData(
        "wheelbase: 2.50 m",
        "wheelbase: 2000 in",
        2,
        12,
        7,
        "wheelbase is 2000 in; it must be between 19.7 and 393 in.",
        "Measure from wheel centre")]
    [InlineData(
        "damping-ratio: 0.3",
        "damping-ratio: 30",
        11,
        27,
        2,
        "front damper damping ratio is 30; it must be between 0 and 3.",
        "a per cent needs its sign")]
    // Parts that do not belong together.
    [InlineData("  track: 1.45 m\n", "", 5, 1, 5, "front has no track.", "kind: two-wheeler")]
    [InlineData(
        "wheelbase: 2.50 m",
        "wheelbase: 2.50 m\nkind: two-wheeler",
        5,
        1,
        4,
        "body has neither pitch-inertia nor pitch-index, and the index that is taken when both are left out is of cars.",
        "estimate pitch-index",
        2)]
    [InlineData(
        "body: {centre-of-gravity-height: 0.55 m}",
        "kind: two-wheeler\nbody: {centre-of-gravity-height: 0.55 m, pitch-index: 0.8}",
        7,
        10,
        6,
        "front track is given, but a two-wheeler has one wheel at each end.",
        "Leave track out.",
        1)]
    [InlineData(
        "track: 1.45 m",
        "track: 1.45 m\n  suspension: solid-axle",
        7,
        15,
        10,
        "front suspension is solid-axle, but the axle has no axle-inertia.",
        "2·m·y²")]
    [InlineData(
        "track: 1.45 m",
        "track: 1.45 m\n  spring-base: 1 m",
        7,
        16,
        3,
        "front spring base belongs to a solid axle, and this one is independent.",
        "suspension: solid-axle")]
    [InlineData(
        "track: 1.45 m",
        "track: 1.45 m\n  suspension: solid-axle\n  axle-inertia: 40 kg m2\n  spring-base: 1.6 m",
        9,
        16,
        5,
        "front spring base is 1.6 m; it must be above 0 m and at most the track of 1.45 m.",
        "along the axle")]
    [InlineData(
        Bar,
        "  anti-roll-bar: {diameter: 20 mm, arm: 200 mm}\n" + Bar,
        13,
        3,
        13,
        "front anti roll bar has a diameter but no length.",
        "Add length: 900 mm")]
    [InlineData(
        "in: driver}", "in: drivr}", 28, 39, 5, "loads driver item 1 in is \"drivr\", which is no seat of this file.", "Did you mean driver?")]
    [InlineData("in: driver}", "behind-front-axle: 1 m}", 28, 8, 4, "loads driver item 1 has no height.", "Add height: 0.75 m")]
    [InlineData(
        "  driver:\n    -",
        "  empty:\n    -",
        27,
        3,
        5,
        "a load state is called \"empty\", the name of the state without loads.",
        "another name")]
    [InlineData("car: Test car", "caar: Test car", 1, 1, 4, "\"caar\" is not a key of the file.", "Did you mean car?", 1)]
    // Cars that cannot stand.
    [InlineData(
        "mass: 75 kg",
        "mass: 2000 kg",
        27,
        3,
        6,
        "load state is 'driver' with 149 mm of travel at the front left wheel; it must be below the 100 mm at which it bottoms.",
        "cannot carry this load")]
    [InlineData(
        "mass: 75 kg, in: driver",
        "mass: 900 kg, behind-front-axle: 9 m, height: 1 m",
        27,
        3,
        6,
        "load state is 'driver' with -1740 kg on the front and 3740 kg on the rear axle; it must be above 0 kg on each axle.",
        "tip over an axle")]
    [InlineData(
        "rate: 22 N/mm",
        "table: [[0 mm, 0 N], [50 mm, 1000 N], [80 mm, 1000 N]]",
        9,
        5,
        5,
        "spring table is at most 1000 N; it must be able to carry 2888 N.",
        "Measure the spring further")]
    public void A_slip_is_refused_in_its_place_with_limit_and_advice(
        string old, string spoiled, int line, int column, int length, string message, string advice, int others = 0)
    {
        var reading = TextCar.Read(TextCar.With(old, spoiled));
        Assert.Null(reading.Value);
        var refusal = reading.Refusals.FirstOrDefault(r => r.Message == message);
        Assert.True(refusal is not null, reading.Format());
        Assert.Equal(("test.yaml", line, column, length), (refusal.File, refusal.Line, refusal.Column, refusal.Length));
        Assert.Contains(advice, refusal.Advice, StringComparison.Ordinal);
        Assert.True(reading.Refusals.Count == 1 + others, reading.Format());
    }

    [Theory]
    [InlineData(
        "{elastic: {rate: 5 N/mm, front-per-wheel: 0}}",
        1,
        60,
        "interconnection elastic front per wheel is 0; it must be between -2 and 2 and not 0.")]
    [InlineData("{elastic: {rate: 0 N/mm}}", 1, 35, "interconnection elastic rate is 0 and there is no damping.")]
    [InlineData("{elastic: {rate: 5 N/mm, damping: -4 N s/m}}", 1, 52, "interconnection elastic damping is -4 N s/m; it must be 0 N s/m or above.")]
    [InlineData(
        "{fluid: {front-area: 5 cm², rear-area: 4 cm², front: {gas-volume: 0.2 L}, rear: {gas-volume: 0.2 L}, "
        + "pressure: 10 bar, line: {state: pipe}}}",
        1,
        137,
        "interconnection fluid line is a pipe without bore and length.")]
    [InlineData(
        "{fluid: {front-area: 5 cm², rear-area: 4 cm², front: {gas-volume: 0.2 L}, rear: {compliance: 4 cm³/bar}, "
        + "pressure: 10 bar, line: {state: open}}}",
        1,
        19,
        "accumulators is one of gas and one of constant compliance; it must be of one kind for an open line.")]
    [InlineData(
        "{fluid: {front-area: 50 cm², rear-area: 4 cm², front: {gas-volume: 0.2 L}, rear: {gas-volume: 0.2 L}, "
        + "pressure: 90 bar, line: {state: shut}}}",
        9,
        3,
        "front spring is pulled with 47110 N in the reference state; it must be pressed.")]
    public void An_interconnection_that_cannot_be_is_refused(string words, int line, int column, string message)
    {
        var text = "interconnection: " + words + "\n" + TextCar.Sound;
        var reading = TextCar.Read(text);
        var refusal = Assert.Single(reading.Refusals);
        Assert.Equal((line, column, message), (refusal.Line, refusal.Column, refusal.Message));
    }

    [Fact]
    public void Everything_wrong_is_refused_at_once()
    {
        var text = TextCar.With("wheelbase: 2.50 m", "wheelbase: 2.50")
            .Replace("unsprung-mass: 70 kg", "unsprung-mass: 0 kg", StringComparison.Ordinal)
            .Replace("rate: 22 N/mm", "rate: 22 mm", StringComparison.Ordinal)
            .Replace("damper-per-wheel: 0.9", "damper-per-whel: 0.9", StringComparison.Ordinal)
            .Replace("in: driver", "in: cook", StringComparison.Ordinal);
        Assert.Equal(
            [(2, 12), (7, 18), (9, 11), (21, 5), (28, 39)],
            TextCar.Read(text).Refusals.Select(r => (r.Line, r.Column)).ToArray());
    }

    [Fact]
    public void A_refusal_is_shown_with_its_line_marked() => Assert.Equal(
        """
        test.yaml:9:11: refused: front spring rate is -22 N/mm; it must be above 0 N/mm.
         9 |     rate: -22 N/mm
           |           ^^^^^^^^
           = Give the rate of one spring as a positive number.
        """.ReplaceLineEndings("\n"),
        TextCar.Read(TextCar.With("rate: 22 N/mm", "rate: -22 N/mm")).Format());
}
