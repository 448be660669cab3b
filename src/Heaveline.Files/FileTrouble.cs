namespace Heaveline.Files;

/// <summary>What the file system refused, in words: where the runtime has none but the name of a sentence, ours.</summary>
public static class FileTrouble
{
    /// <summary>The words, with their full stop.</summary>
    /// <param name="failure">What reading or writing a file threw.</param>
    public static string Words(Exception failure)
    {
        ArgumentNullException.ThrowIfNull(failure);
        return IsWords(failure.Message) ? failure.Message : failure switch
        {
            UnauthorizedAccessException => "access is denied.",
            FileNotFoundException => "there is no such file.",
            DirectoryNotFoundException => "there is no such folder.",
            PathTooLongException => "the name is too long.",
            _ => FormattableString.Invariant($"the system refused it (error {failure.HResult:X8})."),
        };
    }

    // "UnauthorizedAccess_IODenied_Path, /garage/car.yaml": the runtime without its sentences gives their names.
    private static bool IsWords(string message) => message.Split(' ', ',')[0] is var first && message.Length > first.Length && !first.Contains('_');
}
