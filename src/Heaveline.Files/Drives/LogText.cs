using System.Text;
using System.Text.Unicode;

namespace Heaveline.Files.Drives;

/// <summary>A log's text as bytes in which digits and separators are ASCII, with the encoding of its other letters.</summary>
internal sealed class LogText
{
    /// <summary>The longest line of a log, bytes.</summary>
    public const int LongestLine = 1 << 16;

    private const int Windows = 1252;

    private LogText(byte[] bytes, int start, Encoding encoding, string name) =>
        (Bytes, Start, Encoding, EncodingName) = (bytes, start, encoding, name);

    /// <summary>The bytes.</summary>
    public byte[] Bytes { get; }

    /// <summary>Where the text begins, behind its byte order mark.</summary>
    public int Start { get; }

    /// <summary>The encoding of the bytes.</summary>
    public Encoding Encoding { get; }

    /// <summary>What the file was written in.</summary>
    public string EncodingName { get; }

    /// <summary>The text; null where the bytes are no text.</summary>
    /// <param name="bytes">A file.</param>
    public static LogText? Of(byte[] bytes)
    {
        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
        {
            var wide = bytes[0] == 0xFF ? Encoding.Unicode : Encoding.BigEndianUnicode;
            var turned = Encoding.Convert(wide, Encoding.UTF8, bytes, 2, bytes.Length - 2);
            return turned.AsSpan().Contains((byte)0) ? null : new LogText(turned, 0, Encoding.UTF8, "UTF-16");
        }

        if (bytes.AsSpan().Contains((byte)0))
        {
            return null;
        }

        var start = bytes is [0xEF, 0xBB, 0xBF, ..] ? 3 : 0;
        return Utf8.IsValid(bytes.AsSpan(start))
            ? new LogText(bytes, start, Encoding.UTF8, "UTF-8")
            : new LogText(bytes, 0, CodePagesEncodingProvider.Instance.GetEncoding(Windows)!, "Windows-1252");
    }

    /// <summary>The first lines that are not blank, with the place where each begins.</summary>
    /// <param name="most">How many.</param>
    /// <param name="tooLong">The first line that is longer than a row of a log; nothing where none is.</param>
    public List<(int At, string Line)> FirstLines(int most, out ReadOnlySpan<byte> tooLong)
    {
        tooLong = default;
        var lines = new List<(int, string)>();
        for (var at = Start; at < Bytes.Length && lines.Count < most;)
        {
            var rest = Bytes.AsSpan(at);
            var length = rest.IndexOfAny((byte)'\n', (byte)'\r');
            length = length < 0 ? rest.Length : length;
            // A line longer than this is none of a log.
            if (length > LongestLine)
            {
                tooLong = rest[..length];
                return lines;
            }

            var line = Encoding.GetString(rest[..length]);
            if (!string.IsNullOrWhiteSpace(line))
            {
                lines.Add((at, line));
            }

            at += length + 1;
        }

        return lines;
    }
}
