using System.Globalization;
using Heaveline.Camera.Frames;
using Heaveline.Passes;

namespace Heaveline.Camera.Drawn;

/// <summary>Writes a drawn film as a phone would: raw frames to FFmpeg, which compresses them.</summary>
internal static class FilmWriter
{
    /// <summary>Writes it.</summary>
    /// <param name="film">The film.</param>
    /// <param name="path">Where to; an mp4.</param>
    /// <param name="quality">How coarse it may be: 18 hardly seen, 23 usual, 28 seen.</param>
    /// <param name="preset">How long x264 may think.</param>
    /// <param name="slowedTo">Frames a second that the file claims, as slow motion does; null: those of the film.</param>
    /// <param name="stop">Stops it.</param>
    public static void Write(
        DrawnFilm film, string path, int quality = 23, string preset = "veryfast", double? slowedTo = null, CancellationToken stop = default)
    {
        var rate = (slowedTo ?? film.Clock.Rate).ToString(CultureInfo.InvariantCulture);
        string[] stamps = slowedTo is null && (film.Clock.Uneven > 0.0 || film.Clock.HalvedFrom is not null)
            ? ["-vf", film.Clock.Stamps, "-fps_mode", "passthrough", "-enc_time_base", "1:90000"] : [];
        using var ffmpeg = FilmPrograms.Encode(
            [
                "-f", "rawvideo", "-pix_fmt", "gray", "-s", string.Create(CultureInfo.InvariantCulture, $"{film.Width}x{film.Height}"), "-r",
                    rate, "-i", "-",
                .. stamps, "-c:v", "libx264", "-preset", preset, "-crf", quality.ToString(CultureInfo.InvariantCulture), "-pix_fmt", "yuv420p", path,
            ]);
        var said = ffmpeg.StandardError.ReadToEndAsync(CancellationToken.None);
        using var stopping = stop.Register(ffmpeg.Kill);
        try
        {
            foreach (var picture in film.Pictures(stop))
            {
                ffmpeg.StandardInput.BaseStream.Write(picture.Grey.AsSpan<byte>());
            }

            ffmpeg.StandardInput.Close();
        }
        catch (IOException)
        {
            // It has ended before the film has, and says why.
        }

        ffmpeg.WaitForExit();
        stop.ThrowIfCancellationRequested();
        if (ffmpeg.ExitCode != 0)
        {
            throw new RunFailedException(
                $"The film {path} could not be written ({said.GetAwaiter().GetResult().Trim()}).", "FFmpeg with x264 writes it: look at the folder.");
        }
    }
}
