using System.Text;

namespace Heaveline.Files;

/// <summary>Something in a file that is not accepted: where it stands, what is wrong with it and what to do instead.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Line">Line, counted from 1.</param>
/// <param name="Column">Column of the first character, counted from 1.</param>
/// <param name="Length">Number of characters, at least 1.</param>
/// <param name="Message">The value, and the limit it breaks.</param>
/// <param name="Advice">What to do instead, one sentence.</param>
public sealed record Refusal(string File, int Line, int Column, int Length, string Message, string Advice)
{
    /// <summary>The refusal in four lines: place and message, the source line, a mark under the value, the advice.</summary>
    /// <param name="sourceLine">The line of the file it points into.</param>
    public string Format(string sourceLine)
    {
        var number = FormattableString.Invariant($"{Line}");
        var gutter = new string(' ', number.Length + 2);
        var text = new StringBuilder();
        text.Append(FormattableString.Invariant($"{File}:{Line}:{Column}: refused: {Message}\n"));
        text.Append(FormattableString.Invariant($" {number} | {sourceLine}\n"));
        text.Append(gutter).Append("| ");
        for (var i = 0; i < Column - 1; i++)
        {
            // A tab before the value keeps its width only as a tab.
            text.Append(i < sourceLine.Length && sourceLine[i] == '\t' ? '\t' : ' ');
        }

        text.Append('^', Math.Max(1, Length)).Append('\n');
        return text.Append(gutter).Append("= ").Append(Advice).ToString();
    }
}
