namespace Heaveline.Files.Garages;

/// <summary>What came of saving a text.</summary>
public sealed record SaveOutcome
{
    /// <summary>How it ended.</summary>
    public required SaveEnd End { get; init; }

    /// <summary>The file's name inside the garage, as given.</summary>
    public required string Name { get; init; }

    /// <summary>The text that was to be saved.</summary>
    public required string Text { get; init; }

    /// <summary>Why it was not saved, one sentence with its full stop; empty when it was.</summary>
    public string Message { get; init; } = "";

    /// <summary>What to do; empty when it was saved.</summary>
    public string Advice { get; init; } = "";

    /// <summary>The stamp of the text that is on the disk now; null when there is none or it was not looked at.</summary>
    public Stamp? Stamp { get; init; }

    /// <summary>After a conflict, the text that is on the disk; null when there is no file, or none that can be read as text.</summary>
    public string? TextOnDisk { get; init; }

    /// <summary>The version that was saved over, as it was kept; null when there was none.</summary>
    public EarlierVersion? Earlier { get; init; }

    /// <summary>How many of the oldest earlier versions were dropped for it.</summary>
    public int Dropped { get; init; }
}
