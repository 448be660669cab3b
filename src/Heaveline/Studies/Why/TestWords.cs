using Heaveline.Answers;
using Heaveline.Causes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Planned road tests in words.</summary>
internal static class TestWords
{
    /// <summary>What the numbers of every test rest on.</summary>
    public static Sentence Assumed { get; } = new(
        "tests",
        "Tests are planned at the fastest speed at which every wheel stays on the ground and "
        + FormattableString.Invariant($"{In.Millimetres.Of(TestPlan.StopMargin):F0} mm off its stops, at most ")
        + FormattableString.Invariant($"{In.KilometresPerHour.Of(TestPlan.FastestOverObstacle):F0} km/h over an obstacle, never faster than asked. ")
        + "Brackets: 95 of 100 tests, from the car's doubts and the scatter of the means. Passes: 2·(1.96 + 0.84)²·s²/Δ² with each loading, at least "
        + FormattableString.Invariant($"{PlannedTest.FewestPasses}; one pass is taken to scatter by ")
        + FormattableString.Invariant($"{In.Percent.Of(PlannedTest.RelativeScatter):F0} % and ")
        + FormattableString.Invariant($"{In.Degrees.Of(PlannedTest.LeastScatter):0.##}°, together s ")
        + "(margins, speeds and scatter: common practice, no source). Tie loads down and keep within the axle loads.");

    /// <summary>A test in words; what to do instead where there is none.</summary>
    /// <param name="why">The causes with their tests.</param>
    /// <param name="kind">The cause.</param>
    public static string Of(Why why, PitchCauseKind kind) => why.Tests.FirstOrDefault(t => t.Kind == kind) is { } test
        ? Of(test, why.Road.CaptionFor(why.Model.Rolls))
        : $"No road test: {Instead(kind, NeutralLoad.Of(why.Model.Car, why.Model.Load).Loads.Count > 0)}";

    private static string Of(PlannedTest test, string obstacle)
    {
        var (measure, unit) = (test.Measure, test.Measure.Unit);
        string Shown(double si) => $"{measure.Print(unit.Of(si))}{unit.Suffix}";
        string Signed(double si) => (unit.Of(si) > 0.0 ? "+" : "") + Shown(si);
        var (expected, ratio) = (test.Expected, test.Ratio);
        var drive = FormattableString.Invariant(
            $"Test: at {In.KilometresPerHour.Of(test.Speed):0.#} km/h over {obstacle}: first {test.First.Name}, then {test.Second.Name}. ")
            + FormattableString.Invariant($"The rear/front frequency ratio goes from {ratio.First:F3} to {ratio.Second:F3}, and the {measure.Name} ")
            + $"from {Shown(test.Before)} to {Shown(test.After)}: {Signed(test.Change)} ({Signed(expected.Low)} to {Signed(expected.High)}). ";
        return drive + (test.IsWorthDriving
            ? FormattableString.Invariant($"{test.Passes} passes with each loading show it.")
                + (expected.Holds(0.0) ? " Within the doubts they may show nothing." : "")
            : FormattableString.Invariant($"It would take more than {PlannedTest.MostPasses} passes with each loading: not worth driving."));
    }

    private static string Instead(PitchCauseKind kind, bool hasDriver) => kind switch
    {
        PitchCauseKind.Load or PitchCauseKind.FrequencyRatio when !hasDriver =>
            "the load names no driver or rider, and nobody can drive an empty car. Name one in the car file.",
        PitchCauseKind.Load or PitchCauseKind.FrequencyRatio => "at no speed from 10 km/h up does it stay on the ground and off its stops over "
            + "this obstacle under both loads, or there is no place for the load. Take a lower obstacle.",
        PitchCauseKind.Interconnection => "no load changes it; a bench tells what it carries.",
        PitchCauseKind.Wheelbase => "no load changes it; a tape tells.",
        PitchCauseKind.DynamicIndex => "no load that fits into the car changes it enough; measure the pitch inertia.",
        PitchCauseKind.DampingLevel or PitchCauseKind.DampingSplit => "no load changes it enough; have the dampers measured.",
        PitchCauseKind.Tyre => "no load changes it enough; weigh a wheel while its tyre is pressed.",
        PitchCauseKind.Friction => "no load changes it; read the height after pushing the body down and after lifting it.",
        _ => "none is safe that presses the stops. At rest, measure the gap to each stop.",
    };
}
