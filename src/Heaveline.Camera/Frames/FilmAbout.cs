using System.Globalization;
using System.Text.Json;

namespace Heaveline.Camera.Frames;

/// <summary>What a film says of itself, before a frame of it is read.</summary>
internal sealed record FilmAbout
{
    // A film says what it is in its first bytes, or in its last.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    // Frames a second of the sensor, as phones write it into slow motion.
    private const string SensorRate = "com.android.capture.fps";

    // Writers round the shape of a pixel: 1216:1215 is square.
    private const double Square = 0.002;

    /// <summary>Width of the picture as it is seen, pixels.</summary>
    public required int Width { get; init; }

    /// <summary>Height of the picture as it is seen, pixels.</summary>
    public required int Height { get; init; }

    /// <summary>How many frames it says it has; null where it says nothing.</summary>
    public required int? Frames { get; init; }

    /// <summary>How long it lasts, s; null where it says nothing.</summary>
    public required double? Duration { get; init; }

    /// <summary>The rate of the sensor that a phone writes into it over the mean rate at which it is played, as it stands there: whoever reads the
    /// pass judges whether that is slow motion. Null where none is written, or one that no film has.</summary>
    public double? PlayedSlower { get; init; }

    /// <summary>Asks the film.</summary>
    /// <param name="film">The film.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="FilmRefusedException">It is no film, has no picture, or one of pixels that are not square.</exception>
    public static FilmAbout Of(string film, CancellationToken stop = default)
    {
        using var probe = FilmPrograms.Probe(
            film,
            "-show_entries",
            "stream=codec_type,width,height,sample_aspect_ratio,nb_frames,duration,avg_frame_rate:stream_tags=rotate:stream_side_data=rotation"
                + $":stream_disposition=attached_pic:format=duration:format_tags={SensorRate}",
            "-of", "json");
        var (text, said) = Said(probe, film, stop);
        if (probe.ExitCode != 0)
        {
            throw new FilmRefusedException(
                $"{Path.GetFileName(film)} is no film that can be read ({LastLine(said, film)}).",
                "Give the film as the phone wrote it (mp4, mov, mkv, avi).");
        }

        using var read = JsonDocument.Parse(text);
        var root = read.RootElement;
        var streams = root.TryGetProperty("streams", out var all) ? all.EnumerateArray().ToList() : [];
        // A record's cover is a picture, not a film.
        var picture = streams.FirstOrDefault(s => Word(s, "codec_type") == "video"
            && !(s.TryGetProperty("disposition", out var d) && Number(d, "attached_pic") is > 0.0));
        if (picture.ValueKind == JsonValueKind.Undefined)
        {
            throw new FilmRefusedException($"{Path.GetFileName(film)} has no video track.", "Give the film itself, not its sound.");
        }

        if (Rate(Word(picture, "sample_aspect_ratio")?.Replace(':', '/')) is { } shape and > 0.0 && Math.Abs(shape - 1.0) > Square)
        {
            throw new FilmRefusedException(
                $"The pixels of {Path.GetFileName(film)} are not square ({Word(picture, "sample_aspect_ratio")}): "
                    + "heights and lengths have two scales.",
                "Write it anew with square ones: ffmpeg -i FILM -vf \"scale=iw*sar:ih,setsar=1\" SQUARE.mp4, and mark that.");
        }

        var (width, height) = ((int)(Number(picture, "width") ?? 0.0), (int)(Number(picture, "height") ?? 0.0));
        var turned = Turned(picture);
        var duration = Number(picture, "duration") ?? (root.TryGetProperty("format", out var format) ? Number(format, "duration") : null);
        var frames = Number(picture, "nb_frames") ?? (duration * Rate(Word(picture, "avg_frame_rate")));
        return new FilmAbout
        {
            Width = turned ? height : width,
            Height = turned ? width : height,
            Frames = frames is { } count and > 0.0 ? (int)Math.Round(count) : null,
            Duration = duration,
            PlayedSlower = Slower(root, Rate(Word(picture, "avg_frame_rate"))),
        };
    }

    private static double? Slower(JsonElement root, double? played)
    {
        if (!root.TryGetProperty("format", out var format) || !format.TryGetProperty("tags", out var tags)
            || Number(tags, SensorRate) is not { } taken || played is not > 0.0)
        {
            return null;
        }

        return taken / played.Value is var times and >= 0.1 and <= 100.0 ? times : null;
    }

    private static (string Text, string Errors) Said(System.Diagnostics.Process probe, string film, CancellationToken stop)
    {
        var (text, errors) = (probe.StandardOutput.ReadToEndAsync(stop), probe.StandardError.ReadToEndAsync(stop));
        var isDone = false;
        try
        {
            isDone = Task.WaitAll([text, errors], (int)Patience.TotalMilliseconds, stop) && probe.WaitForExit(Patience);
        }
        finally
        {
            if (!isDone)
            {
                probe.Kill();
            }
        }

        return isDone ? (text.Result, errors.Result) : throw new FilmRefusedException(
            $"{Path.GetFileName(film)} did not say within {Patience.TotalSeconds:F0} s what it is.",
            "Copy it to a disk of this machine, or write it anew.");
    }

    // A phone writes the picture as its sensor lies, and beside it how it was held.
    private static bool Turned(JsonElement picture)
    {
        double angle = 0.0;
        if (picture.TryGetProperty("side_data_list", out var sides))
        {
            angle = sides.EnumerateArray().Select(side => Number(side, "rotation")).FirstOrDefault(a => a is not null) ?? 0.0;
        }

        if (angle == 0.0 && picture.TryGetProperty("tags", out var tags))
        {
            angle = Number(tags, "rotate") ?? 0.0;
        }

        return (int)Math.Round(Math.Abs(angle) / 90.0) % 2 == 1;
    }

    private static string? Word(JsonElement of, string name) =>
        of.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private static double? Number(JsonElement of, string name) =>
        !of.TryGetProperty(name, out var value) ? null
        : value.ValueKind == JsonValueKind.Number ? value.GetDouble()
        : double.TryParse(value.GetString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static double? Rate(string? fraction) =>
        fraction?.Split('/') is [var above, var below]
            && double.TryParse(above, CultureInfo.InvariantCulture, out var a)
                && double.TryParse(below, CultureInfo.InvariantCulture, out var b) && b > 0.0
            ? a / b : null;

    private static string LastLine(string said, string film) =>
        (said.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).LastOrDefault() ?? "nothing was said of it")
        .Replace("file:" + Path.GetFullPath(film) + ": ", "", StringComparison.Ordinal);
}
