using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Tests.Files;

namespace Heaveline.Tests.Cli;

public class WorksheetTests
{
    private static readonly string[] Weigh =
    [
        "worksheet",
        "weigh",
        "--round",
        "381 kg ± 1, 362 kg ± 1, 311 kg ± 1, 306 kg ± 1",
        "--turned",
        "379 kg, 364 kg, 313 kg, 304 kg",
        "--wheelbase",
        "2.50 m",
        "--track",
        "1.45 m, 1.44 m",
    ];

    [Fact]
    public void Weighing_prints_the_centre_and_lines_that_a_car_file_takes()
    {
        var said = Spoken.Of(Weigh);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Contains("turning the car", said.Results, StringComparison.OrdinalIgnoreCase);
        var json = new AnswerJson(Spoken.Of([.. Weigh, "--json"]));
        Assert.Equal(1360.0, json.Value("total"), 1e-9);
        Assert.Equal(2500.0 * 617.0 / 1360.0, json.Value("behind-front-axle"), 1e-9);
        Assert.Equal(1.0, json.Value("front-left", column: 1), 1e-9);
        Assert.Equal(380.0, Pasted(json, "weighing: {front: 600 kg ± 2 kg, rear: 500 kg ± 2 kg}", 0).Weighing.FrontLeft.Si, 1e-9);
    }

    [Fact]
    public void A_tilt_test_prints_its_budget_and_the_bodys_height()
    {
        var json = new AnswerJson(Spoken.Of(
            "worksheet", "tilt", "--total", "1200 kg", "--level", "600 kg ± 1", "--lifted", "621.16 kg ± 1", "--angle", "10° ± 0.3°", "--wheelbase",
            "2.50 m", "--radius", "0.31 m, 0.31 m", "--unsprung", "150 kg ± 10", "--json"));
        Assert.Equal(250.0, json.Value("above-axle-line"), 0.1);
        Assert.Equal(18.4, json.Value("above-axle-line", column: 1), 0.2);
        Assert.Equal(11.8, json.Value("part-lifted-reading"), 0.05);
        Assert.Equal(7.7, json.Value("part-angle"), 0.1);
        Assert.Equal(0.596, Pasted(json, "body: {centre-of-gravity-height: 0.55 m}", 0).Body.CentreHeight.Si, 0.001);
    }

    [Fact]
    public void A_spring_on_a_scale_prints_its_rate_with_doubt()
    {
        string[] spring =
        [
            "worksheet",
            "spring",
            "--pair",
            "310 mm, 480 N",
            "--pair",
            "290 mm, 905 N",
            "--pair",
            "270 mm, 1310 N",
            "--pair",
            "250 mm, 1735 N",
            "--at",
            "260 mm",
        ];
        var json = new AnswerJson(Spoken.Of([.. spring, "--json"]));
        // Least squares by hand: Σ(x − x̄)(F − F̄)/Σ(x − x̄)², x 0…60 mm.
        Assert.Equal(((-30.0 * 480.0) + (-10.0 * 905.0) + (10.0 * 1310.0) + (30.0 * 1735.0)) / 2000.0, json.Value("rate"), 1e-9);
        Assert.True(json.Value("rate", column: 1) > 0.0);
        Assert.Contains("rate: 20.8", json.Root["car-file"]![1]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Contains("rate there", Spoken.Of(spring).Results, StringComparison.Ordinal);
    }

    [Fact]
    public void A_scales_kilograms_are_taken_for_the_force_they_show()
    {
        string[] Pairs(double factor, string unit) =>
            [.. new[] { 300, 280, 260 }.SelectMany(l => new[] { "--pair", FormattableString.Invariant($"{l} mm, {(340 - l) * factor} {unit}") })];
        var inNewton = new AnswerJson(Spoken.Of(["worksheet", "spring", .. Pairs(19.6133, "N"), "--json"]));
        var inKilograms = new AnswerJson(Spoken.Of(["worksheet", "spring", .. Pairs(2.0, "kg"), "--json"]));
        Assert.Equal(inNewton.Value("rate"), inKilograms.Value("rate"), 1e-9);
        Assert.Equal(19.6133, inKilograms.Value("rate"), 1e-9);
    }

    [Fact]
    public void A_bounce_at_4_hertz_is_called_a_locked_suspension()
    {
        var said = Spoken.Of("worksheet", "bounce", "--swings", "10", "--time", "2.6 s", "--mass", "1330 kg", "--tyres", "800 N/mm");
        Assert.Equal(0, said.Code);
        Assert.Contains("3.90", said.Results, StringComparison.Ordinal);
        Assert.Contains("friction locks the suspension", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sweep_prints_a_ratio_that_a_car_file_takes()
    {
        string[] stops =
        [
            "--stop",
            "-40 mm, -24.3 mm",
            "--stop",
            "-20 mm, -12.2 mm",
            "--stop",
            "0 mm, 0 mm",
            "--stop",
            "20 mm, 12.5 mm",
            "--stop",
            "40 mm, 25.3 mm",
        ];
        var json = new AnswerJson(Spoken.Of(["worksheet", "ratio", .. stops, "--json"]));
        Assert.Equal(json.Value("ratio"), Pasted(json, "spring-per-wheel: 0.90", 4).Front.Spring.MotionRatio.AtReference.Si, 1e-9);
        Assert.InRange(json.Value("ratio"), 0.60, 0.64);
    }

    [Fact]
    public void A_wheel_on_a_jack_prints_lines_that_a_car_file_takes()
    {
        string[] Stops(string way, double side) =>
        [
            .. new[] { 440, 420, 400, 380, 360, 340, 320, 300 }.SelectMany(gap => new[]
            {
                way,
                FormattableString.Invariant($"{gap} mm, {(3200 + (22.5 * (380 - gap)) + side + (60 * Math.Max(0, 328 - gap))) / 9.80665:F1} kg"),
            }),
        ];
        string[] line = ["worksheet", "wheel-rate", .. Stops("--up", 55.0), .. Stops("--down", -55.0), "--rest", "380 mm"];
        var json = new AnswerJson(Spoken.Of([.. line, "--json"]));
        Assert.Equal(22.5, json.Value("rate"), 0.1);
        Assert.True(json.Value("rate", column: 1) > 0.0);
        Assert.Equal(55.0, json.Value("friction"), 1.0);
        Assert.Equal(52.0, json.Value("bump-clearance"), 0.5);
        var said = Spoken.Of(line);
        Assert.Contains("stores enough to kill", said.Results, StringComparison.Ordinal);
        Assert.Contains("spring: {wheel-rate: 22.", said.Results, StringComparison.Ordinal);
        var lines = json.Root["car-file"]!.AsArray().Select(l => l!.GetValue<string>()).ToList();
        var text = TextCar.With("spring: {wheel-rate: 17 N/mm}", lines[0] + "\n  " + lines[1])
            .Replace("bump-stop: {clearance: 70 mm, rate: 50 N/mm, solid-after: 40 mm}", lines[2], StringComparison.Ordinal);
        var reading = CarFile.Read(new SourceText("pasted.yaml", text));
        Assert.True(reading.Value is not null, reading.Format());
        Assert.Equal(55.0, reading.Value.Rear.Friction.HalfWidth.Si, 1.0);
        Assert.Equal(0.052, reading.Value.Rear.BumpStop!.Clearance.Si, 5e-4);
    }

    [Theory]
    [InlineData("worksheet spring --pair \"310 mm, 480 N\" --pair \"290 mm\" --pair \"270 mm, 9 N\"", 2, "it must have 2")]
    [InlineData("worksheet spring --pair \"310 mm, 480\" --pair \"290 mm, 1 N\" --pair \"270 mm, 9 N\"", 2, "no unit")]
    [InlineData("worksheet spring --pair \"310 mm, 480 N\" --pair \"290 mm, 900 N\"", 1, "three or more")]
    [InlineData("worksheet weigh --wheelbase \"2.7 m\" --track \"1.5 m, 1.5 m\"", 2, "round must be given")]
    [InlineData("worksheet bounce --swings 5", 2, "--time")]
    public void What_is_wrong_is_said_with_its_code(string line, int code, string words)
    {
        var said = Spoken.Typed(line);
        Assert.Equal(code, said.Code);
        Assert.Contains(words, said.Remarks, StringComparison.Ordinal);
    }

    // The car that results when the lines are pasted over a part of a sound file, indented.
    private static Heaveline.Cars.Car Pasted(AnswerJson json, string over, int indent)
    {
        var lines = json.Root["car-file"]!.AsArray().Select(l => l!.GetValue<string>()).ToList();
        var reading = CarFile.Read(new SourceText("pasted.yaml", TextCar.With(over, string.Join("\n" + new string(' ', indent), lines))));
        Assert.True(reading.Value is not null, reading.Format());
        return reading.Value!;
    }

    // What was typed, in its unit, and limits in that unit: 0.02 rad are 1.146°, 1 rad 57.296°, 600 s are 10 min.
    [Theory]
    [InlineData(
        "tilt --total \"1360 kg\" --level \"618 kg\" --lifted \"647 kg\" --angle \"120° ± 1\" --wheelbase \"2.7 m\" --radius \"0.3 m, 0.3 m\"",
        "angle is 120° ± 1; it must be between 1.15 and 57.2°.")]
    [InlineData("bounce --swings 5 --time \"39 min\"", "time is 39 min; it must be between 0.00167 and 10 min.")]
    [InlineData(
        "weigh --round \"381 kg, 362 kg, 311 kg, 306 kg\" --wheelbase \"0 mm ± 1\" --track \"1.5 m, 1.5 m\"",
        "wheelbase is 0 mm ± 1; it must be above 0 mm.")]
    [InlineData("weigh --wheelbase \"2.7 m\" --track \"1.5 m, 1.5 m\"", "round must be given: One round of readings")]
    [InlineData(
        "spring --pair \"310 mm, 480 N\" --pair \"310 mm, 490 N\" --pair \"310 mm, 500 N\"",
        "the number of different lengths is 1; it must be three or more, each with its force.")]
    [InlineData(
        "spring --pair \"310 mm, 500 N\" --pair \"290 mm, 300 N\" --pair \"270 mm, 100 N\"", "spring rate is −10.0 N/mm; it must be above 0 N/mm.")]
    [InlineData("ratio --stop \"0 mm, 0 mm\" --stop \"20 mm, -12.25 mm\" --stop \"40 mm, -24.5 mm\"", "motion ratio is -0.6125; it must be")]
    [InlineData("spring --pair \"310 mm\" --pair \"290 mm, 300 N\" --pair \"270 mm, 100 N\"", "it has 1 value; it must have 2.")]
    public void A_refusal_quotes_what_was_typed(string line, string words)
    {
        var said = Spoken.Typed("worksheet " + line);
        Assert.NotEqual(0, said.Code);
        Assert.Contains(words, said.Remarks, StringComparison.Ordinal);
    }

    // By hand: 335 mm − 480 N/20.85 N/mm and what the fit leaves open.
    [Fact]
    public void A_length_past_the_free_one_is_refused_by_its_name()
    {
        string Line(string at) =>
            $"worksheet spring --pair \"310 mm, 480 N\" --pair \"290 mm, 905 N\" --pair \"270 mm, 1310 N\" --pair \"250 mm, 1735 N\" --at \"{at}\"";
        var said = Spoken.Typed(Line("900 mm"));
        Assert.Equal(1, said.Code);
        Assert.Contains(
            "the length asked for (--at) is 900 mm; it must be above 0 and at most the free length, 33", said.Remarks, StringComparison.Ordinal);
        Assert.Equal(1, Spoken.Typed(Line("-10 mm")).Code);
        Assert.Equal(0, Spoken.Typed(Line("330 mm")).Code);
    }

    // A ratio of 2 exactly lies inside its limit, however the fit rounds.
    [Fact]
    public void A_ratio_of_2_is_allowed() => Assert.Equal(
        0, Spoken.Typed("worksheet ratio --stop \"0 mm, 0 mm\" --stop \"20 mm, 40 mm\" --stop \"40 mm, 80 mm\"").Code);
}
