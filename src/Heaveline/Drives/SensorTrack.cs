using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Drives;

/// <summary>What one sensor wrote: instants and values in SI units, as they stand in the file, their order and their slips included.</summary>
public sealed record SensorTrack
{
    /// <summary>What is measured.</summary>
    public required SensorKind Kind { get; init; }

    /// <summary>The file it comes from.</summary>
    public required string File { get; init => field = Checked.NotBlank(value, "Name the file."); }

    /// <summary>The columns of that file, as its header calls them.</summary>
    public ImmutableArray<string> Columns { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>The unit that the header says; blank where it says none.</summary>
    public string UnitSaid { get; init => field = value ?? ""; } = "";

    /// <summary>The unit that the values were taken in.</summary>
    public required string UnitTaken { get; init => field = Checked.NotBlank(value, "Name the unit."); }

    /// <summary>Instants, s since the log's start, shape (n).</summary>
    public required ImmutableArray<double> Times { get; init; }

    /// <summary>Values, SI units, shape (columns, n): three columns of a sensor with axes, two or three of a position, one of any other.</summary>
    public required ImmutableArray<ImmutableArray<double>> Values { get; init; }
}
