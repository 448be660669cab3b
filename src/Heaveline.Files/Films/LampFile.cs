using Heaveline.Files.Yaml;
using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Files.Films;

/// <summary>Reads the kept brightness of a headlamp, written by <see cref="LampText"/>.</summary>
public static class LampFile
{
    /// <summary>Reads the file.</summary>
    /// <param name="path">The file.</param>
    public static Reading<LampTrack> Load(string path)
    {
        var (source, refusal) = SourceText.Load(path, FileFormat.FilmTrack.MostBytes);
        return refusal is null ? Read(source) : Reading<LampTrack>.Refused(source, refusal);
    }

    /// <summary>Reads the text.</summary>
    /// <param name="source">The text under its file's name.</param>
    public static Reading<LampTrack> Read(SourceText source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var lines = source.Text.TrimEnd('\n', '\r').Split('\n').Select(l => l.TrimEnd('\r')).ToArray();
        Reading<LampTrack> Refused(int line, string message, string advice) => Reading<LampTrack>.Refused(
            source, new Refusal(source.File, line, 1, Math.Max(1, lines[Math.Min(line, lines.Length) - 1].Length), message, advice));
        if (lines[0] != LampText.First)
        {
            return Refused(1, $"The file does not begin with \"{LampText.First}\".", "Give the brightness of a lamp that this program kept.");
        }

        if (lines.Length < 3 || lines[1].Split(',') is not ["saturated", var cell] || Cell.Number(cell) is not { } saturated
            || lines[2] != LampText.Head)
        {
            return Refused(Math.Min(2, lines.Length), "The lines before the rows are not as they were written.", "Follow the lamp anew.");
        }

        var rows = lines.Skip(3).Select(l => l.Split(',')).ToArray();
        for (var i = 0; i < rows.Length; i++)
        {
            if (rows[i] is not [var t, var b] || Cell.Number(t) is null || Brightness(b) is null
                || (i > 0 && !(Cell.Number(t) > Cell.Number(rows[i - 1][0]))))
            {
                return Refused(i + 4, "This row is no later instant with a brightness.", "A row has two numbers, its time later than that of the "
                    + "row above.");
            }
        }

        try
        {
            return new Reading<LampTrack>
            {
                Value = new LampTrack
                {
                    Times = [.. rows.Select(r => Cell.Number(r[0])!.Value)], Brightness = [.. rows.Select(r => Brightness(r[1])!.Value)],
                    Saturated = saturated,
                },
                Sources = [source],
            };
        }
        catch (RefusedValueException refused)
        {
            return Refused(3, $"The brightness is refused: {refused.Message}", refused.Advice);
        }
    }

    // Blank: the lamp was not seen in this frame.
    private static double? Brightness(string cell) => cell.Length == 0 ? 0.0 : Cell.Number(cell);
}
