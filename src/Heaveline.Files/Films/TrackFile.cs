using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Files.Yaml;
using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Files.Films;

/// <summary>
/// Reads a kept track of a film, written by <see cref="TrackText"/>: lines of what holds for all of it, then a row a frame. What is not seen in a
/// frame is blank.
/// </summary>
public static class TrackFile
{
    /// <summary>Whether a text is a track.</summary>
    /// <param name="text">The text.</param>
    public static bool IsTrack(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.StartsWith(TrackText.First, StringComparison.Ordinal);
    }

    /// <summary>Reads the file of a track.</summary>
    /// <param name="path">The file.</param>
    public static Reading<FilmTrack> Load(string path)
    {
        var (source, refusal) = SourceText.Load(path, FileFormat.FilmTrack.MostBytes);
        return refusal is null ? Read(source) : Reading<FilmTrack>.Refused(source, refusal);
    }

    /// <summary>Reads the text of a track.</summary>
    /// <param name="source">The text under its file's name.</param>
    public static Reading<FilmTrack> Read(SourceText source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var lines = source.Text.TrimEnd('\n', '\r').Split('\n').Select(l => l.TrimEnd('\r')).ToArray();
        Reading<FilmTrack> Refused(int line, string message, string advice) => Reading<FilmTrack>.Refused(
            source, new Refusal(source.File, line, 1, Math.Max(1, line <= lines.Length ? lines[line - 1].Length : 1), message, advice));
        if (lines[0] != TrackText.First)
        {
            return Refused(1, $"The file does not begin with \"{TrackText.First}\".", "Give a track that this program kept.");
        }

        if (lines.Length < 4 || Settings(lines[1]) is not { } settings)
        {
            return Refused(
                Math.Min(2, lines.Length), "The second line does not say the picture's size and which way the car goes.", "Follow the film anew.");
        }

        var head = 2;
        if (lines[head].StartsWith(TrackText.From, StringComparison.Ordinal))
        {
            if (OriginOf(lines[head]) is not { } origin)
            {
                return Refused(head + 1, "This line does not say which film the track is of, and from which marks.", "Follow the film anew.");
            }

            settings = settings with { Origin = origin };
            head++;
        }

        if (head < lines.Length && lines[head].StartsWith(TrackText.Slower, StringComparison.Ordinal))
        {
            if (Cell.Number(lines[head][TrackText.Slower.Length..]) is not { } slower || slower is < 0.1 or > 100.0)
            {
                return Refused(head + 1, "This line does not say how many times slower the film is played.", "Follow the film anew.");
            }

            settings = settings with { PlayedSlower = slower };
            head++;
        }

        var remarks = lines.Skip(head).TakeWhile(l => l.StartsWith("remark,", StringComparison.Ordinal)).Select(l => l["remark,".Length..]).ToArray();
        head += remarks.Length;
        if (head >= lines.Length || lines[head] != TrackText.Head)
        {
            return Refused(head + 1, "The line of the columns' names is not as it was written.", "Follow the film anew.");
        }

        var frames = ImmutableArray.CreateBuilder<FilmFrame>(lines.Length - head - 1);
        for (var i = head + 1; i < lines.Length; i++)
        {
            if (Frame(lines[i]) is not { } frame)
            {
                return Refused(i + 1, Wrong(lines[i]), $"A row has {TrackText.Columns} numbers; what is not seen is blank.");
            }

            if (frames.Count > 0 && !(frame.Time > frames[^1].Time))
            {
                return Refused(i + 1, "This row's time is not later than that of the row above.", "Give the rows as they were followed.");
            }

            frames.Add(frame);
        }

        try
        {
            var track = settings with { Frames = frames.ToImmutable(), Remarks = [.. remarks] };
            return new Reading<FilmTrack> { Value = track, Sources = [source] };
        }
        catch (RefusedValueException refused)
        {
            return Refused(head + 1, $"The track is refused: {refused.Message}", refused.Advice);
        }
    }

    // What holds for all frames; these come later.
    private static FilmTrack? Settings(string line)
    {
        var cells = line.Split(',');
        if (cells.Length is not (12 or 14) || cells[7] is not ("right" or "left")
            || !int.TryParse(cells[1], NumberStyles.None, CultureInfo.InvariantCulture, out var width)
            || !int.TryParse(cells[3], NumberStyles.None, CultureInfo.InvariantCulture, out var height)
            || Cell.Number(cells[5]) is not { } row || Cell.Number(cells[9]) is not { } x || Cell.Number(cells[11]) is not { } y
            || (cells.Length == 14 ? Cell.Number(cells[13]) : 0.0) is not { } slant
            || width is < 1 or > 100_000 || height is < 1 or > 100_000 || Math.Abs(row) > 1e-3 || Math.Abs(slant) > 1.2)
        {
            return null;
        }

        var blank = Enumerable.Range(0, FilmTrack.FewestFrames).Select(i => new FilmFrame { Time = i });
        return new FilmTrack
        {
            Width = width, Height = height, RowTime = row, GoesRight = cells[7] == "right", BodyPivot = new(x, y), Slant = slant, Frames = [.. blank],
        };
    }

    private static FilmOrigin? OriginOf(string line)
    {
        var cells = line.Split(',');
        double[] numbers = cells.Length != 18 ? [] :
        [
            .. new[] { 6, 8, 9, 11, 12, 14, 15, 16, 17 }.Select(k => Cell.Number(cells[k]) ?? double.NaN),
        ];
        if (numbers.Length == 0 || numbers.Any(double.IsNaN) || numbers[0] is < 0.0 or > 36000.0
            || !long.TryParse(cells[2], NumberStyles.None, CultureInfo.InvariantCulture, out var bytes))
        {
            return null;
        }

        return new FilmOrigin(
            bytes,
            cells[4],
            new FilmMarks
            {
                Time = numbers[0], Front = new(numbers[1], numbers[2]), Rear = new(numbers[3], numbers[4]),
                BoxFrom = new(numbers[5], numbers[6]), BoxTo = new(numbers[7], numbers[8]),
            });
    }

    private static FilmFrame? Frame(string line)
    {
        var cells = line.Split(',');
        if (cells.Length != TrackText.Columns || Cell.Number(cells[0]) is not { } time)
        {
            return null;
        }

        var (front, rear, body, camera) = (cells[1..4], cells[4..7], cells[7..15], cells[15..23]);
        return AreAll(front) && AreAll(rear) && AreAll(body) && AreAll(camera)
            && (front[0].Length == 0 || Cell.Number(front[2]) >= 0.0) && (rear[0].Length == 0 || Cell.Number(rear[2]) >= 0.0)
            && (body[0].Length == 0 || IsPose(body)) && (camera[0].Length == 0 || IsPose(camera))
            ? new FilmFrame { Time = time, Front = HubOf(front), Rear = HubOf(rear), Body = PoseOf(body), Camera = PoseOf(camera) }
            : null;
    }

    private static string Wrong(string line) => line.Split(',') is var cells && cells.Length != TrackText.Columns
        ? $"This row is no frame: it has {cells.Length} cells."
        : cells.FirstOrDefault(c => c.Length > 0 && Cell.Number(c) is null) is { } word ? $"This row is no frame: '{word}' is no number."
        : "This row is no frame: part of a point is blank, or a doubt or a count is below 0, a size not above 0, a turn beyond ± 1.2 rad.";

    private static bool AreAll(string[] cells) => cells.All(c => c.Length == 0) || cells.All(c => Cell.Number(c) is not null);

    private static bool IsPose(string[] cells) =>
        Cell.Number(cells[3]) > 0.0 && Cell.Number(cells[2]) is >= -1.2 and <= 1.2 && Cell.Number(cells[4]) >= 0.0 && Cell.Number(cells[5]) >= 0.0
        && Cell.Number(cells[6]) is >= 0.0 and <= 1e6 && Cell.Number(cells[7]) is >= 0.0 and <= 1e6;

    private static SeenHub? HubOf(string[] c) => c[0].Length == 0 ? null : new SeenHub(Of(c[0]), Of(c[1]), Of(c[2]));

    private static SeenPose? PoseOf(string[] c) => c[0].Length == 0
        ? null
        : new SeenPose
        {
            X = Of(c[0]),
            Y = Of(c[1]),
            Turn = Of(c[2]),
            Scale = Of(c[3]),
            ShiftDoubt = Of(c[4]),
            TurnDoubt = Of(c[5]),
            Kept = (int)Of(c[6]),
            Dropped = (int)Of(c[7]),
        };

    private static double Of(string cell) => Cell.Number(cell)!.Value;
}
