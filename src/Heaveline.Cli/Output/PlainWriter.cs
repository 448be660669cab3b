using System.Text;
using Heaveline.Files;

namespace Heaveline.Cli.Output;

/// <summary>
/// Passes text on, with what a terminal would obey, or read in the other direction, spelled out: names come from files of strangers.
/// </summary>
/// <param name="into">Where the text goes.</param>
internal sealed class PlainWriter(TextWriter into) : TextWriter
{
    public override Encoding Encoding => into.Encoding;

    public override void Write(char value)
    {
        if (IsObeyed(value))
        {
            into.Write($"\\u{(int)value:X4}");
        }
        else
        {
            into.Write(value);
        }
    }

    public override void Write(ReadOnlySpan<char> buffer)
    {
        foreach (var value in buffer)
        {
            Write(value);
        }
    }

    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    public override void Write(string? value)
    {
        if (value is null || !value.Any(IsObeyed))
        {
            into.Write(value);
        }
        else
        {
            Write(value.AsSpan());
        }
    }

    public override void WriteLine(string? value)
    {
        if (value is null || !value.Any(IsObeyed))
        {
            into.WriteLine(value);
        }
        else
        {
            Write(value.AsSpan());
            into.WriteLine();
        }
    }

    public override void WriteLine() => into.WriteLine();

    public override void Flush() => into.Flush();

    private static bool IsObeyed(char c) => ControlCharacter.Is(c) && c is not ('\n' or '\r' or '\t');
}
