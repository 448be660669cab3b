namespace Heaveline.Studies;

/// <summary>A question as one types it at a command prompt.</summary>
public static class TypedLine
{
    // What no common shell takes for anything but itself.
    private const string Plain = "-_.,/:";

    /// <summary>The line: the words for every choice in the order of the question's description.</summary>
    /// <param name="question">The question.</param>
    /// <param name="given">The words; a choice without any is left out.</param>
    public static string Of(Question question, Given given)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(given);
        IEnumerable<string> Words(Choice choice) => choice.IsArgument ? given.All(choice)
            : choice.Kind == ChoiceKind.Tick ? given.All(choice).Select(_ => $"--{choice.Name}")
            : given.All(choice).SelectMany(words => new[] { $"--{choice.Name}", words });
        return string.Join(' ', new[] { "heaveline", question.Word }.Concat(question.Choices.SelectMany(Words)).Select(Quoted));
    }

    /// <summary>
    /// A word as a POSIX shell reads it [IEEE Std 1003.1-2024, Shell Command Language, 2.2 Quoting]. Names in car files come from anywhere, and
    /// people paste such lines: what a shell would run inside double quotes goes between single ones, where nothing is run.
    /// </summary>
    public static string Quoted(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        return word.Length > 0 && word.All(c => char.IsAsciiLetterOrDigit(c) || Plain.Contains(c, StringComparison.Ordinal)) ? word
            : word.AsSpan().ContainsAny("$`!") ? $"'{word.Replace("'", "'\\''", StringComparison.Ordinal)}'"
            : $"\"{word.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
    }
}
