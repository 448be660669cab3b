using System.Globalization;
using System.Text;

namespace Heaveline.Films;

/// <summary>
/// The text of a kept track: lines of what holds for all of it, then a row a frame. What is not seen in a frame is blank. Read again it is the
/// same track to the last bit.
/// </summary>
public static class TrackText
{
    /// <summary>The first line.</summary>
    public const string First = "heaveline film track,1";

    /// <summary>Begins the line of the film and the marks that it came from.</summary>
    public const string From = "from,";

    /// <summary>Begins the line of how many times slower the film is played than it was taken.</summary>
    public const string Slower = "played_slower,";

    /// <summary>Cells of a row.</summary>
    public const int Columns = 23;

    /// <summary>The line of the columns' names.</summary>
    public static string Head { get; } = string.Join(
        ',',
        [
            "time_s", "front_x_px", "front_y_px", "front_doubt_px", "rear_x_px", "rear_y_px", "rear_doubt_px", .. Names("body"), .. Names("camera"),
        ]);

    /// <summary>The text of a track.</summary>
    /// <param name="track">The track.</param>
    public static string Of(FilmTrack track)
    {
        ArgumentNullException.ThrowIfNull(track);
        var text = new StringBuilder();
        text.Append(First).Append('\n');
        text.Append(CultureInfo.InvariantCulture, $"width_px,{track.Width},height_px,{track.Height},row_time_s,{Digits(track.RowTime)},goes,");
        text.Append(track.GoesRight ? "right" : "left");
        text.Append(CultureInfo.InvariantCulture, $",pivot_x_px,{Digits(track.BodyPivot.X)},pivot_y_px,{Digits(track.BodyPivot.Y)}");
        text.Append(track.Slant == 0.0 ? "\n" : $",slant_rad,{Digits(track.Slant)}\n");
        if (track.Origin is { } origin)
        {
            text.Append(From).AppendJoin(',', Cells(origin)).Append('\n');
        }

        if (track.PlayedSlower is { } slower)
        {
            text.Append(Slower).Append(Digits(slower)).Append('\n');
        }

        foreach (var remark in track.Remarks)
        {
            text.Append("remark,").Append(remark.ReplaceLineEndings(" ")).Append('\n');
        }

        text.Append(Head).Append('\n');
        foreach (var frame in track.Frames)
        {
            string[] cells = [Digits(frame.Time), .. Hub(frame.Front), .. Hub(frame.Rear), .. Pose(frame.Body), .. Pose(frame.Camera)];
            text.AppendJoin(',', cells).Append('\n');
        }

        return text.ToString();
    }

    private static IEnumerable<string> Cells(FilmOrigin origin)
    {
        var m = origin.Marks;
        return
        [
            "bytes", origin.Bytes.ToString(CultureInfo.InvariantCulture), "ends", origin.Ends, "at_s", Digits(m.Time),
            "front_px", Digits(m.Front.X), Digits(m.Front.Y), "rear_px", Digits(m.Rear.X), Digits(m.Rear.Y),
            "box_px", Digits(m.BoxFrom.X), Digits(m.BoxFrom.Y), Digits(m.BoxTo.X), Digits(m.BoxTo.Y),
        ];
    }

    private static string Digits(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static IEnumerable<string> Names(string of) =>
        new[] { "x_px", "y_px", "turn_rad", "scale", "doubt_px", "turn_doubt_rad", "kept", "dropped" }.Select(c => $"{of}_{c}");

    private static IEnumerable<string> Hub(SeenHub? hub) => hub is { } h ? [Digits(h.X), Digits(h.Y), Digits(h.Doubt)] : ["", "", ""];

    private static IEnumerable<string> Pose(SeenPose? pose) => pose is null
        ? Enumerable.Repeat("", 8)
        :
        [
            Digits(pose.X), Digits(pose.Y), Digits(pose.Turn), Digits(pose.Scale), Digits(pose.ShiftDoubt), Digits(pose.TurnDoubt),
            pose.Kept.ToString(CultureInfo.InvariantCulture), pose.Dropped.ToString(CultureInfo.InvariantCulture),
        ];
}
