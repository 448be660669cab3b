using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Figures;

/// <summary>
/// Curves of the wheels: one for an axle whose sides move alike, else left and right apart. Front and rear keep their ink through all panels.
/// </summary>
internal static class WheelTraces
{
    // Half the usual line: four tyre loads at the wheels' own frequency stay apart where a lane of 100 mm holds 20 swings (judged by eye, no source).
    private const double Thin = 0.55;

    /// <summary>What the front end is drawn with.</summary>
    public static Pen Front => Pen.Of(Ink.First);

    /// <summary>What the rear end is drawn with.</summary>
    public static Pen Rear => Pen.Of(Ink.Second);

    /// <summary>Curves of a quantity of the four corners, in the unit of the axis.</summary>
    /// <param name="pass">The pass.</param>
    /// <param name="corner">The quantity at corner 0 to 3.</param>
    /// <param name="apart">Sides that never differ by more than this are one curve, the mean of both.</param>
    public static ImmutableArray<Trace> Of(Pass pass, Func<int, double[]> corner, double apart) =>
        [.. FrontOf(pass, corner, apart), .. AxleOf(pass, corner, 2, "rear", Rear, apart)];

    /// <summary>Curves of the front wheels only.</summary>
    public static ImmutableArray<Trace> FrontOf(Pass pass, Func<int, double[]> corner, double apart) =>
        [.. AxleOf(pass, corner, 0, "front", Front, apart)];

    /// <summary>Whether a road is rough all along: four wheels on it are a thicket of curves, which calls for thin lines.</summary>
    public static bool Thicket(Pass pass) => pass.Road.Kind is not (RoadKind.Flat or RoadKind.Obstacle or RoadKind.Sine);

    /// <summary>Where the stops touch, mm of wheel travel from the reference state; stops that touch alike share a line.</summary>
    public static ImmutableArray<Limit> StopsOf(RideModel model) => [.. StopsOf(model.BumpTouch, "bump"), .. StopsOf(model.ReboundTouch, "rebound")];

    private static IEnumerable<Trace> AxleOf(Pass pass, Func<int, double[]> corner, int first, string name, Pen pen, double apart)
    {
        pen = Thicket(pass) ? pen with { Width = Thin } : pen;
        var left = corner(first);
        if (!pass.Model.Rolls)
        {
            yield return Trace.From(name, pass.Time.AsSpan(), left, pen);
            yield break;
        }

        var right = corner(first + 1);
        if (left.Zip(right, (l, r) => Math.Abs(l - r)).Max() <= apart)
        {
            yield return Trace.From(name, pass.Time.AsSpan(), [.. left.Zip(right, (l, r) => 0.5 * (l + r))], pen);
            yield break;
        }

        yield return Trace.From(CornerNames.Of(first, hasSides: true), pass.Time.AsSpan(), left, pen);
        yield return Trace.From(CornerNames.Of(first + 1, hasSides: true), pass.Time.AsSpan(), right, pen with { Dash = Dash.Dashed });
    }

    private static IEnumerable<Limit> StopsOf(IReadOnlyList<double> touch, string kind)
    {
        var (front, rear) = (touch[0], touch[2]);
        if (double.IsFinite(front) && double.IsFinite(rear) && Math.Abs(front - rear) < 1e-6)
        {
            yield return new Limit { At = In.Millimetres.Of(front), Label = $"{kind} stops" };
            yield break;
        }

        if (double.IsFinite(front))
        {
            yield return new Limit { At = In.Millimetres.Of(front), Label = $"front {kind} stop", End = AxleEnd.Front };
        }

        if (double.IsFinite(rear))
        {
            yield return new Limit { At = In.Millimetres.Of(rear), Label = $"rear {kind} stop", End = AxleEnd.Rear };
        }
    }
}
