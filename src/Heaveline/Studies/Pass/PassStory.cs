using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Tuning;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>What happened in a pass, in plain sentences with the numbers that matter.</summary>
public static class PassStory
{
    /// <summary>Ids of the sentences on pitching, or on why the crossing broke off: what a reader wants before wheels, seats and lamp.</summary>
    public static IReadOnlySet<string> First { get; } =
        new HashSet<string>(StringComparer.Ordinal)
        {
            "outcome", "short-road", "hit", "settling", "settling-time", "settling-share", "pitch", "pitch-share",
        };

    /// <summary>The sentences, in order.</summary>
    public static IReadOnlyList<Sentence> Of(Pass pass, PassMeasures measures)
    {
        ArgumentNullException.ThrowIfNull(pass);
        ArgumentNullException.ThrowIfNull(measures);
        List<Sentence> story = [Opening(pass), .. ShortRoad.Of(pass.Road, pass.Model.Car).Select(text => new Sentence("short-road", text))];
        if (pass.Outcome != PassOutcome.Completed)
        {
            story.Add(new("outcome", pass.OutcomeSentence));
            story.AddRange(Coils(pass));
            return story;
        }

        story.AddRange(measures.Pitch is { Hit: { } hit, Settling: { } settling } ? Obstacle(pass, hit, settling) : Road(measures));
        story.AddRange(Wheels(measures));
        story.AddRange(SpringTableEnd.In(pass).Select(end => new Sentence($"{CornerNames.Of(end.End)}-spring-table", end.WordsInPass)));
        story.AddRange(PipeFlow.Of(pass) is { } flow && flow.Reynolds > PipeFlow.Critical ? [new("pipe-flow", Flow(flow))] : Array.Empty<Sentence>());
        story.AddRange(Seats(measures));
        if (pass.Model.Car.Kind == VehicleKind.TwoWheeler && measures.Seats.Count > 0)
        {
            story.Add(new(
                "rider",
                "A rider is counted as a rigid block on the seat. A real one gives way at knees, back and arms: the numbers at the head are "
                + "those of a point that moves with the motorcycle, not of a rider's head."));
        }

        if (measures.Headlamp is { } lamp)
        {
            story.Add(new("beam", Beam(lamp)));
        }

        story.AddRange(Coils(pass));
        return story;
    }

    // Bought springs, and coils that touch or come loose.
    private static IEnumerable<Sentence> Coils(Pass pass) =>
        [.. SwapWords.Of([pass.Model]), .. CoilWords.Of(pass.Model, troubleOnly: true), .. CoilWords.Loose(pass)];

    private static Sentence Opening(Pass pass) =>
        new(
            "opening",
            Text($"{pass.Model.Car.Name}, {pass.Model.Load.Name}, over {pass.RoadCaption} at {In.KilometresPerHour.Of(pass.Speed):0.#} km/h."));

    private static IEnumerable<Sentence> Obstacle(Pass pass, PitchHit hit, PitchSettling settling)
    {
        yield return new(
            "hit",
            Text($"The hit lasts {hit.Window.Length:F2} s: the pitch angle reaches {In.Degrees.Of(hit.PeakAngle):F2}°, the pitch acceleration ")
            + Text($"{hit.PeakAcceleration:F2} rad/s²."));
        yield return new("settling", Text(
            $"The settling: in the second after the rear wheels have left, the pitch is {In.Degrees.Of(settling.RmsAngle):F3}° root mean square, ")
            + Text($"{In.Degrees.Of(settling.PeakAngle):F2}° at most."));
        var lobes = settling.Lobes.Count switch
        {
            0 => "no half-swing reaches a tenth of the peak",
            1 => "one half-swing reaches a tenth of the peak",
            var n => $"{n} half-swings reach a tenth of the peak",
        };
        yield return new("settling-time", settling.TimeFromRear is { } time
            ? Text($"It falls below a tenth of its peak for good {time:F2} s after the rear wheels have left; until then {lobes}. ")
                + "(This time jumps by half a swing when a swing just clears the mark; judge by the root mean square.)"
            : Text($"It does not fall below a tenth of its peak within the {pass.Time[^1]:F1} s recorded; since the rear wheels left {lobes}."));
        yield return new("settling-share", Text($"In that second the ends move {Part(settling.Share)} by pitching as by heaving above the road."));
    }

    private static IEnumerable<Sentence> Road(PassMeasures measures)
    {
        var pitch = measures.Pitch;
        yield return new("pitch", Text(
            $"Until the rear wheels have left the road the body pitches {In.Degrees.Of(pitch.RmsAngle):F3}° root mean square, with ")
            + Text($"{pitch.RmsAcceleration:F2} rad/s² root mean square; {In.Degrees.Of(pitch.PeakAngle):F2}° is the most."));
        yield return new("pitch-share", Text($"The ends move {Part(pitch.Share)} by pitching as by heaving."));
    }

    private static string Flow(PipeFlow flow) =>
        Text($"The link's pipe is counted with laminar flow, but reaches a Reynolds number of {flow.Reynolds:F0} (above {PipeFlow.Critical:F0} ")
        + Text($"it can be turbulent): a smooth pipe would push at each front wheel with {flow.FrontForce:F0} N there instead of the ")
        + Text($"{flow.FrontForce / flow.LossRatio:F0} N counted. The command link says what that means.");

    private static IEnumerable<Sentence> Wheels(PassMeasures measures)
    {
        // Left and right doing the same are said once.
        foreach (var alike in measures.Wheels.GroupBy(
            w => (w.End, w.BumpContacts, Millimetres(w.BumpMargin), w.ReboundContacts, Millimetres(w.ReboundMargin), Text($"{w.LiftOff:F2}"))))
        {
            var (wheel, both) = (alike.First(), alike.Count() > 1);
            var end = wheel.End == AxleEnd.Front ? "front" : "rear";
            var (the, s, isOrAre) = both ? ($"Both {end}", "s", "are") : ($"The {wheel.Wheel}", "", "is");
            var id = both ? end : wheel.Wheel.Replace(' ', '-');
            if (wheel.BumpContacts > 0)
            {
                yield return new(
                    $"{id}-bump-stop",
                    $"{the} bump stop{s} {isOrAre} touched {Times(wheel.BumpContacts)}, pressed {AtMost(-wheel.BumpMargin)}.");
            }

            if (wheel.ReboundContacts > 0)
            {
                yield return new(
                    $"{id}-rebound-stop",
                    $"{the} rebound stop{s} {isOrAre} touched {Times(wheel.ReboundContacts)}, pulled "
                    + $"{AtMost(-wheel.ReboundMargin)}.");
            }

            if (wheel.LiftOff > 0.0)
            {
                yield return new($"{id}-lift-off", Text($"{the} wheel{s} {isOrAre} off the road for {wheel.LiftOff:F2} s."));
            }
        }
    }

    private static IEnumerable<Sentence> Seats(PassMeasures measures) => measures.Seats
        .GroupBy(seat => Text($"{seat.PeakVertical:F1} m/s² up and down at most, {seat.PeakHeadForeAft:F1} m/s² fore and aft at the head"))
        .Select(alike => new Sentence(
            $"seat-{alike.First().Seat.Replace(' ', '-')}",
            $"{FirstLetter.Raised(string.Join(" and ", alike.Select(seat => seat.Seat)))}: {alike.Key}."));

    private static string Beam(HeadlampMeasures lamp) =>
        $"The dipped beam points {Aim(lamp.AtTrim)} the horizontal standing under this load, and swings between "
        + $"{Aim(lamp.Highest)} and {Aim(lamp.Lowest)} it.";

    private static string Aim(double drop) => Text($"{In.Percent.Of(Math.Abs(drop)):F2} % {(drop < 0.0 ? "above" : "below")}");

    private static string Millimetres(double? length) => Text($"{In.Millimetres.Of(length):F0}");

    // A stop that is touched is pressed by something, however little.
    private static string AtMost(double? length) =>
        Millimetres(length) is var whole && whole is "0" or "-0" ? "less than 1 mm" : $"{whole} mm at most";

    private static string Part(double share) => Text($"{share:F2} times as much");

    private static string Times(int n) => n == 1 ? "once" : n == 2 ? "twice" : Text($"{n} times");
}
