using System.Collections.Immutable;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Web.Pages.Passes;

/// <summary>A moment of a crossing that is worth a picture of its own, found in the pitch curve.</summary>
/// <param name="Time">When it is, s.</param>
/// <param name="Words">What is seen then.</param>
/// <param name="Size">How far it lies nose up or down, degrees as printed; null where the words name none.</param>
internal sealed record PassPhase(double Time, string Words, string? Size = null)
{
    /// <summary>How many there are of each crossing.</summary>
    public const int Count = 6;

    // Judged by eye: a swing smaller than a twelfth of the largest is no phase of its own, and nothing below a twentieth is seen any more.
    private const double Least = 1.0 / 12.0;
    private const double Still = 1.0 / 20.0;

    // A tenth of a degree between two states cannot be seen in the picture.
    private static readonly double Visible = In.Degrees.ToSi(0.1);

    /// <summary>
    /// The phases: where the front wheels meet the obstacle, four nods that follow each other, to one side and the other by turns, and when it is
    /// nearly still. A crossing with fewer nods has moments of coming to rest instead, one that breaks off moments on the way.
    /// </summary>
    public static IReadOnlyList<PassPhase> Of(Pass pass)
    {
        var (time, pitch) = (pass.Time, pass.Pitch);
        var (from, to) = (Math.Clamp(0.0, time[0], time[^1]), time[^1]);
        var largest = pitch.Select(Math.Abs).Max();
        var last = Enumerable.Range(0, pass.Count).LastOrDefault(k => Math.Abs(pitch[k]) > Still * largest);
        var still = last >= pass.Count - 2 || largest <= 0.0 ? to : time[last];
        List<PassPhase> phases =
        [
            new(from, pass.Road.Event is null ? "setting off" : "meets it"),
            .. Nods(pass).Select(nod => new PassPhase(nod.Time, Nod(nod.Pitch), Degrees(nod.Pitch))),
        ];
        // What breaks off comes to no rest.
        var (isWhole, missing) = (pass.Outcome == PassOutcome.Completed, Count - 1 - phases.Count);
        var after = phases[^1].Time;
        phases.AddRange(Enumerable.Range(1, missing).Select(i => after + (i * (still - after) / (missing + 1)))
            .Select(at => largest > 0.0
                ? new PassPhase(at, $"{(isWhole ? "coming to rest" : "on the way")} {Degrees(At(pass, pitch, at))}°", Degrees(At(pass, pitch, at)))
                : new PassPhase(at, "level")));
        phases.Add(new(Math.Max(still, phases[^1].Time), !isWhole ? "breaks off" : still < to ? "nearly still" : "at the end"));
        return phases;
    }

    /// <summary>
    /// Four nods that follow each other, the largest among them: when, s, and how far, rad, nose-down positive. Each is the farthest of a half-swing,
    /// from level to level; what is too small to be one parts no two of its neighbours, and the farther of these stands for both.
    /// </summary>
    public static IReadOnlyList<(double Time, double Pitch)> Nods(Pass pass)
    {
        var (time, pitch) = (pass.Time, pass.Pitch);
        var from = Math.Clamp(0.0, time[0], time[^1]);
        var largest = pitch.Select(Math.Abs).Max();
        var nods = new List<int>();
        foreach (var k in Enumerable.Range(1, Math.Max(0, pass.Count - 2))
            .Where(k => time[k] > from && Math.Abs(pitch[k]) > Least * largest && (pitch[k] - pitch[k - 1]) * (pitch[k + 1] - pitch[k]) <= 0.0))
        {
            if (nods.Count == 0 || Math.Sign(pitch[nods[^1]]) != Math.Sign(pitch[k]))
            {
                nods.Add(k);
            }
            else if (Math.Abs(pitch[k]) > Math.Abs(pitch[nods[^1]]))
            {
                nods[^1] = k;
            }
        }

        // From the first on; a largest one that comes later is the last.
        var first = nods.Count == 0 ? 0 : Math.Max(0, nods.IndexOf(nods.MaxBy(k => Math.Abs(pitch[k]))) - (Count - 3));
        return [.. nods.Skip(first).Take(Count - 2).Select(k => (time[k], pitch[k]))];
    }

    /// <summary>
    /// Where the picture rests: at the largest difference in pitch between two crossings; at the largest pitch when there is one alone, or when no
    /// eye could tell the two apart.
    /// </summary>
    public static double Rest(Pass now, Pass? former)
    {
        var (time, pitch) = (now.Time, now.Pitch);
        var behind = former?.Pitch ?? [];
        double Apart(int k) => former is null ? 0.0 : Math.Abs(pitch[k] - At(former, behind, time[k]));
        var end = former?.Time[^1] ?? double.PositiveInfinity;
        var both = Enumerable.Range(0, now.Count).Where(k => time[k] <= end);
        var widest = both.MaxBy(Apart);
        return Apart(widest) > Visible ? time[widest] : time[Enumerable.Range(0, now.Count).MaxBy(k => Math.Abs(pitch[k]))];
    }

    private static string Nod(double pitch) => pitch <= 0.0 ? $"nose up {Degrees(pitch)}°" : $"tail up {Degrees(pitch)}°";

    private static string Degrees(double pitch) => Numeral.Of(In.Degrees.Of(Math.Abs(pitch)), 1);

    // Between samples by a straight line.
    private static double At(Pass pass, ImmutableArray<double> pitch, double at)
    {
        var place = Math.Clamp((at - pass.Time[0]) / pass.SampleStep, 0.0, pass.Count - 1);
        var k = Math.Min((int)place, pass.Count - 2);
        return pitch[k] + ((place - k) * (pitch[k + 1] - pitch[k]));
    }
}
