using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text.Json.Nodes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Web.Charts;

namespace Heaveline.Web.Pages.Passes;

/// <summary>One picture of the page for its script: what there is as JSON, every number in one block of single precision behind it.</summary>
/// <param name="Structure">Charts, scene, words beside sliders, time it took.</param>
/// <param name="Numbers">
/// Little-endian single-precision numbers: the charts' first, then the motion now, the former motion, the road. Empty when a value was refused.
/// </param>
public sealed record PassFrame(string Structure, byte[] Numbers)
{
    /// <summary>A frame of a view.</summary>
    /// <param name="view">The view.</param>
    /// <param name="units">The reader's units.</param>
    /// <param name="road">The road that the script has already; it is sent again only when it is another.</param>
    /// <param name="clock">Runs since the computing began.</param>
    /// <param name="lines">Where the sliders stand, for a state at rest; while one is moved, the reader's own hand says it.</param>
    /// <param name="state">Number of a state at rest.</param>
    /// <param name="told">Number of the view: the page's words bear it once they are of it.</param>
    internal static PassFrame Of(
        PassView view, ReaderUnits units, Road? road, Stopwatch clock, IEnumerable<SliderLine>? lines = null, int state = 0, int told = 0)
    {
        if (view.Now.Pass.Count < 2)
        {
            return Refused(null, units.Text(view.Now.Pass.OutcomeSentence), clock.Elapsed.TotalMilliseconds);
        }

        var sheet = ChartSheet.Of(PassCurves.Of(view.Now, view.Former, view.IsTurned).In(units));
        var former = view.Former is { Pass.Count: > 1 } other ? other : null;
        var motion = SceneMotion.Of(view.Now);
        var behind = former is null ? [] : SceneMotion.Of(former);
        var driven = view.Now.Pass.Road;
        var ground = ReferenceEquals(road, driven) ? null : SceneRoad.Of(driven.MetBy(view.Now.Model.Rolls));
        var scene = new JsonObject
        {
            ["now"] = SceneCar.Of(view.Now.Model),
            ["former"] = former is null ? null : SceneCar.Of(former.Model),
            ["formerName"] = former?.Name,
            ["turned"] = view.IsTurned,
            ["start"] = view.Now.Pass.Time[0],
            ["step"] = view.Now.Pass.SampleStep * SceneMotion.StrideOf(view.Now),
            ["samples"] = motion.Length / SceneMotion.PerSample,
            ["formerSamples"] = behind.Length / SceneMotion.PerSample,
            ["formerStart"] = former?.Pass.Time[0],
            ["speed"] = view.Now.Pass.Speed,
            ["height"] = driven.Event is null ? null : Math.Abs(ObstacleHeight.Of(driven)),
            ["road"] = ground is null
                ? null
                : new JsonObject
                {
                    ["from"] = ground.From,
                    ["step"] = ground.Step,
                    ["n"] = ground.Heights.Length,
                    ["far"] = ground.FarHeights.Length > 0,
                },
            ["phases"] = new JsonArray(
                [.. PassPhase.Of(view.Now.Pass).Select(phase => (JsonNode)new JsonArray(phase.Time, phase.Words, phase.Size))]),
            ["rest"] = PassPhase.Rest(view.Now.Pass, former?.Pass),
        };
        var notes = new JsonObject();
        foreach (var (key, text) in SettingNotes.Of(view))
        {
            notes[key] = units.Text(text);
        }

        var values = new JsonObject();
        foreach (var line in lines ?? [])
        {
            values[line.Key] = line.Text(line.Value);
        }

        // The number of a state at rest: what is recorded of it says which it belongs to.
        // The sheet's structure is JSON already: parsed and written again it would cost more than all the rest.
        var parts = $"\"charts\":{sheet.Structure},\"scene\":{scene.ToJsonString()},"
            + $"\"notes\":{notes.ToJsonString()},\"values\":{values.ToJsonString()},\"state\":{state},\"told\":{told}";
        var structure = FormattableString.Invariant($"{{{parts},\"compute\":{clock.Elapsed.TotalMilliseconds:F3}") + "}";
        return new PassFrame(
            structure,
            [
                .. sheet.Numbers,
                .. MemoryMarshal.AsBytes<float>(motion),
                .. MemoryMarshal.AsBytes<float>(behind),
                .. MemoryMarshal.AsBytes<float>(ground?.Heights ?? []),
                .. MemoryMarshal.AsBytes<float>(ground?.FarHeights ?? []),
            ]);
    }

    /// <summary>A frame that says why there is none: the picture before it stays.</summary>
    internal static PassFrame Refused(string? key, string sentence, double milliseconds) =>
        new(new JsonObject { ["refused"] = sentence, ["key"] = key, ["compute"] = milliseconds }.ToJsonString(), []);
}
