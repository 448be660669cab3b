using Heaveline.Files.Garages;

namespace Heaveline.Finding;

/// <summary>A file of a garage that was found.</summary>
public sealed record FoundFile
{
    /// <summary>Its name inside the garage.</summary>
    public required string Name { get; init; }

    /// <summary>What it describes.</summary>
    public required GarageKind Kind { get; init; }

    /// <summary>What it is called.</summary>
    public required string Title { get; init; }

    /// <summary>The file that a variant changes; empty for others.</summary>
    public required string Of { get; init; }

    /// <summary>The words about the first place where one was found; empty where none was looked for.</summary>
    public required string Place { get; init; }

    /// <summary>Why it cannot be used; empty where it can.</summary>
    public required string Problem { get; init; }

    /// <summary>Its numbers, of a car or a variant, load by load; empty for others.</summary>
    public required IReadOnlyList<IndexedNumber> Numbers { get; init; }
}
