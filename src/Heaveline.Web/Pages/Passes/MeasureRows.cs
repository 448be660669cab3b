using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Web.Pages.Passes;

/// <summary>The measures that the page sets side by side: hit and settling apart, then what they cost.</summary>
internal static class MeasureRows
{
    private const double Degrees = 180.0 / Math.PI;

    /// <summary>The rows.</summary>
    public static IReadOnlyList<MeasureRow> Of(Crossing now, Crossing? former)
    {
        var rows = new List<MeasureRow>();
        void Add(string key, string group, string label, string unit, string format, Func<Crossing, double?> of, int wanted)
        {
            var after = Kept(now, of);
            var before = former is null ? null : Kept(former, of);
            if (after is not null || before is not null)
            {
                rows.Add(new MeasureRow(key, group, label, unit, format, before, after, wanted));
            }
        }

        if (now.Pass.Road.Event is not null)
        {
            Add("hit-peak-pitch", "hit", "greatest pitch", "°", "F2", c => Degrees * c.Measures.Pitch.Hit?.PeakAngle, -1);
            Add("hit-peak-pitch-acceleration", "hit", "greatest pitch acceleration", "rad/s²", "F2", c => c.Measures.Pitch.Hit?.PeakAcceleration, -1);
            Add("settling-rms-pitch", "settling", "RMS pitch in the first second", "°", "F3", c => Degrees * c.Measures.Pitch.Settling?.RmsAngle, -1);
            Add("settling-peak-pitch", "settling", "greatest pitch in the first second", "°", "F2", c => Degrees * c.Measures.Pitch.Settling?.PeakAngle, -1);
            Add("settling-late-pitch", "settling", "late pitch, after 0.8 s", "° s½", "F3", c => Degrees * c.Measures.Pitch.Settling?.LateAngle, -1);
        }
        else
        {
            Add("rms-pitch", "whole crossing", "RMS pitch", "°", "F3", c => Degrees * c.Measures.Pitch.RmsAngle, -1);
            Add("rms-pitch-acceleration", "whole crossing", "RMS pitch acceleration", "rad/s²", "F3", c => c.Measures.Pitch.RmsAcceleration, -1);
        }

        Add("rms-heave-acceleration", "price", "RMS heave acceleration", "m/s²", "F2", c => c.Measures.RmsHeaveAcceleration, -1);
        Add("front-bump-margin", "price", "front, left to the bump stop (below 0: pressed)", "mm", "F0", c => 1e3 * Margin(c, "front"), +1);
        Add("rear-bump-margin", "price", "rear, left to the bump stop (below 0: pressed)", "mm", "F0", c => 1e3 * Margin(c, "rear"), +1);
        Add("front-least-load", "price", "front, least tyre load", "% of standing", "F0", c => 100.0 * LeastLoad(c, "front"), +1);
        Add("rear-least-load", "price", "rear, least tyre load", "% of standing", "F0", c => 100.0 * LeastLoad(c, "rear"), +1);
        Add("lamp-highest", "price", "drop of the dipped beam at its highest", "%", "F2", c => 100.0 * c.Measures.Headlamp?.Highest, +1);
        return rows;
    }

    private static double? Kept(Crossing crossing, Func<Crossing, double?> of) => crossing.Pass.Outcome == PassOutcome.Completed ? of(crossing) : null;

    private static double? Margin(Crossing crossing, string end) => Axle(crossing, end).Min(wheel => wheel.BumpMargin);

    private static double? LeastLoad(Crossing crossing, string end) => Axle(crossing, end).Min(wheel => wheel.LeastLoad / wheel.StaticLoad);

    private static IEnumerable<WheelMeasures> Axle(Crossing crossing, string end) => crossing.Measures.Wheels.Where(wheel => wheel.Wheel.StartsWith(end, StringComparison.Ordinal));
}
