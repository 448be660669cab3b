using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Studies;

/// <summary>The numbers of one pass or of several side by side.</summary>
public static class PassTable
{
    /// <summary>The table.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="columns">Headings.</param>
    /// <param name="passes">Passes with their numbers, a column each.</param>
    public static FactTable Of(string title, IReadOnlyList<string> columns, IReadOnlyList<(Pass Pass, PassMeasures Measures)> passes)
    {
        IEnumerable<double?> All(Func<PassMeasures, double?> of) => passes.Select(p => of(p.Measures));
        var table = new FactTable(title, columns)
            .Add("speed", "speed", "km/h", "F0", passes.Select(p => (double?)(3.6 * p.Pass.Speed)))
            .Add("recorded", "recorded", "s", "F2", passes.Select(p => (double?)(p.Pass.Time[^1] - p.Pass.Time[0])))
            .Add("settling-rms-pitch", "settling: RMS pitch, first second", "°", "F3", All(m => Degrees(m.Pitch.Settling?.RmsAngle)))
            .Add("settling-peak-pitch", "settling: greatest pitch, first second", "°", "F2", All(m => Degrees(m.Pitch.Settling?.PeakAngle)))
            .Add("settling-late-pitch", "settling: late pitch, after 0.8 s", "° s½", "F3", All(m => Degrees(m.Pitch.Settling?.LateAngle)))
            .Add("settling-share", "settling: pitch share", "–", "F2", All(m => m.Pitch.Settling?.Share))
            .Add("settling-time", "settling: time to a tenth of the peak (staircase)", "s", "F2", All(m => m.Pitch.Settling?.TimeFromRear))
            .Add("settling-cycles", "settling: cycles", "–", "F1", All(m => m.Pitch.Settling?.Cycles))
            .Add("hit-peak-pitch", "hit: greatest pitch", "°", "F2", All(m => Degrees(m.Pitch.Hit?.PeakAngle)))
            .Add("hit-peak-pitch-rate", "hit: greatest pitch rate", "°/s", "F1", All(m => Degrees(m.Pitch.Hit?.PeakRate)))
            .Add("hit-peak-pitch-acceleration", "hit: greatest pitch acceleration", "rad/s²", "F2", All(m => m.Pitch.Hit?.PeakAcceleration))
            .Add("rms-pitch", "whole record: RMS pitch", "°", "F3", All(m => Degrees(m.Pitch.RmsAngle)))
            .Add("rms-pitch-acceleration", "whole record: RMS pitch acceleration", "rad/s²", "F3", All(m => m.Pitch.RmsAcceleration))
            .Add("pitch-share", "whole record: pitch share", "–", "F2", All(m => m.Pitch.Share))
            .Add("rms-heave-acceleration", "whole record: RMS heave acceleration", "m/s²", "F2", All(m => m.RmsHeaveAcceleration))
            .Add("peak-roll", "greatest roll", "°", "F2", All(m => m.PeakRoll > 1e-9 ? Degrees(m.PeakRoll) : null));
        foreach (var seat in passes[0].Measures.Seats.Select(s => s.Seat))
        {
            SeatMeasures? At(PassMeasures m) => m.Seats.FirstOrDefault(s => s.Seat == seat);
            var key = seat.Replace(' ', '-');
            table
                .Add($"{key}-peak-vertical", $"{seat}: greatest vertical", "m/s²", "F2", All(m => At(m)?.PeakVertical))
                .Add($"{key}-rms-vertical", $"{seat}: RMS vertical", "m/s²", "F2", All(m => At(m)?.RmsVertical))
                .Add($"{key}-peak-head", $"{seat}: greatest fore-aft at the head", "m/s²", "F2", All(m => At(m)?.PeakHeadForeAft));
        }

        foreach (var (name, key, wheels) in Wheels(passes))
        {
            WheelMeasures? At(PassMeasures m) => m.Wheels.FirstOrDefault(w => w.Wheel == wheels);
            table
                .Add($"{key}-bump", $"{name}: most bump travel", "mm", "F0", All(m => 1e3 * At(m)?.Bump))
                .Add($"{key}-bump-margin", $"{name}: left to the bump stop", "mm", "F0", All(m => 1e3 * At(m)?.BumpMargin))
                .Add($"{key}-rebound-margin", $"{name}: left to the rebound stop", "mm", "F0", All(m => 1e3 * At(m)?.ReboundMargin))
                .Add($"{key}-least-load", $"{name}: least tyre load", "% of static", "F0", All(m => 100.0 * At(m)?.LeastLoad / At(m)?.StaticLoad))
                .Add($"{key}-load-variation", $"{name}: RMS change of tyre load", "% of static", "F0", All(m => 100.0 * At(m)?.LoadVariation))
                .Add($"{key}-lift-off", $"{name}: off the road", "s", "F2", All(m => At(m)?.LiftOff is > 0.0 and var t ? t : null));
        }

        return table
            .Add("lamp-highest", "beam drop at its highest", "%", "F2", All(m => 100.0 * m.Headlamp?.Highest))
            .Add("lamp-lowest", "beam drop at its lowest", "%", "F2", All(m => 100.0 * m.Headlamp?.Lowest))
            .Add("lamp-flash-share", "beam in an oncoming eye at 1.20 m, 50 m off", "% of time", "F0", passes.Select(p => Flash(p.Pass) is { } f ? 100.0 * f.Share : (double?)null))
            .Add("lamp-flashes", "flashes it gives there", "–", "F0", passes.Select(p => (double?)Flash(p.Pass)?.Flashes))
            .Add("error-pitch", "own error of the pitch angle", "% of its peak", "0.0000", passes.Select(p => 100.0 * p.Pass.Statistics.PitchError))
            .Add("error-load", "own error of the tyre load", "% of its peak", "0.0000", passes.Select(p => 100.0 * p.Pass.Statistics.TyreLoadError));
    }

    // Where left and right do the same in every column, one row per axle says it.
    private static IEnumerable<(string Name, string Key, string Wheel)> Wheels(IReadOnlyList<(Pass Pass, PassMeasures Measures)> passes)
    {
        var names = passes[0].Measures.Wheels.Select(w => w.Wheel).ToList();
        if (names.Count == 4 && passes.All(p => p.Measures.Wheels.Count == 4 && Alike(p.Measures.Wheels[0], p.Measures.Wheels[1]) && Alike(p.Measures.Wheels[2], p.Measures.Wheels[3])))
        {
            return [("front wheels", "front", names[0]), ("rear wheels", "rear", names[2])];
        }

        return names.Select(n => (n, n.Replace(' ', '-'), n));
    }

    private static bool Alike(WheelMeasures a, WheelMeasures b) =>
        Math.Abs(a.Bump - b.Bump) < 1e-9 && Math.Abs(a.Rebound - b.Rebound) < 1e-9 && Math.Abs(a.LeastLoad - b.LeastLoad) < 1e-3;

    // What somebody coming the other way gets of the dipped beam.
    private static HeadlampFlash? Flash(Pass pass) => pass.Outcome == PassOutcome.Completed && HeadlampFlash.Of(pass, [50.0]) is [var at] ? at : null;

    private static double? Degrees(double? rad) => rad * 180.0 / Math.PI;
}
