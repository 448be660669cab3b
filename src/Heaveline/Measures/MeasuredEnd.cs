using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>
/// A damper table or a sweep that ends before a pass does: past its last row its last slope, or its curve, is taken on, which nobody measured.
/// </summary>
/// <param name="Id">Of what and where ("front-damper-table").</param>
/// <param name="Sentence">What is wrong, a sentence.</param>
public sealed record MeasuredEnd(string Id, string Sentence)
{
    // A tape reads to a millimetre, a rig to a few per cent: less than this past the end is no news. Common practice, no source.
    private const double Slight = 1.05;
    private const double SlightTravel = 1e-3;

    /// <summary>What a pass goes past, front before rear.</summary>
    /// <param name="pass">The pass.</param>
    public static IReadOnlyList<MeasuredEnd> In(Pass pass)
    {
        ArgumentNullException.ThrowIfNull(pass);
        return
        [
            .. from end in new[] { AxleEnd.Front, AxleEnd.Rear }
               from found in new[] { Sweep(pass, end, "spring"), Sweep(pass, end, "damper"), Table(pass, end) }
               where found is not null
               select found,
        ];
    }

    private static MeasuredEnd? Table(Pass pass, AxleEnd end)
    {
        var damper = pass.Model.Car.Axles[(int)end].Damper;
        if (damper.Law is not TableDamper table)
        {
            return null;
        }

        var share = Shares(pass.Model.Numbers.Elements.Dampers);
        var (closing, opening) = (0.0, 0.0);
        foreach (var i in Corners(end))
        {
            var (own, other) = (Rates(pass, i), Rates(pass, i ^ 1));
            var travels = Along(pass, i, share[i]);
            for (var k = 0; k < pass.Count; k++)
            {
                var v = damper.MotionRatio.At(travels[k]) * ((share[i] * own[k]) + ((1.0 - share[i]) * other[k]));
                (closing, opening) = (Math.Max(closing, v), Math.Max(opening, -v));
            }
        }

        var isBump = closing / table.Bump.At[^1] > opening / table.Rebound.At[^1];
        var (fastest, last) = isBump ? (closing, table.Bump.At[^1]) : (opening, table.Rebound.At[^1]);
        return fastest <= Slight * last ? null : new MeasuredEnd(
            $"{CornerNames.Of(end)}-damper-table",
            FormattableString.Invariant($"The {CornerNames.Of(end)} damper {(isBump ? "closes" : "opens")} at {fastest:F2} m/s, past the end of its ")
            + FormattableString.Invariant($"table at {last:0.##} m/s: its last slope is taken on, which nobody measured."));
    }

    // Share of a wheel's own travel at its element.
    private static double[] Shares(IReadOnlyList<Element> elements) => [.. elements.Select((element, i) => element.Sight.Wheels[i])];

    private static MeasuredEnd? Sweep(Pass pass, AxleEnd end, string element)
    {
        var axle = pass.Model.Car.Axles[(int)end];
        var elements = pass.Model.Numbers.Elements;
        var (ratio, share) = element == "spring"
            ? (axle.Spring.MotionRatio, Shares(elements.Springs))
            : (axle.Damper.MotionRatio, Shares(elements.Dampers));
        if (ratio is not { SweptFrom: { } from, SweptTo: { } to } || pass.Count == 0)
        {
            return null;
        }

        double[] travels = [.. Corners(end).SelectMany(i => Along(pass, i, share[i]))];
        var (least, most) = (travels.Min(), travels.Max());
        var isBump = most - to.Si > from.Si - least;
        var (farthest, last) = isBump ? (most, to.Si) : (least, from.Si);
        return Math.Abs(farthest - last) <= SlightTravel || (farthest >= from.Si && farthest <= to.Si) ? null : new MeasuredEnd(
            $"{CornerNames.Of(end)}-{element}-sweep",
            FormattableString.Invariant($"The {CornerNames.Of(end)} wheels move {Numeral.Of(Quantities.In.Millimetres.Of(farthest), 0)} mm, past ")
            + FormattableString.Invariant(
                $"the end of the {element}'s sweep at {Numeral.Of(Quantities.In.Millimetres.Of(last), 0)} mm: its curve is ")
            + "taken on, which nobody measured.");
    }

    private static int[] Corners(AxleEnd end) => end == AxleEnd.Front ? [0, 1] : [2, 3];

    private static double[] Along(Pass pass, int i, double share) =>
        [.. pass.Travel(i).Zip(pass.Travel(i ^ 1), (own, other) => (share * own) + ((1.0 - share) * other))];

    private static IReadOnlyList<double> Rates(Pass pass, int i) => pass.Trace(RideSignal.TravelRate(pass.Model, i));
}
