using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Planning;
using Heaveline.Measures;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>A test day in words.</summary>
internal sealed class PlanWords(PlanAnswer answer)
{
    /// <summary>What must stand below a test day.</summary>
    public IReadOnlyList<string> Safety =>
    [
        IsCar ? DriveWords.Safety : DriveWords.RiderSafety,
        Text($"{(IsCar ? "Belted in" : "Rider in full gear")}, nothing loose aboard, ")
        + "nobody on or near the hump while the car moves, a spotter who can "
        + "stop the drive; never above the card's "
            + Text($"speeds, nor above {In.KilometresPerHour.Of(TestDay.Fastest):F0} km/h over a hump. First over it at ")
                + "walking speed: does everything clear?",
    ];

    /// <summary>"frequency ratio".</summary>
    public static string Name(CarNumber number) => number switch
    {
        CarNumber.PitchIndex => "dynamic index",
        CarNumber.FrontDamping => AxleCatalogue.Damping(AxleEnd.Front).Name,
        CarNumber.RearDamping => AxleCatalogue.Damping(AxleEnd.Rear).Name,
        _ => "frequency ratio",
    };

    /// <summary>The day in a sentence or two.</summary>
    public IReadOnlyList<Sentence> Head =>
        answer.Best is not { } best
            ? [new("plan", $"No test day for {Car}: over none of the humps do its wheels keep a fifth of their load and stay off their stops "
                + $"at {LeastSpeeds}. "
                + (answer.Loads is [var other, ..] ? $"Under '{other.Load}' it does. " : "")
                + (answer.Day.Instead is [var lower, ..]
                    ? $"Over {Hump(lower)} they do under this load, at {Speeds(lower)}: plan without --hump."
                    : "Take lower humps."))]
            : answer.Asked.Change is null ? [Known(best)]
            : [Shown(best), Known(best)];

    // The slowest three that are tried, each 5 % faster too.
    private static string LeastSpeeds => "9, 12 or 15 km/h, or 5 % faster";

    /// <summary>Where the numbers must be doubted.</summary>
    public IReadOnlyList<string> Cautions =>
    [
        .. FirstDrive,
        .. Least,
        .. answer.FromFile.Silent.Select(part => part.Says),
        .. PhoneWords.Unusual(new PhonePlace { BehindFrontAxle = answer.Asked.Phone }),
        .. answer.Day.Unsafe.IsEmpty || answer.Best is null
            ? []
            : new[]
            {
                $"Not driven: {string.Join(", ", answer.Day.Unsafe.Select(h => h.Name))}; at {LeastSpeeds}, a tyre "
                + "bears less than a fifth of its load or a wheel nears a stop.",
            },
        .. answer.Best is not null
            ? new[]
            {
                "Intervals are those of the linear car whose motion is like this one's, not of the springs and dampers in the file: "
                + "friction, stops and dampers that bend shift it by several per cent. They are what the best weighing of such passes promises; "
                + "no real drive with known truth has tested them.",
            }
            : Array.Empty<string>(),
        .. answer.Best is null
            ? []
            : new[]
            {
                Text($"Scatter: road of {answer.Asked.Class}, {In.Percent.Of(PassScatter.OwnLine):F0} % of its ")
                + "roughness other from line to line, onset to "
                    + Text($"{In.Milliseconds.Of(PassScatter.Onset):F0} ms, speed to ")
                        + Text($"{In.Percent.Of(PassScatter.Speed):F0} % (common practice, no source)."),
            },
    ];

    /// <summary>Where the phone lies and under which load.</summary>
    public IReadOnlyList<Sentence> Places
    {
        get
        {
            if (answer.Best is not { } best)
            {
                return [];
            }

            var name = Name(answer.Asked.Number);
            var places = string.Join(", ", answer.Day.Places.Select(p => Text($"{p.Phone:F2} m behind the front axle ± {Share(p.HalfWidth)}")));
            var phone = new Sentence(
                "phone", Text($"Where the phone lies, {TestDrive.Passes} passes, {name}: {places}; as planned, {answer.Asked.Phone:F2} m: ")
                + $"± {Share(best.HalfWidths[answer.Asked.Number])}. Say the place to 5 cm.");
            return answer.Loads.IsEmpty
                ? [phone]
                : [
                    phone,
                    new("loads", $"Other loads over the same hump, {name}: "
                        + string.Join(", ", answer.Loads.Select(l => $"{l.Load} ± {Share(l.HalfWidth)}")) + "."),
                ];
        }
    }

    /// <summary>The protocol, a step a sentence.</summary>
    public IReadOnlyList<Sentence> Protocol => answer.Best is not { } best || answer.CardPasses == 0
        ? []
        :
        [
            .. Steps(best).Select((text, k) => new Sentence(Text($"step-{k + 1}"), Text($"{k + 1}. {text}"))),
        ];

    private static string Share(double log) => Text($"{In.Percent.Of(log):F1} %");

    private static string Speeds(TestDrive drive) => $"{Shown(drive.Speeds[0])}, {Shown(drive.Speeds[1])} and {Shown(drive.Speeds[2])}";

    private static string Shown(double speed) => Text($"{In.KilometresPerHour.Of(speed):0.#} km/h");

    private IEnumerable<string> FirstDrive => answer.Asked.First is null
        ? []
        : answer.Wish.First is { } first
            ? [Text($"The first drive counts: its {first.Windows.Length} windows tell the {Name(answer.Asked.Number)} to ")
                + $"± {Share(Told(first.Estimates.Single(e => e.Number == answer.Asked.Number)))} already."
                + (answer.Asked.FirstDrive.Length > 0 ? ""
                    : $" Nothing in its log says which car it was and how loaded: it is taken for {Car}.")]
            : ["The first drive does not count: "
                + (answer.First is { Refusals: [var refusal, ..] }
                    ? DriveCarWords.Together(refusal)
                    : "its log bears no car. 'heaveline drive' says why.")];

    // What is planned is no less than twelve passes, whatever fewer would do.
    private IEnumerable<string> Least => (answer.Asked.Change is null ? answer.Best?.FewestForNumber : answer.Best?.FewestForChange) is { } fewest
        && fewest < answer.CardPasses
        ? [Text($"At least {TestDrive.Passes} passes are planned, {TestDrive.Passes / 3} at each speed; {fewest}")
            + (answer.Asked.Change is null ? " would halve the doubt." : " in each state would show the change.")]
        : [];

    private static double Told(CarEstimate estimate) => 0.5 * Math.Log(estimate.High / estimate.Low);

    // Boards and low humps are told with their sizes.
    private static string Hump(TestDrive best) =>
        TestHump.OfBoards.Concat(TestHump.Low).Contains(best.Hump) ? $"{best.Hump.Name} ({best.Hump.Road.Caption})" : best.Hump.Name;

    private string Car => $"{answer.Asked.Car.Name}, {answer.Asked.Car.Load.Name}";

    private bool IsCar => answer.Asked.Car.Model.Rolls;

    private Sentence Known(TestDrive best)
    {
        var left = $"the {Name(answer.Asked.Number)}, "
            + (answer.FromFile.Silent.IsEmpty ? "which the car file leaves at"
                : $"which is, with {answer.FromFile.Taken}, of which the car file states no doubt, known to")
            + $" ± {Share(answer.Doubt)} (90 %"
            + (answer.FromFile.Silent.IsEmpty ? ")" : $"; by the doubts that the car file states ± {Share(answer.FromFile.Stated)})");
        var reached = $"to ± {Share(answer.Reached)}";
        var driven = Text($"over {best.Hump.Name}, a third at each of {Speeds(best)}");
        return new("doubt", answer switch
        {
            { CardPasses: > 0, Asked.Change: null } =>
                Text($"{Car}. To halve the doubt of {left}: {answer.CardPasses} passes {driven}; they would tell it {reached}."),
            { CardPasses: > 0 } => Text($"{Car}. The {answer.CardPasses} passes before the change would tell {left}, {reached}."),
            _ when best.PassesForNumber is { } halving =>
                Text($"{Car}. {halving} passes {driven}, would halve the doubt of {left}: {reached}. ")
                + "That card is printed where no change is asked about.",
            _ => Text($"{Car}. No {TestDrive.MostPasses} passes over these humps would halve the doubt of {left}: the best, {driven}, ")
                + $"would tell it {reached}. There is no card for that.",
        });
    }

    private Sentence Shown(TestDrive best)
    {
        var name = answer.Asked.Change!.Name;
        if (best.ChangesNothing)
        {
            return new("change", $"{name} changes nothing of RMS pitch in the first second after {best.Hump.Name} at {Speeds(best)} that could be "
                + "shown: less than 0.1 %. There is no card for that.");
        }

        var change = Math.Exp(best.Change!.Value) - 1.0;
        var what = Text($"{name} changes RMS pitch in the first second after {best.Hump.Name} by ")
            + $"{Numeral.Change(In.Percent.Of(change), 1)} % at {Speeds(best)}";
        return new("change", best.PassesForChange is { } passes
            ? Text($"{what}: {passes} passes before and {passes} after, a third at each speed, show it in four of five test days at least ")
                + $"(one pass scatters by {Share(best.Scatter)})."
            : Text($"{what}: more than {TestDrive.MostPasses} passes each way would be needed to show it (one pass scatters by ")
                + Text($"{Share(best.Scatter)}). There is no card for that."));
    }

    // Speeds are held low for the stops: what is gentle enough may be too gentle to be found.
    private string Unseen =>
        "Passes so gentle do not all stand out from the road by themselves: note the logger's time when the front wheels meet the hump, to 0.4 s, "
        + "and give the times to 'heaveline drive' as --add"
        + (answer.Asked.Change is null ? "." : " and to 'heaveline prove' as 'added' in the drive.yaml of each drive.");

    private IEnumerable<string> Steps(TestDrive best)
    {
        var each = answer.CardPasses / 3;
        yield return "Weigh each axle as loaded, measure the wheelbase (tape, ± 1 cm), set and note tyre pressures, note fuel, load and temperature.";
        yield return (IsCar ? "Tape the phone flat on the floor" : "Fix the phone to the frame or the tail, tight and flat")
            + Text($", {answer.Asked.Phone:F2} m behind the front axle, measured to 5 cm; ")
            + "logger at 100 Hz: acceleration with "
            + "gravity, turn rate, position.";
        // A leaning bike feels no push to the side: braking alone tells which way is forward.
        yield return IsCar
            ? "Start the logger. Stand still for 5 s, brake once firmly, take two turns."
            : "Start the logger. Stand still and upright for 5 s; then brake once firmly, riding straight.";
        yield return Text(
            $"Drive over {Hump(best)} {3 * each} times, {each} each at {Speeds(best)}, mixed, always the same line, speed held from ")
            + "20 m before to 20 m after, no braking, no steering."
            + (best.StandsOut ? "" : Text($" {Unseen}"));
        yield return answer.Asked.Change is { } change
            ? $"Stop the logger. Make the change ({change.Name}), nothing else: same load, pressures, phone, line and weather; repeat steps 1 to 4."
            : "Stop the logger. For a second state of the car change one thing alone and repeat steps 1 to 4.";
        yield return "Copy the logs untouched; 'heaveline drive' reads them"
            + (answer.Asked.Change is null ? "." : ", 'heaveline prove' compares them.");
    }
}
