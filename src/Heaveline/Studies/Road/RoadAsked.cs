using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What is asked of roads: how rough one is, or which there are.</summary>
public sealed record RoadAsked
{
    /// <summary>The road; null to ask which roads have a short name.</summary>
    public Road? Road { get; init; }

    /// <summary>The roads with a short name, for who asks which there are.</summary>
    public IReadOnlyList<(string Name, string Caption)> Known { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = [];
}
