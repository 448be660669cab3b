using System.Collections.Immutable;
using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Figures;

/// <summary>Hit and settling as shaded spans of time, and the time axis they lie on.</summary>
internal static class EventBands
{
    /// <summary>What the two words mean, for captions.</summary>
    public const string Meaning =
        "The hit lasts from the first touch in front until the rear has left the obstacle; what follows is the settling, its first second shaded.";

    /// <summary>Both spans of a pass over an obstacle; none on another road.</summary>
    public static ImmutableArray<Band> Of(PassMeasures measures) =>
        measures.Pitch is { Hit: { } hit, Settling: { } settling }
            ?
            [
                new Band { From = hit.Window.From, To = hit.Window.To, Label = "hit", Shade = BandShade.Grey },
                new Band { From = settling.Window.From, To = settling.Window.To, Label = "settling: first second", Shade = BandShade.LightGrey },
            ]
            : [];

    /// <summary>
    /// The time axis of one or several passes: until the rear has left the road or its obstacle and every body has come to rest.
    /// </summary>
    public static Axis TimeOf(params IReadOnlyList<Pass> passes) => new()
    {
        Label = passes[0].Road.Event is null
            ? "time since the front wheel centre reached the road's beginning"
            : "time since the front wheel centre reached the obstacle",
        Unit = "s",
        From = passes.Min(pass => pass.Time[0]),
        To = passes.Max(End),
    };

    // Past the moment after which both ends of the body stay within 2 % of their peaks, and past the
    // settling's first second, there is nothing to see.
    private static double End(Pass pass)
    {
        var shown = pass.RearLeaves + (pass.Road.Event is null ? 0.0 : PitchSettling.Second);
        return Math.Min(pass.Time[^1], Math.Max(shown, Math.Max(AtRest(pass.Time, pass.FrontHeight), AtRest(pass.Time, pass.RearHeight))) + 0.2);
    }

    // A measured road, a ramp or a step leaves the body at another height than it began.
    private static double AtRest(ImmutableArray<double> time, ImmutableArray<double> height)
    {
        var (limit, rest) = (0.02 * height.Max(Math.Abs), height[^1]);
        var last = height.Length - 1;
        while (last > 0 && !(Math.Abs(height[last] - rest) > limit))
        {
            last--;
        }

        return time[last];
    }
}
