using Heaveline.Quantities;

namespace Heaveline.Ties;

/// <summary>A sheet of readings as it was kept: what was read, over which obstacle, under which load.</summary>
public sealed record TieSheet
{
    /// <summary>What the sheet is called.</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Give the sheet a name."); }

    /// <summary>The obstacle: a road's short name, or the path of its file.</summary>
    public required string Over { get; init => field = Checked.NotBlank(value, "Name the obstacle."); }

    /// <summary>Name of the load state of the passes; null where the sheet does not say it.</summary>
    public string? Load { get; init; }

    /// <summary>The readings.</summary>
    public required TieReadings Readings { get; init; }
}
