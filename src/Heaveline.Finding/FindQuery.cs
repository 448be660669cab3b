using Heaveline.Files.Garages;
using Heaveline.Measures;

namespace Heaveline.Finding;

/// <summary>What is looked for in a garage; all of it must be so.</summary>
public sealed record FindQuery
{
    /// <summary>Words that all begin a word of the file's name, of what it is called, of its kind, or of its text.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>The kinds that are looked among; empty: all.</summary>
    public IReadOnlyList<GarageKind> Kinds { get; init; } = [];

    /// <summary>Bounds that a car keeps, all of them under one load.</summary>
    public IReadOnlyList<MeasureBound> Bounds { get; init; } = [];
}
