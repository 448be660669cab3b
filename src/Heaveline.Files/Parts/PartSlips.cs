using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Quantities;
using static System.FormattableString;

namespace Heaveline.Files.Parts;

/// <summary>Warns of parts in which a digit, a unit or a row has likely slipped. Limits: common practice, no source.</summary>
internal static class PartSlips
{
    // A slip by ten lies this far from the middle of its neighbours; real springs of one list lie nearer.
    private const double Far = 5.0;

    // Farther than this it is no slip by ten.
    private const double Farthest = 20.0;

    // With fewer others there is no middle to be far from.
    private const int FewestOthers = 2;

    // A measured rate and that of the wire differ by the coils that do not move and by the wire's scatter.
    private const double OffWire = 1.35;

    // A coil that a car stands on is pressed by more than this before its coils touch.
    private const double LeastTravel = 0.050;

    /// <summary>Adds the warnings of a list.</summary>
    public static void Check(PartsList list, Node root, Reader reader)
    {
        Node[] places = [.. PartsListWords.Places(root)];
        Node Place(Part part) => places[list.Parts.Index().First(p => ReferenceEquals(p.Item, part)).Index];
        foreach (var slip in Of(list.Parts))
        {
            var at = Place(slip.Part);
            reader.Warn((at.At(slip.Key) ?? at.At(PartWords.Name.Name) ?? at).Place, $"{slip.Part.Name} {slip.Words}", slip.Advice);
        }

        foreach (var damper in list.Parts.OfType<DamperPart>())
        {
            var at = Place(damper);
            foreach (var (i, click) in damper.Clicks.Index())
            {
                DamperSlips.Check(click.Law, at.At(DamperPartWords.Clicks.Name)?.Items[i] ?? at, reader);
            }
        }
    }

    /// <summary>The slips of parts.</summary>
    public static IEnumerable<PartSlip> Of(IReadOnlyList<Part> parts)
    {
        var hasPrice = parts.Any(part => part.Price is { IsNone: false });
        foreach (var part in parts)
        {
            if (part.Price is null)
            {
                yield return new(
                    part, "price", "has no price: what a setup with it costs cannot be said.", "Ask for it; 0 for what is there already.");
            }
            else if (part.Price is { IsNone: true } && hasPrice)
            {
                yield return new(
                    part, "price", "costs nothing, and others of the list do not.", "Right for what is there already; else the price is missing.");
            }
        }

        // An hour that costs something is the list's, so that every part with a time has its price.
        foreach (var part in parts.Any(part => part.FittingPrice is not null) ? parts.Where(part => part.Labour is null) : [])
        {
            yield return new(
                part,
                "labour",
                "has no labour, and others of the list do: its fitting counts as nothing.",
                "Give the hours; 0 h where it is done anyway.");
        }

        foreach (var part in parts.Where(part => part is { Labour.Si: > 0.0, FittingPrice: null }))
        {
            yield return new(
                part, "labour", "has labour, and the list has no hourly-price: its fitting is told in hours and counts as no money.",
                "Right where nobody is paid; else add hourly-price to the list.");
        }

        CoilPart[] springs = [.. parts.OfType<CoilPart>()];
        foreach (var slip in springs.SelectMany(spring => Spring(spring, springs)).Concat(parts.OfType<DamperPart>().SelectMany(Damper)))
        {
            yield return slip;
        }
    }

    private static IEnumerable<PartSlip> Spring(CoilPart spring, CoilPart[] all)
    {
        var (rate, others) = (spring.Rate, all.Where(other => other != spring && SameEnd(other, spring)).Select(other => other.Rate).ToArray());
        if (others.Length >= FewestOthers && Middle(others) is var middle && Tenfold(rate / middle) is { } times)
        {
            yield return new(
                spring,
                "rate",
                Invariant($"has {In.NewtonsPerMillimetre.Of(rate):0.##} N/mm, {times} those beside it, which lie about ")
                    + Invariant($"{In.NewtonsPerMillimetre.Of(middle):0.##} N/mm."),
                "Likely slip: a point at the wrong place, or a rate in kg/mm or N/cm.");
        }

        if (spring.Law is LinearSpring { Dimensions: CoilDimensions wire } && Math.Abs(Math.Log(rate / wire.Rate)) > Math.Log(OffWire))
        {
            yield return new(
                spring,
                "rate",
                Invariant($"has {In.NewtonsPerMillimetre.Of(rate):0.##} N/mm, {Tenfold(rate / wire.Rate) ?? "far from"} ")
                    + Invariant($"what its wire gives, {In.NewtonsPerMillimetre.Of(wire.Rate):0.##} N/mm."),
                "Check the rate, the coils that move, and whether the diameter is that of the middle of the wire.");
        }

        if (spring is { FreeLength: { } free, BlockLength: { } block } && free.Si - block.Si < LeastTravel)
        {
            yield return new(
                spring,
                "free-length",
                Invariant($"is {In.Millimetres.Of(free.Si):0} mm long without load and solid at {In.Millimetres.Of(block.Si):0} mm: ")
                    + Invariant($"{In.Millimetres.Of(free.Si - block.Si):0} mm are less than a car's load and its bump travel press it together."),
                "Likely slip: the free length is that in the car, or the block length counts no gaps.");
        }
    }

    // Each sheet between its neighbours: an adjuster that turns back is a sheet under the wrong click.
    private static IEnumerable<PartSlip> Damper(DamperPart damper)
    {
        double[] work = [.. damper.Clicks.Select(click => Pull(click.Law, damper))];
        for (var i = 1; i + 1 < work.Length; i++)
        {
            if ((work[i] - work[i - 1]) * (work[i + 1] - work[i]) < 0.0)
            {
                yield return new(
                    damper,
                    "clicks",
                    Invariant($"is {(work[i] > work[i - 1] ? "harder" : "softer")} at click {damper.Clicks[i].Number} than at both clicks ")
                        + "beside it.",
                    "Likely slip: the sheets of two clicks changed places.");
            }
        }
    }

    // Mean of both sides where every sheet has been measured.
    private static double Pull(TableDamper law, DamperPart damper)
    {
        var speed = damper.Clicks.Min(click => Math.Min(click.Law.Bump.At[^1], click.Law.Rebound.At[^1]));
        return law.Whole.ForceAt(speed) - law.Whole.ForceAt(-speed);
    }

    private static double Middle(IEnumerable<double> values)
    {
        double[] inOrder = [.. values.Order()];
        return 0.5 * (inOrder[(inOrder.Length - 1) / 2] + inOrder[inOrder.Length / 2]);
    }

    private static string? Tenfold(double ratio) => ratio is > Far and < Farthest ? "ten times"
        : ratio is < 1.0 / Far and > 1.0 / Farthest ? "a tenth of"
        : null;

    private static bool SameEnd(CoilPart one, CoilPart other) => one.Only is null || other.Only is null || one.Only == other.Only;
}
