using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Causes;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Planning;
using Heaveline.Measures;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

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
        + "A cause's part of a change: the second "
        + "loading less the same with the cause set back to its value under the first; with less than half of the change there is no test. Brackets: "
        + "95 of 100 tests, from the stated doubts and the scatter of the means. Passes: 2·(1.96 + 0.84)²·s²/Δ² with each loading, at least "
        + FormattableString.Invariant($"{PlannedTest.FewestPasses}; s is by what one pass scatters, over an obstacle as 'plan' reckons it on a road ")
        + FormattableString.Invariant($"of class B, along a road without one {In.Percent.Of(PlannedTest.RelativeScatter):F0} % and ")
        + FormattableString.Invariant($"{In.Degrees.Of(PlannedTest.LeastScatter):0.##}° together ")
        + "(margins, speeds and scatter: common practice, no source). Tie loads down and keep within the axle loads.");

    /// <summary>A test in words; where there is none, why, and what to do instead.</summary>
    /// <param name="why">The causes with their tests.</param>
    /// <param name="kind">The cause.</param>
    public static string Of(Why why, PitchCauseKind kind) =>
        why.Tests.FirstOrDefault(t => t.Kind == kind) is { } test ? Of(test, why)
        : why.Untested.FirstOrDefault(t => t.Kind == kind) is { } none ? $"No road test: {Reason(none, why)}"
        : $"No road test: {Instead(kind)}";

    private static string Of(PlannedTest test, Why why)
    {
        var (expected, name) = (test.Expected, test.Measure.Name);
        var whole = $"from {Shown(test, test.Before)} to {Shown(test, test.After)}: {Signed(test, test.Change)} "
            + $"({Signed(test, expected.Low)} to {Signed(test, expected.High)}).";
        var others = test.Moved.Where(m => m.Kind != test.Kind && Value(m.First) != Value(m.Second)).Select(m => Moves(m, test)).ToList();
        var also = others.Count == 0 ? "" : $" Also changed: {string.Join("; ", others)}.";
        return $"Test: at {Speed(test.Speed)} over {why.Road.CaptionFor(why.Model.Rolls)}: first {test.First.Name}, then {test.Second.Name}. "
            + (test.Kind == PitchCauseKind.Load
                ? $"The {name} goes {whole}{also} {Passes(test)} show it."
                : $"The {Changes(test)} makes {Signed(test, test.Part)} of the change of the {name}, {whole}{also} "
                    + $"{Passes(test)} show {SmallerOf(test)}.{OtherWay(test, why)}")
            + (expected.Holds(0.0) ? " Within the doubts they may show nothing." : "");
    }

    private static string Reason(NoTest none, Why why)
    {
        string[] speeds = [Speed(Math.Min(TestPlan.Slowest, TestPlan.Fastest(why.Road, why.Speed))), Speed(TestPlan.Fastest(why.Road, why.Speed))];
        var at = speeds[0] == speeds[1] ? $"at {speeds[0]} it does not stay" : $"at no speed from {speeds[0]} to {speeds[1]} does it stay";
        var (obstacle, lower) = why.Road.Event is null
            ? ("along this road", "Take a smoother road.")
            : ("over this obstacle", "Take a lower obstacle.");
        var measured = Measured(none.Kind, why) is { } way ? $" {FirstLetter.Raised(way)}." : "";
        return none.Reason switch
        {
            NoTestReason.NoDriver => "the load names no driver or rider, and nobody can drive an empty vehicle. Name one in the car file.",
            NoTestReason.NoPlace => $"there is no seat for the load.{measured}",
            NoTestReason.CannotStand => $"it cannot stand under the loads.{measured}",
            NoTestReason.StandsAtStop => "under such loads it stands less than "
                + FormattableString.Invariant(
                    $"{In.Millimetres.Of(TestPlan.StopMargin):F0} mm from a stop or off the ground before it moves.{measured}"),
            NoTestReason.NoSafeSpeed =>
                $"{at} on the ground and {In.Millimetres.Of(TestPlan.StopMargin):F0} mm off its stops {obstacle} under both loads. {lower}",
            NoTestReason.NotParted => $"what it makes of a change under load cannot be computed apart from the rest.{measured}",
            NoTestReason.OthersMore
                when none.Nearest is { } test && test.Moved.Where(m => m.Kind != none.Kind).MaxBy(m => Math.Abs(m.Part)) is { } most =>
                $"the load changes the {Name(most.Kind)} more. At {Speed(test.Speed)}, first {test.First.Name}, then {test.Second.Name}: of "
                + $"{Signed(test, test.Change)} the {Changes(test)} makes {Signed(test, test.Part)}, the {Moves(most, test)}.{measured}",
            _ when none.Nearest is { } test => test.Kind == PitchCauseKind.Load
                ? $"at {Speed(test.Speed)} it makes {Signed(test, test.Change)}; more than "
                    + $"{PlannedTest.MostPasses} passes with each loading would show it."
                : IsNothing(Signed(test, test.Part))
                    ? $"no load tried changes it.{measured}"
                    : $"no load tried changes it enough: {Values(test)} at {Speed(test.Speed)} makes {Signed(test, test.Part)}, "
                        + $"{TooLittle(test)}.{measured}",
            _ => throw new InvalidOperationException($"{none.Reason} without its loadings."),
        };
    }

    private static string TooLittle(PlannedTest test) => test.IsWorthDriving
        ? "less than half of the change"
        : (Math.Abs(test.Change) < Math.Abs(test.Part) ? $"but with what else the load moves only {Signed(test, test.Change)}, " : "")
            + FormattableString.Invariant($"which only more than {PlannedTest.MostPasses} passes with each loading show");

    // Printed as zero.
    private static bool IsNothing(string printed) => !printed.Any(c => c is >= '1' and <= '9');

    // What a load moves the other way at this speed than the ranking holds it against the neutral value.
    private static string OtherWay(PlannedTest test, Why why)
    {
        var (cause, moved) = (why.Settling.Causes.Single(c => c.Kind == test.Kind), test.Moved.Single(m => m.Kind == test.Kind));
        return cause.Share * cause.Beyond * test.Part * (moved.Second - moved.First) < 0.0
            ? $" Here it works the other way than in the pass at {Speed(why.Speed)}."
            : "";
    }

    private static string Changes(PlannedTest test) => $"{Name(test.Kind)} ({Values(test)})";

    private static string Moves(MovedCause m, PlannedTest test) => $"{Name(m.Kind)} ({Value(m.First)} to {Value(m.Second)})"
        + (double.IsNaN(m.Part) ? "" : $" {Signed(test, m.Part)}");

    private static string Values(PlannedTest test)
    {
        var moved = test.Moved.Single(m => m.Kind == test.Kind);
        return $"{Value(moved.First)} to {Value(moved.Second)}";
    }

    private static string Value(double value) => FormattableString.Invariant($"{value:F3}");

    private static string SmallerOf(PlannedTest test) =>
        Math.Abs(test.Part) <= Math.Abs(test.Change) ? "a change as large as its part" : "the change";

    private static string Passes(PlannedTest test) => FormattableString.Invariant($"{test.Passes} passes with each loading")
        + (test.OwnScatter is { } own ? FormattableString.Invariant($" (one scatters by {In.Percent.Of(own):F0} %)") : "");

    private static string Speed(double speed) => FormattableString.Invariant($"{In.KilometresPerHour.Of(speed):0.#} km/h");

    private static string Shown(PlannedTest test, double si) => $"{test.Measure.Print(test.Measure.Unit.Of(si))}{test.Measure.Unit.Suffix}";

    private static string Signed(PlannedTest test, double si) => (test.Measure.Unit.Of(si) > 0.0 ? "+" : "") + Shown(test, si);

    private static string Name(PitchCauseKind kind) => kind switch
    {
        PitchCauseKind.FrequencyRatio => AxleCatalogue.FrequencyRatio.Name,
        PitchCauseKind.DynamicIndex => "dynamic index",
        PitchCauseKind.DampingLevel => "mean damping ratio",
        _ => "rear/front ratio of the damping ratios",
    };

    // A drive is advised where plan's passes would halve what the file leaves open of one of the numbers.
    private static string? Measured(PitchCauseKind kind, Why why)
    {
        (string Way, (string Name, CarNumber Number)[] Sought) measured = kind switch
        {
            PitchCauseKind.FrequencyRatio => ("measure the wheel rates of both ends", [("frequency ratio", CarNumber.FrequencyRatio)]),
            PitchCauseKind.DynamicIndex => ("measure the pitch inertia", [("dynamic index", CarNumber.PitchIndex)]),
            PitchCauseKind.DampingLevel or PitchCauseKind.DampingSplit => (
                "have the dampers measured",
                [(AxleCatalogue.Damping(AxleEnd.Front).Name, CarNumber.FrontDamping), ("rear one", CarNumber.RearDamping)]),
            _ => ("", []),
        };
        var (garage, sought) = measured;
        if (garage.Length == 0)
        {
            return null;
        }

        if (why.Drive is not { } drive)
        {
            return garage;
        }

        var driven = LoadedCar.Of(why.Model.Car, NeutralLoad.Of(why.Model.Car, why.Model.Load));
        var left = sought.ToDictionary(s => s.Number, s => FileDoubt.Of(driven, s.Number));
        string Known((string Name, CarNumber Number) s) =>
            FormattableString.Invariant($"the {s.Name} to ± {In.Percent.Of(drive.HalfWidths[s.Number]):F1} % ")
            + FormattableString.Invariant($"(± {In.Percent.Of(left[s.Number].HalfWidth):F1} % ")
            + (left[s.Number].Silent.IsEmpty ? "by the car file)" : $"with {left[s.Number].Taken}, of which the car file states no doubt; ")
            + (left[s.Number].Silent.IsEmpty ? "" : Text($"± {In.Percent.Of(left[s.Number].Stated):F1} % by those that it states)"));
        return !sought.Any(s => drive.HalfWidthsAtMost[s.Number] <= 0.5 * left[s.Number].HalfWidth) ? garage
            : FormattableString.Invariant($"{garage}, or drive with {Aboard(driven)}: {TestDrive.Passes} passes over {Hump(drive)} at ")
                + $"{string.Join(", ", drive.Speeds.SkipLast(1).Select(Speed))} and {Speed(drive.Speeds[^1])} with a phone on the floor tell "
                + $"{string.Join(" and ", sought.Select(Known))}, nine times of ten ('heaveline plan' for that load)";
    }

    // "driver alone"; the load of a file by its name.
    private static string Aboard(LoadedCar driven) => driven.Load.Loads.Count == 0 ? "nobody but the driver" : driven.Load.Name;

    private static string Hump(TestDrive drive) => TestHump.OfBoards.Contains(drive.Hump) ? drive.Hump.Road.Caption : drive.Hump.Name;

    private static string Instead(PitchCauseKind kind) => kind switch
    {
        PitchCauseKind.Interconnection => "no load changes it; a bench tells what it carries.",
        PitchCauseKind.Wheelbase => "no load changes it; a tape tells.",
        PitchCauseKind.Tyre => "none is planned for it; weigh a wheel while its tyre is pressed.",
        PitchCauseKind.Friction => "no load changes it; read the height after pushing the body down and after lifting it.",
        PitchCauseKind.Stops => "none is planned to find out about the stops, since it would press them. At rest, measure the gap to each stop.",
        _ => "none has been planned.",
    };
}
