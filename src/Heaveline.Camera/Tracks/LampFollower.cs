using Heaveline.Camera.Frames;
using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>
/// The brightness of an oncoming headlamp against time: what a window about the brightest spot holds above the dark round it. The lamp grows as it
/// comes nearer; other lamps are other spots, and the one that is followed is the nearest to where it was.
/// </summary>
internal static class LampFollower
{
    // A pixel as bright as this is at its end: what is above it is not seen.
    private const double Full = 250.0;

    // Share of the lamp's pixels at their end from which on a frame is cut off.
    private const double CutOff = 0.3;

    // A lamp is marked where it is so bright; a lamp that was found is followed as far down as it stands out of what is round it.
    private const double Bright = 60.0;
    private const double Dim = 20.0;
    private const double Above = 8.0;

    /// <summary>Follows it.</summary>
    /// <param name="film">The film.</param>
    /// <param name="lamp">Where the lamp is, px.</param>
    /// <param name="time">When it is there, s after the first frame.</param>
    /// <param name="progress">Is told the share that is done.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="FilmRefusedException">There is no lamp there.</exception>
    public static LampTrack Follow(
        IPictures film, PicturePoint lamp, double time, IProgress<double>? progress = null, CancellationToken stop = default)
    {
        if (!(lamp.X >= 0.0 && lamp.Y >= 0.0 && lamp.X < film.Width && lamp.Y < film.Height))
        {
            throw new FilmRefusedException("The lamp is marked outside the picture.", "Mark it where it is seen, in pixels of the film itself.");
        }

        var half = Math.Max(12, film.Width / 40);
        using var marked = FilmFollower.Marked(film, time, null, stop, out var index);
        if (Spot(marked, lamp, half, Bright) is not { } begin)
        {
            throw new FilmRefusedException("No lamp shines where it is marked.", "Mark the lamp in a frame in which it is bright, at night.");
        }

        // Back from the mark too: the film is read once, so all bright spots of the frames before are kept, and the chain is followed back.
        var (times, values, cut) = (new List<double>(), new List<double>(), 0);
        var spots = new List<List<(PicturePoint At, double Light, double Share)>>();
        foreach (var picture in film.Pictures(stop))
        {
            times.Add(picture.Time);
            spots.Add(Spots(picture.Grey, half, Dim));
            progress?.Report(Math.Clamp(picture.Index / (double)Math.Max(film.About ?? 600, picture.Index + 1), 0.0, 1.0));
        }

        var light = new (double Light, double Share)?[spots.Count];
        foreach (var direction in new[] { 1, -1 })
        {
            var at = begin;
            for (var k = Math.Min(index, spots.Count - 1); k >= 0 && k < spots.Count; k += direction)
            {
                var near = spots[k].Where(s => Gap(s.At, at) < 1.5 * half).OrderBy(s => Gap(s.At, at)).ToList();
                if (near.Count > 0)
                {
                    at = near[0].At;
                    light[k] = (near[0].Light, near[0].Share);
                }
                else
                {
                    // The beam's edge has sunk below the camera, or the lamp is as dim as the noise: how dark it was is not seen.
                    light[k] = (0.0, 0.0);
                }
            }
        }

        var start = times[0];
        var (even, last) = (new List<double>(), double.NegativeInfinity);
        for (var k = 0; k < light.Length; k++)
        {
            if (times[k] > last)
            {
                even.Add(times[k] - start);
                values.Add(light[k]!.Value.Light);
                cut += light[k]!.Value.Share > CutOff ? 1 : 0;
                last = times[k];
            }
        }

        return new LampTrack { Times = [.. even], Brightness = [.. values], Saturated = cut / (double)values.Count };
    }

    private static double Gap(PicturePoint a, PicturePoint b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));

    private static PicturePoint? Spot(Mat frame, PicturePoint near, int half, double least)
    {
        var best = Spots(frame, half, least).Where(s => Gap(s.At, near) < 2.0 * half).OrderBy(s => Gap(s.At, near)).ToList();
        return best.Count > 0 ? best[0].At : null;
    }

    // Bright spots, brightest first, each with what its window holds above its own edge.
    private static List<(PicturePoint At, double Light, double Share)> Spots(Mat frame, int half, double least)
    {
        const int most = 12;
        var spots = new List<(PicturePoint, double, double)>();
        using var soft = new Mat();
        Cv2.GaussianBlur(frame, soft, default, Math.Max(1.5, half / 8.0));
        for (var n = 0; n < most; n++)
        {
            Cv2.MinMaxLoc(soft, out _, out var value, out _, out var at);
            if (value < least)
            {
                break;
            }

            var window = new Rect(at.X - half, at.Y - half, (2 * half) + 1, (2 * half) + 1) & new Rect(0, 0, frame.Cols, frame.Rows);
            using var part = frame[window];
            using var edge = new Mat();
            part.CopyTo(edge);
            Cv2.Rectangle(edge, new Rect(2, 2, Math.Max(1, window.Width - 4), Math.Max(1, window.Height - 4)), Scalar.All(0), -1);
            var border = Math.Max(1, (window.Width * window.Height) - (Math.Max(1, window.Width - 4) * Math.Max(1, window.Height - 4)));
            var dark = Cv2.Sum(edge).Val0 / border;
            var light = Cv2.Sum(part).Val0 - (dark * window.Width * window.Height);
            if (value < Bright && value - dark < Above)
            {
                // As bright as what is round it.
                Cv2.Rectangle(soft, window, Scalar.All(0), -1);
                continue;
            }

            using var lit = new Mat();
            Cv2.Threshold(part, lit, Bright, 1.0, ThresholdTypes.Binary);
            using var ends = new Mat();
            Cv2.Threshold(part, ends, Full - 1.0, 1.0, ThresholdTypes.Binary);
            spots.Add((
                new PicturePoint(at.X, at.Y), Math.Max(0.0, light), Cv2.Sum(ends).Val0 / Math.Max(1.0, Cv2.Sum(lit).Val0)));
            Cv2.Rectangle(soft, window, Scalar.All(0), -1);
        }

        return spots;
    }
}
