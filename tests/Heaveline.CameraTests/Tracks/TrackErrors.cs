using Heaveline.Camera.Drawn;
using Heaveline.Films;

namespace Heaveline.CameraTests.Tracks;

/// <summary>
/// How far a track is off the truth: pitch, rad, and the heights of both wheels, m, root of the mean square. A straight line along the road is
/// taken off each:
/// a camera that is not level makes one, and level road tells it.
/// </summary>
internal readonly record struct TrackErrors(double Pitch, double Front, double Rear, double Scale, int Frames)
{
    public static TrackErrors Of(DrawnFilm film, FilmTrack track)
    {
        var wheelbase = film.Pass.Wheelbase;
        var seen = track.Frames.Where(f => f.Body is not null && f.Front is not null && f.Rear is not null).ToList();
        PicturePoint Still(FilmFrame f, SeenHub hub) => f.Camera?.Back(new(hub.X, hub.Y), track.Middle) ?? new(hub.X, hub.Y);
        var scale = seen.Average(f =>
        {
            var (a, b) = (Still(f, f.Front!.Value), Still(f, f.Rear!.Value));
            return Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y))) / wheelbase;
        });
        var nose = track.GoesRight ? 1.0 : -1.0;
        var now = seen.ConvertAll(f => film.Pass.At(film.From + f.Time + (f.Front!.Value.Y * track.RowTime)));
        double[] times = [.. seen.Select(f => f.Time)];
        return new TrackErrors(
            Rms(times, [.. seen.Select((f, k) => (nose * (f.Body!.Turn - (f.Camera?.Turn ?? 0.0))) - now[k].Pitch(wheelbase))]),
            Rms(times, [.. seen.Select((f, k) => (-Still(f, f.Front!.Value).Y / scale) - now[k].FrontWheel)]),
            Rms(times, [.. seen.Select((f, k) => (-Still(f, f.Rear!.Value).Y / scale) - now[k].RearWheel)]),
            scale,
            seen.Count);
    }

    private static double Rms(double[] x, double[] y)
    {
        var (mx, my) = (x.Average(), y.Average());
        var slope = x.Zip(y).Sum(p => (p.First - mx) * (p.Second - my)) / x.Sum(v => (v - mx) * (v - mx));
        return Math.Sqrt(x.Zip(y).Average(p => Math.Pow(p.Second - my - (slope * (p.First - mx)), 2.0)));
    }
}
