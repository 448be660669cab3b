namespace Heaveline.Files.Drives;

/// <summary>
/// Why a file of a log is not accepted. A log has hundreds of thousands of lines: a place in one says little, the file and a sentence do.
/// </summary>
/// <param name="File">The file as the user named it, with the name inside an archive behind it.</param>
/// <param name="Message">What is wrong, one sentence with its full stop.</param>
/// <param name="Advice">What to give instead.</param>
public sealed record LogRefusal(string File, string Message, string Advice)
{
    /// <summary>The refusal for a terminal.</summary>
    public string Text => $"{File}: refused: {Message} {Advice}";
}
