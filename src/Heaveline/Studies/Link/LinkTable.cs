using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>An interconnection on the bench as tables.</summary>
public static class LinkTable
{
    private const string Page = "guide/interconnection.md";

    private static readonly Measure<BenchState> AtFrequency = State(
        "at-frequency", "frequency at which this holds", In.Hertz, 3, s => s.Frequency, "Frequency for which stiffness and damping are said.");

    private static readonly Measure<BenchState>[] Stated =
    [
        State(
            "heave-rate", "heave stiffness", In.NewtonsPerMillimetre, 2, s => s.Stiffness.Heave, "Force per heave of the body on springs and link."),
        State(
            "pitch-rate",
            "pitch stiffness",
            In.NewtonMetresPerDegree,
            0,
            s => s.Stiffness.Pitch,
            "Moment per pitch of the body on springs and link."),
        State("bench-roll-rate", "roll stiffness", In.NewtonMetresPerDegree, 0, s => s.Stiffness.Roll,
            "Moment per roll of the body on springs, bars and link, on rigid tyres."),
        State(
            "warp-rate",
            "warp stiffness",
            In.NewtonsPerMillimetre,
            2,
            s => s.Stiffness.Warp,
            "Forces of all four wheels, two up and two down, diagonal against diagonal, per their travel, on springs, bars and link."),
        State("heave-damping", "heave damping", In.NewtonSecondsPerMetre, 0, s => s.Damping.Heave, "Force per velocity of the heaving body."),
        State("pitch-damping", "pitch damping", In.NewtonMetreSeconds, 0, s => s.Damping.Pitch, "Moment per rate of the pitching body."),
        AtFrequency,
        State("braking-pitch", "pitch in braking at 0.5 g", In.Degrees, 2, s => s.BrakingPitch, "Nose-down pitch in steady braking at half a g."),
    ];

    private static readonly Measure<(LineBench Line, bool Rear)>[] Piped =
    [
        Pipe("felt-mass", "mass of the fluid felt at the wheel", In.Kilograms, 0, (l, rear) => rear ? l.RearMass : l.FrontMass,
            "Inertance of the line times the square of the end's area."),
        Pipe("felt-resistance", "resistance felt at the wheel", In.NewtonSecondsPerMetre, 0, (l, rear) => rear ? l.RearResistance : l.FrontResistance,
            "Laminar resistance of the line times the square of the end's area."),
        Pipe("line-frequency", "natural frequency of the fluid", In.Hertz, 2, (l, _) => l.NaturalFrequency,
            "Frequency at which the fluid swings between the compliances of both ends."),
        Pipe("line-damping", "its damping ratio", In.Plain, 3, (l, _) => l.DampingRatio, "Damping ratio of that swing by the pipe's resistance.") with
        {
            Name = "damping ratio of the fluid",
        },
        Pipe("line-corner", "the link stiffens above", In.Hertz, 2, (l, _) => l.CornerFrequency,
            "Frequency above which less than 1/√2 of the slow flow passes."),
        Pipe("line-womersley", "Womersley number at the pitch frequency", In.Plain, 1, (l, _) => l.Womersley,
            "Radius of the pipe times √(ω/ν) of the fluid."),
        Pipe("line-swinging-resistance", "resistance as it swings, times as counted", In.Plain, 2, (l, _) => l.SwingingResistance,
            "What laminar flow that swings so fast makes of the resistance."),
        Pipe("line-swinging-mass", "mass as it swings, times as counted", In.Plain, 2, (l, _) => l.SwingingMass,
            "What laminar flow that swings so fast makes of the fluid's mass."),
    ];

    private static readonly Measure<PipeFlow>[] Flowing =
    [
        Flow(
            "flow-velocity",
            "greatest velocity in the pipe",
            In.MetresPerSecond,
            2,
            f => f.PeakVelocity,
            "Mean velocity over the bore at its greatest."),
        Flow("flow-reynolds", "Reynolds number there", In.Plain, 0, f => f.Reynolds, "Reynolds number at the greatest velocity."),
        Flow(
            "flow-turbulent",
            "turbulent in the first 1.5 s",
            In.Percent,
            0,
            f => f.TurbulentShare,
            "Part of that time with a Reynolds number above the critical one."),
        Flow("flow-counted", "pipe's force at a front wheel, as counted", In.Newtons, 1, f => f.FrontForce / f.LossRatio,
            "Loss of the laminar pipe at the greatest velocity, as a force at a front wheel."),
        Flow("flow-smooth", "the same by the friction of a smooth pipe", In.Newtons, 1, f => f.FrontForce,
            "Loss of a smooth pipe at the greatest velocity, turbulent where it is, as a force at a front wheel.") with
        {
            Name = "pipe's force at a front wheel, by the friction of a smooth pipe",
        },
    ];

    /// <summary>All that the tables hold, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. Stated, .. Piped, .. Flowing];

    /// <summary>Stiffness and damping without the link and with it, a column a state.</summary>
    public static FactTable States(InterconnectionBench bench)
    {
        ArgumentNullException.ThrowIfNull(bench);
        IReadOnlyList<BenchState> states = [.. bench.States, .. bench.Separate is { } separate ? new[] { separate } : []];
        // A spring is the same at every frequency, and a two-wheeler has no roll and no warp on its springs.
        return new FactTable("Interconnection", [.. states.Select(s => s.Name)])
            .Add(
                Stated.Where(m => bench.Line is not null || m != AtFrequency)
                    .Where(m => m.Key is not ("bench-roll-rate" or "warp-rate") || states.Any(s => m.Of(s) != 0.0)),
                states);
    }

    /// <summary>What the pipe does to the wheels of either end.</summary>
    public static FactTable Line(LineBench line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return new FactTable("Line", ["front", "rear"]).Add(Piped, [(line, false), (line, true)]);
    }

    /// <summary>A crossing a column: pitch with the link and with separate springs as stiff in heave, and the flow in the pipe.</summary>
    /// <param name="hump">The obstacle in words.</param>
    /// <param name="crossings">The crossings.</param>
    public static FactTable Hump(string hump, IReadOnlyList<LinkCrossing> crossings)
    {
        ArgumentNullException.ThrowIfNull(crossings);
        var table = new FactTable($"Over the {hump}", [.. crossings.Select(c => $"{c.SpeedWords} km/h")]);
        foreach (var measure in new[] { SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration })
        {
            foreach (var (key, what, of) in new (string, string, Func<LinkCrossing, Pass?>)[]
            {
                ("with", "with the link", c => c.IsPipeCounted ? c.With : null), ("separate", "separate springs", c => c.Separate),
            })
            {
                table.Add(
                    $"{measure.Key}-{key}",
                    $"{measure.Label}, {what}",
                    measure.Unit.Symbol,
                    measure.Format,
                    crossings.Select(c => LinkCrossing.Of(measure, of(c)) is { } si ? measure.Shown(si) : null));
            }
        }

        foreach (var measure in Flowing)
        {
            table.Add(measure, crossings.Select(c => c.Flow is { } flow ? measure.Of(flow) : double.NaN));
        }

        return table;
    }

    private static Measure<BenchState> State(string key, string label, ShownUnit unit, int digits, Func<BenchState, double> of, string says) =>
        new(key, label, unit, digits, of, says) { Page = Page };

    private static Measure<(LineBench Line, bool Rear)> Pipe(
        string key, string label, ShownUnit unit, int digits, Func<LineBench, bool, double> of, string says) =>
        new(key, label, unit, digits, end => of(end.Line, end.Rear), says) { Page = Page };

    private static Measure<PipeFlow> Flow(string key, string label, ShownUnit unit, int digits, Func<PipeFlow, double> of, string says) =>
        new(key, label, unit, digits, of, says) { Page = Page };
}
