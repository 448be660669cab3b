using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>A line at a value that matters ("bump stop").</summary>
public sealed record Limit
{
    /// <summary>The value, in the unit of the axis it belongs to. An axis without a given range is stretched to hold it.</summary>
    public required double At { get; init => field = Drawable.Finite(value); }

    /// <summary>What is there.</summary>
    public required string Label { get; init => field = Checked.NotBlank(value, "Say what the limit is."); }

    /// <summary>The axle that it is of; null where it is of both or of none.</summary>
    public AxleEnd? End { get; init; }

    /// <summary>Which way the line runs.</summary>
    public LimitDirection Direction { get; init; } = LimitDirection.AtY;
}
