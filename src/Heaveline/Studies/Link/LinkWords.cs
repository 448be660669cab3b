using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>What the bench and the hump say of a link, in sentences.</summary>
internal static class LinkWords
{
    /// <summary>The link's parts of the stiffness.</summary>
    public static Sentence Shares(InterconnectionBench bench) =>
        new("shares", $"The link carries {Share(bench.HeaveShare)} the stiffness in heave and {Share(bench.PitchShare)} that in pitch.");

    /// <summary>What it costs in braking, against separate springs as stiff in heave and against no link at all.</summary>
    public static Sentence Price(InterconnectionBench bench)
    {
        var with = Braking(bench.With);
        var text = $"At {Numeral.Of(InterconnectionBench.Braking, "0.0#")} g of braking the body pitches by {with}. ";
        if (bench.Separate is { } separate)
        {
            text += With(
                bench,
                separate,
                "With separate springs as stiff in heave it would pitch",
                "the link costs next to nothing there",
                "the link's price is",
                "the link saves");
        }
        else
        {
            text += "No separate springs can be as stiff in heave: the link takes stiffness from an axle. ";
        }

        text += With(
            bench,
            bench.Without,
            "Without the link and nothing in its place it would pitch",
            "the link changes next to nothing",
            "with it there is",
            "the link saves");
        return new("price", text.TrimEnd());
    }

    /// <summary>What joining does over the hump, speed by speed; nothing when no speed could be compared.</summary>
    /// <param name="hump">The obstacle in words.</param>
    /// <param name="crossings">The crossings.</param>
    public static IEnumerable<Sentence> Hump(string hump, IReadOnlyList<LinkCrossing> crossings)
    {
        if (crossings.Any(c => c.SettlingRatio is not null))
        {
            yield return new(
                "settling",
                $"Over the {hump}, against separate springs as stiff in heave: the RMS pitch of the first second of the settling "
                + Turns(crossings, c => c.SettlingRatio) + ".");
        }

        if (crossings.Any(c => c.HitRatio is not null))
        {
            yield return new("hit", $"The peak pitch acceleration of the hit {Turns(crossings, c => c.HitRatio)}.");
        }

        var told = crossings.Where(c => c.IsPipeCounted && c.Flow is { Reynolds: > PipeFlow.Critical }).ToList();
        if (told.Count > 0)
        {
            yield return new("laminar", $"What is told at {Speeds(told)} holds as far as the pipe's flow is laminar, which it does not stay there.");
        }

        var untold = crossings.Where(c => !c.IsPipeCounted).ToList();
        if (untold.Count > 0)
        {
            yield return new("not-counted", $"At {Speeds(untold)} nothing is told of hit and settling with the link: what the turbulent flow loses "
                + $"there beyond what is counted pushes a front wheel with more than {Numeral.Of(In.Percent.Of(LinkCrossing.Thin), 0)} % of the load "
                + "that it stands with.");
        }
    }

    /// <summary>That the pipe's flow is not the one that is counted, at the speed where that is worst; nothing where it stays laminar.</summary>
    /// <param name="hump">The obstacle in words.</param>
    /// <param name="crossings">The crossings.</param>
    public static IEnumerable<string> Flow(string hump, IReadOnlyList<LinkCrossing> crossings)
    {
        if (crossings.Select(c => c.Flow).OfType<PipeFlow>().MaxBy(f => f.Reynolds) is { } flow && flow.Reynolds > PipeFlow.Critical)
        {
            var stands = crossings[0].FrontLoad;
            yield return
                $"The pipe's flow does not stay laminar: over the {hump}, at "
                + $"{Numeral.Of(In.KilometresPerHour.Of(flow.Speed), "0.#")} km/h it reaches {Numeral.Of(flow.PeakVelocity, "F1")} m/s, "
                + $"Reynolds number {Numeral.Of(flow.Reynolds, "F0")} (above "
                + $"{Numeral.Of(PipeFlow.Critical, "F0")} it can be turbulent), for "
                + $"{Numeral.Of(In.Percent.Of(flow.TurbulentShare), "F0")} % of the first "
                + $"{Numeral.Of(PipeFlow.Looks, "F1")} s. There a smooth pipe loses {Numeral.Of(flow.LossRatio, "F1")} times what is counted: "
                + $"{Numeral.Of(flow.FrontForce, "F0")} N at a front wheel instead of "
                + $"{Numeral.Of(flow.FrontForce / flow.LossRatio, "F0")} N. No pass counts the difference; with it the fluid would run slower."
                + (flow.FrontForce > LinkCrossing.Thin * stands
                    ? $" That is more than a tenth of the {Numeral.Of(stands, "F0")} N that the wheel stands with: the pipe is too thin for it "
                        + "at that speed."
                    : "");
        }
    }

    /// <summary>A share in words that go before "the stiffness": none of a share that would be printed as 0.</summary>
    public static string Share(double share) => Math.Round(In.Percent.Of(share)) switch
    {
        0.0 => "nothing of",
        < 0.0 and var less => $"less than nothing ({Numeral.Of(less, "F0")} %) of",
        var more => $"{Numeral.Of(more, "F0")} % of",
    };

    private static string With(InterconnectionBench bench, BenchState other, string opening, string same, string more, string less)
    {
        var ratio = bench.With.BrakingPitch / other.BrakingPitch;
        var end = Math.Abs(ratio - 1.0) < LinkCrossing.Alike ? same
            : ratio > 1.0 ? $"{more} {PerCent(ratio - 1.0)} more"
            : $"{less} {PerCent(1.0 - ratio)}";
        return $"{opening} by {Braking(other)}: {end}. ";
    }

    // Speeds gathered by which way it goes.
    private static string Turns(IReadOnlyList<LinkCrossing> crossings, Func<LinkCrossing, double?> ratio)
    {
        string? Those(Func<double, bool> way, Func<LinkCrossing, string> how) =>
            crossings.Where(c => ratio(c) is { } r && way(r)).ToList() is { Count: > 0 } some ? string.Join(", ", some.Select(how)) : null;
        string At(LinkCrossing c) => $"{PerCent(Math.Abs(ratio(c)!.Value - 1.0))} at {c.SpeedWords} km/h";
        string?[] parts =
        [
            Those(r => r < 1.0 - LinkCrossing.Alike, At) is { } less ? $"falls by {less}" : null,
            Those(r => r > 1.0 + LinkCrossing.Alike, At) is { } more ? $"grows by {more}" : null,
            Those(r => Math.Abs(r - 1.0) <= LinkCrossing.Alike, c => $"at {c.SpeedWords} km/h") is { } alike ? $"is the same {alike}" : null,
            crossings.Where(c => c.IsPipeCounted && ratio(c) is null).Select(c => c.SpeedWords).ToList() is { Count: > 0 } none
                ? $"could not be compared at {string.Join(", ", none)} km/h" : null,
        ];
        return string.Join("; ", parts.OfType<string>());
    }

    private static string Speeds(IReadOnlyList<LinkCrossing> some) => $"{SpeedRanges.And([.. some.Select(c => c.SpeedWords)])} km/h";

    private static string PerCent(double share) => $"{Numeral.Of(In.Percent.Of(share), share < 0.0995 ? "F1" : "F0")} %";

    private static string Braking(BenchState state) => $"{Numeral.Of(In.Degrees.Of(state.BrakingPitch), "F2")}°";
}
