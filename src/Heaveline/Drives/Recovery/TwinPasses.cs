using Heaveline.Cars;
using Heaveline.Drives.Identification;
using Heaveline.Models;
using Heaveline.Roads;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// The passes of a twin: the recovered humps on rough roads of the roughness found, two tracks, at the speeds found, with the noise found; the same
/// roads and noise for every car, several times over.
/// </summary>
internal sealed class TwinPasses
{
    // Time from a car's start to the hump, in which its start dies away, s; less than the window begins before it.
    private const double Lead = 2.2;

    // The roughness grows from level over this distance, m.
    private const double Grows = 3.0;

    private readonly CarFromDrive found;
    private readonly IReadOnlyList<DriveWindow> windows;
    private readonly double[] speeds;
    private readonly double phoneLeft;
    private readonly RoughTracks[] rough;
    private readonly string[] sites;
    private readonly double[][] humps;
    private PassWindows[] laps;

    /// <param name="car">The car, whose tracks the roads have.</param>
    /// <param name="found">The car identified from the drive.</param>
    /// <param name="windows">Its windows.</param>
    /// <param name="phoneLeft">Where the phone lay left of the middle, m.</param>
    /// <param name="times">How many times over.</param>
    /// <param name="stop">Stops it.</param>
    public TwinPasses(Car car, CarFromDrive found, IReadOnlyList<DriveWindow> windows, double phoneLeft, int times, CancellationToken stop)
    {
        (this.found, this.windows, this.phoneLeft) = (found, windows, phoneLeft);
        var track = car.Kind == VehicleKind.Car ? 0.5 * (car.Front.Track.Si + car.Rear.Track.Si) : 0.0;
        speeds = [.. windows.Select(w => Speed(found, w))];
        rough = [.. Enumerable.Range(0, times).Select(lap => RoughTracks.Of(found.Roughness, track, 7919UL * (ulong)(lap + 1), stop))];
        sites = [.. found.Splines.Select(s => s.Site)];
        humps = [.. found.Splines.Select(s => found.Mean.Slice(s.At, s.Splines.Count).ToArray())];
        laps = Laid(stop);
    }

    /// <summary>Moves the humps by what the estimator saw of them too little or too much: it is to see those that it saw on the drive.</summary>
    /// <param name="seen">The splines of a site as the estimator saw them on these passes; null where it did not.</param>
    /// <param name="stop">Stops it.</param>
    public void Correct(Func<string, double[]?> seen, CancellationToken stop)
    {
        for (var h = 0; h < humps.Length; h++)
        {
            if (seen(sites[h]) is { } there)
            {
                for (var j = 0; j < humps[h].Length; j++)
                {
                    humps[h][j] += found.Mean[found.Splines[h].At + j] - there[j];
                }
            }
        }

        laps = Laid(stop);
    }

    /// <summary>In which windows a car's wheels stay on the road, on the first lap.</summary>
    public bool[] Holds(RideModel model, CancellationToken stop) => laps[0].Holds(model, stop);

    /// <summary>The windows of a car; null where a pass left the range of its model.</summary>
    /// <param name="lap">Which time over.</param>
    /// <param name="model">Car and load.</param>
    /// <param name="stop">Stops it.</param>
    public DriveWindow[]? Of(int lap, RideModel model, CancellationToken stop) => laps[lap].Of(model, stop);

    private static double Speed(CarFromDrive found, DriveWindow window) =>
        found.Windows.FirstOrDefault(f => f.Event == window.Event && f.Site == window.Site && window.Event != 0)?.Speed ?? window.Speed;

    private PassWindows[] Laid(CancellationToken stop) => [.. rough.Select((tracks, lap) =>
    {
        var place = 0;
        var passes = new (Road, double, DriveWindow)[windows.Count];
        for (var w = 0; w < windows.Count; w++)
        {
            passes[w] = (RoadOf(windows[w], speeds[w], tracks, ref place, stop), speeds[w], windows[w]);
        }

        return new PassWindows(passes, Lead)
        {
            Phone = (found.Mean[CarParameter.Phone], phoneLeft),
            VerticalNoise = Math.Sqrt(0.5 * found.VerticalNoise * windows[0].Rate),
            PitchNoise = Math.Sqrt(0.5 * found.PitchNoise * windows[0].Rate),
            Seed = 104729UL * (ulong)(lap + 1),
        };
    })];

    private Road RoadOf(DriveWindow window, double speed, RoughTracks tracks, ref int place, CancellationToken stop)
    {
        var after = (window.Vertical.Length / window.Rate) - window.Before;
        var from = (0.2 - Lead) * speed;
        var count = (int)Math.Ceiling((((after + 0.3) * speed) - from) / RoughTracks.Spacing);
        var (left, right) = (new double[count], new double[count]);
        var hump = Array.IndexOf(sites, window.Site);
        for (var i = 0; i < count; i++)
        {
            var x = from + (i * RoughTracks.Spacing);
            var u = Math.Clamp((x - from) / Grows, 0.0, 1.0);
            var share = u * u * (3.0 - (2.0 * u));
            var (l, r) = tracks.At(place + i);
            var height = hump < 0 ? 0.0 : Height(hump, x);
            (left[i], right[i]) = ((share * l) + height, (share * r) + height);
        }

        place += count;
        return SampledRoad.Of(window.Site ?? "rough road", from, RoughTracks.Spacing, left, right, null, stop);
    }

    private double Height(int hump, double x)
    {
        var splines = found.Splines[hump].Splines;
        var first = Math.Max(0, (int)Math.Floor(((x - splines.First) / splines.Spacing) - 2.0));
        var last = Math.Min(splines.Count - 1, first + 4);
        var sum = 0.0;
        for (var j = first; j <= last; j++)
        {
            sum += humps[hump][j] * splines.At(j, x);
        }

        return sum;
    }
}
