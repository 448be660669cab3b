namespace Heaveline.Files.Garages;

/// <summary>A file of a garage, or a road that is always there.</summary>
public sealed record GarageEntry
{
    /// <summary>The file's name inside the garage, with / between folders; of a road that is always there its short name.</summary>
    public required string Name { get; init; }

    /// <summary>What it describes.</summary>
    public required GarageKind Kind { get; init; }

    /// <summary>What the car, variant or road is called; the file's name when the text does not say.</summary>
    public required string Title { get; init; }

    /// <summary>The file that a variant changes, by its name in the garage, or as written when it is none; null for others.</summary>
    public string? Base { get; init; }

    /// <summary>Whether it comes with the program and is no file.</summary>
    public bool IsBuiltIn { get; init; }

    /// <summary>How many refusals keep it from being used; of a variant its bases' included.</summary>
    public int Refusals { get; init; }

    /// <summary>How many warnings it has.</summary>
    public int Warnings { get; init; }

    /// <summary>How many of the warnings tell of something that is not said, and of no slip.</summary>
    public int Unknown { get; init; }

    /// <summary>The first refusal's message; null when there is none.</summary>
    public string? Problem { get; init; }

    /// <summary>What its note says; empty when it has none.</summary>
    public string Note { get; init; } = "";

    /// <summary>The stamp of its text as it was read for the list; null when it could not be read, and of what is no file.</summary>
    public Stamp? Stamp { get; init; }
}
