namespace Heaveline.Files.Garages;

/// <summary>A file as it was looked at.</summary>
/// <param name="Length">Bytes.</param>
/// <param name="Written">When it was written last, UTC.</param>
internal sealed record WatchedFile(long Length, DateTime Written)
{
    /// <summary>What tells its content from another; empty until it was read.</summary>
    public string Content { get; private init; } = "";

    /// <summary>Whether it was written so lately before it was read that another writing could look the same.</summary>
    public bool IsYoung { get; private init; }

    /// <summary>A file's look.</summary>
    public static WatchedFile Of(FileInfo file) => new(file.Length, file.LastWriteTimeUtc);

    /// <summary>Whether two looks are those of one writing; null for a file that is not there.</summary>
    public static bool LookAlike(WatchedFile? one, WatchedFile? other) => (one?.Length, one?.Written) == (other?.Length, other?.Written);

    /// <summary>The same, read.</summary>
    /// <param name="content">What tells its content.</param>
    /// <param name="young">How old it must be not to be young.</param>
    public WatchedFile With(string content, TimeSpan young) =>
        this with { Content = content, IsYoung = (DateTime.UtcNow - Written).Duration() < young };
}
