using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Heaveline.Passes;

namespace Heaveline.Camera.Frames;

/// <summary>
/// A film on the disk. Its frames come over a pipe, each with its own presentation time, as phones film at rates that vary; one of them is in
/// memory at a time, whatever its size.
/// </summary>
internal sealed class FilmFile : IPictures
{
    /// <summary>Heaviest film that is read, bytes: at what phones write, minutes, of which a passing car needs seconds.</summary>
    public const long Heaviest = 2_000_000_000;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    // Share of the time that a film says it lasts for which pictures must come: sound may go on for a little longer.
    private const double Whole = 0.8;

    private readonly string path;

    private FilmFile(string path, FilmAbout about) => (this.path, Known) = (path, about);

    /// <inheritdoc/>
    public string Name => Path.GetFileName(path);

    /// <inheritdoc/>
    public int Width => Known.Width;

    /// <inheritdoc/>
    public int Height => Known.Height;

    /// <inheritdoc/>
    public int? About => Known.Frames;

    /// <summary>What it says of itself.</summary>
    public FilmAbout Known { get; }

    /// <summary>Opens a film, of which nothing is decoded yet.</summary>
    /// <exception cref="FilmRefusedException">It is none, or of a kind that no car can be followed in.</exception>
    public static FilmFile Open(string path, CancellationToken stop = default)
    {
        var (file, name) = (new FileInfo(path), Path.GetFileName(path));
        if (!file.Exists)
        {
            throw new FilmRefusedException($"There is no film {path}.", "Look at its name and folder.");
        }

        if (Files.FileNode.Other(path) is { } other)
        {
            throw new FilmRefusedException($"{path} is {other}.", "Give a film that lies on a disk.");
        }

        if (file.Length > Heaviest)
        {
            throw new FilmRefusedException(
                string.Create(CultureInfo.InvariantCulture, $"{name} weighs {file.Length / 1e9:F1} GB; at most 2 GB are read."),
                "Cut it to the seconds around the bump, in the phone itself or by: ffmpeg -ss 12 -t 6 -i FILM -c copy SHORT.mp4.");
        }

        var about = FilmAbout.Of(path, stop);
        if (about.Height > about.Width)
        {
            throw new FilmRefusedException(
                string.Create(CultureInfo.InvariantCulture, $"{name} is filmed upright ({about.Width} × {about.Height} pixels)."),
                "A car is four times as long as it is high: hold the phone level and film again.");
        }

        if (about.Width < 160 || about.Height < 90 || about.Width > 8192)
        {
            throw new FilmRefusedException(
                string.Create(CultureInfo.InvariantCulture, $"The picture of {name} is {about.Width} × {about.Height} pixels."),
                "Between 160 × 90 and 8192 pixels wide are followed; 1920 × 1080 is a good size.");
        }

        return about.Frames == 1
            ? throw OneFrame(name)
            : new FilmFile(path, about);
    }

    /// <inheritdoc/>
    public IEnumerable<Picture> Pictures(CancellationToken stop = default)
    {
        using var ffmpeg = FilmPrograms.Decode(
            path, "-map", "0:v:0", "-an", "-sn", "-dn", "-vf", "showinfo=checksum=0,format=gray", "-fps_mode", "passthrough", "-f", "rawvideo", "-");
        using var times = new BlockingCollection<double>();
        var said = new LastWord();
        var talk = Task.Run(() => Listen(ffmpeg, times, said), CancellationToken.None);
        using var grey = new Mat(Height, Width, MatType.CV_8UC1);
        var (index, first, last) = (0, 0.0, 0.0);
        try
        {
            using var stopping = stop.Register(() => End(ffmpeg));
            while (Filled(ffmpeg.StandardOutput.BaseStream, grey, stop))
            {
                last = TimeOf(times, index, said);
                first = index == 0 ? last : first;
                yield return new Picture(index, last, grey);
                index++;
            }

            stop.ThrowIfCancellationRequested();
            ffmpeg.WaitForExit();
            // The one who listens has then heard all.
            talk.Wait(CancellationToken.None);
            if (ffmpeg.ExitCode != 0 && index < 2)
            {
                throw new FilmRefusedException($"{Name} could not be decoded ({said.Line}).", "Play it, or write it anew.");
            }

            if (index < 2)
            {
                throw OneFrame(Name);
            }

            // A decoder passes over what it cannot read, and ends as if the film did.
            if (ffmpeg.ExitCode != 0 || last - first < Whole * (Known.Duration ?? 0.0))
            {
                throw new FilmRefusedException(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{Name} breaks off after {index} frames, at {last - first:F2} s of {Known.Duration ?? last - first:F2} s."),
                    "Copy it from the phone anew; or cut it to what can be read: ffmpeg -i FILM -t SECONDS SHORT.mp4, and follow that.");
            }
        }
        finally
        {
            End(ffmpeg);
            // The one who listens ends with the process, and must not outlive what it writes into.
            talk.Wait(CancellationToken.None);
        }
    }

    private static FilmRefusedException OneFrame(string name) =>
        new($"{name} has one frame, or none.", "Give the film, not a picture of it: at least the second before the bump and the two after it.");

    private static bool Filled(Stream pipe, Mat grey, CancellationToken stop)
    {
        var room = grey.AsSpan<byte>();
        while (room.Length > 0)
        {
            stop.ThrowIfCancellationRequested();
            var read = pipe.Read(room[..Math.Min(room.Length, 1 << 20)]);
            if (read == 0)
            {
                return false;
            }

            room = room[read..];
        }

        return true;
    }

    // A frame's time is told before the frame is written.
    private double TimeOf(BlockingCollection<double> times, int index, LastWord said) =>
        times.TryTake(out var time, Patience)
            ? time
            : throw new RunFailedException(
                string.Create(
                    CultureInfo.InvariantCulture, $"Frame {index} of {Name} came without its time ({said.Line})."),
                "FFmpeg 5.1 or newer tells it.");

    private static void Listen(Process ffmpeg, BlockingCollection<double> times, LastWord said)
    {
        while (ffmpeg.StandardError.ReadLine() is { } line)
        {
            if (!line.Contains("Parsed_showinfo", StringComparison.Ordinal))
            {
                said.Line = line.Trim();
            }
            else if (After(line, "pts_time:") is { } time)
            {
                times.Add(time);
            }
        }

        times.CompleteAdding();
    }

    private static double? After(string line, string key)
    {
        var at = line.IndexOf(key, StringComparison.Ordinal);
        return at >= 0 && double.TryParse(
            line.AsSpan(at + key.Length).TrimStart().ToString().Split(' ')[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
                ? value : null;
    }

    // Of what is said on the way, a line for every broken frame, the last is kept.
    private sealed class LastWord
    {
        private volatile string line = "nothing was said";

        public string Line { get => line; set => line = value; }
    }

    private static void End(Process ffmpeg)
    {
        try
        {
            ffmpeg.Kill();
        }
        catch (InvalidOperationException)
        {
            // It has ended by itself.
        }
    }
}
