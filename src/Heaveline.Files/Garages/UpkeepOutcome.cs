namespace Heaveline.Files.Garages;

/// <summary>What came of renaming, copying, taking out or putting back files of a garage.</summary>
public sealed record UpkeepOutcome
{
    /// <summary>How it ended: <see cref="SaveEnd.Saved"/> when all of it was done; nothing was when it ended otherwise.</summary>
    public required SaveEnd End { get; init; }

    /// <summary>Why it was not done, one sentence with its full stop; empty when it was.</summary>
    public string Message { get; init; } = "";

    /// <summary>What to do; empty when it was done.</summary>
    public string Advice { get; init; } = "";

    /// <summary>What was taken out, each file as it is kept.</summary>
    public IReadOnlyList<EarlierVersion> Kept { get; init; } = [];

    /// <summary>Files that name a renamed one and were made to name it by its new name.</summary>
    public IReadOnlyList<string> Followed { get; init; } = [];

    /// <summary>Whether it was done.</summary>
    public bool IsDone => End is SaveEnd.Saved or SaveEnd.Unchanged;

    /// <summary>Why not and what to do, in words.</summary>
    public string Words => $"{Message} {Advice}".Trim();
}
