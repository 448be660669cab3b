using Heaveline.Answers;
using Heaveline.Drives.Planning;
using Heaveline.Modes;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>Rows of planks in words.</summary>
internal sealed class PlankWords(PlankAnswer answer)
{
    /// <summary>What was asked of the passes.</summary>
    public static IReadOnlyList<string> Limits { get; } =
    [
        Text($"Proposed is only what the car of the file bears at the speed and 5 % beside it: ")
        + Text($"every tyre keeps {In.Percent.Of(PlankWish.LeastLoad):F0} % ")
            + Text($"of its load at rest, every wheel stays {In.Millimetres.Of(SafePass.StopMargin):F0} mm off its stops; no row is higher than ")
            + Text($"{In.Millimetres.Of(PlankWish.MostHeight):F0} mm, no speed above {In.KilometresPerHour.Of(PlankWish.Fastest):F0} km/h ")
            + "(limits: common practice, no source). What hangs under the car is not in the file: look that it clears the boards.",
    ];

    /// <summary>What must stand below a row of planks.</summary>
    public static IReadOnlyList<string> Safety { get; } =
    [
        "A loose board flies: screw the boards of each track together, heads sunk, and strap or peg each track to the ground at both ends, with a "
        + "mat beneath that does not slide.",
        "Never over a raw edge, which cuts a tyre: bevel, wedge and sand every edge as stated. Drive square to the planks, "
        + "so that an axle meets them at once.",
        "Off the public road, on level ground, with nobody ahead of, beside or behind the planks; a spotter who sees all of it can stop the drive. "
        + "Roll over them at walking speed first and look at tyres, boards and clearance; never faster than stated, no braking on the planks.",
    ];

    /// <summary>"the front end swings at 1.13 Hz about …; the rear end swings at …".</summary>
    public string Modes => $"{BodySwings.Clause(answer.Modes.First)}; {BodySwings.Clause(answer.Modes.Second)}";

    /// <summary>How the numbers are meant.</summary>
    public IReadOnlyList<Sentence> Notes =>
    [
        new(
            "share",
            "Share: of the body's energy of motion, heave and pitch, in the first second after the rear wheels have left. It is looked for at 15 to "
            + "30 km/h, in rows of one to four places."),
    ];

    /// <summary>What a goal is called: "front end swings", "pitch alone".</summary>
    public string Name(PlankGoal goal) => goal == PlankGoal.Pitch ? "pitch alone" : BodySwings.Name(Mode(goal).Swing);

    /// <summary>What a row that is proposed excites: "mostly pitch" where it leaves less than pitch alone.</summary>
    public string Name(PlankFind find) =>
        find.Goal == PlankGoal.Pitch && Math.Min(find.LeastShare, find.LinearShare) < PlankAnswer.Alone ? "mostly pitch" : Name(find.Goal);

    /// <summary>What is said for a goal.</summary>
    public IEnumerable<Sentence> Of(PlankGoal goal)
    {
        var id = goal.ToString().ToLowerInvariant();
        var wanted = goal == PlankGoal.Pitch ? "pitch alone" : Text($"{Name(goal)} at {Numeral.Of(Mode(goal).Frequency, 2)} Hz");
        if (answer.Finds.FirstOrDefault(f => f.Goal == goal) is not { } find)
        {
            yield return new(id, $"{FirstLetter.Raised(wanted)}: no row of these boards is safe and moves the car enough to be seen.");
            yield break;
        }

        if (!answer.Proposed.Contains(find))
        {
            yield return new(
                id,
                Text($"{FirstLetter.Raised(wanted)}: not to be had almost alone with these boards. Of the purest safe row, in the ")
                + Text($"second after the rear wheels have left, {Shares(find)}; ")
                + Text($"{In.Percent.Of(PlankAnswer.Almost):F0} % is asked for of all three."));
            yield break;
        }

        var had = goal == PlankGoal.Pitch ? Name(find) : wanted;
        yield return new(
            id,
            Text($"{FirstLetter.Raised(had)}: {find.Layout.Words}, at {In.KilometresPerHour.Of(find.Speed):0.#} km/h. ")
            + "In the second after the rear "
            + Text($"wheels have left, {Shares(find)}; with the drive over the planks ")
            + Text($"{In.Percent.Of(find.WholeShare):F0} %."));
        yield return new($"{id}-boards", Build(find));
    }

    private static string Shares(PlankFind find) =>
        Text($"{In.Percent.Of(find.Share):F0} % of the motion is that, at least {In.Percent.Of(find.LeastShare):F0} % within 5 % of the speed ")
        + Text($"(the linear car: {In.Percent.Of(find.LinearShare):F0} %)");

    private static string WedgeEnd => "5 mm thick at its thin end and that edge rounded, since a knife edge splits (the passes take it to nothing)";

    private BodyMode Mode(PlankGoal goal) => goal == PlankGoal.First ? answer.Modes.First : answer.Modes.Second;

    private string Build(PlankFind find)
    {
        var tracks = find.Pass.Model.Rolls ? 2 : 1;
        var list = CuttingList.Of(find.Layout, tracks);
        var first = find.Layout.Places[0];
        var edge = first.IsAlong
            ? Text($"ends sawn to a wedge over {In.Millimetres.Of(first.Edge):F0} mm, {WedgeEnd}")
            : first.SideBySide > 1
                ? Text($"first and last board of each place planed to a wedge over their width, {WedgeEnd}")
                : "both long edges bevelled at 45°";
        var laid = string.Join("; ", find.Layout.Places.Select((p, k) =>
            Text($"place {k + 1} {(p.IsAlong ? "along" : "across")} the track, ")
            + Text($"{p.SideBySide} side by side{(p.Layers > 1 ? Text($", {p.Layers} layers") : "")}")));
        var sawn = string.Join(", ", list.Pieces.Select(p => Text($"{p.Count} pieces of {In.Millimetres.Of(p.Length):0} mm of {p.Size.Words}")));
        var bought = string.Join(", ", list.Boards.Select(b => Text($"{b.Count} boards of {b.Size.SoldWords}")));
        return $"Saw {sawn} (buy {bought}); {(tracks == 2 ? "half of them for each track" : "one track")}: {laid}; {edge}.";
    }
}
