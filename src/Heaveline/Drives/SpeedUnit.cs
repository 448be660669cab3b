using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Drives;

/// <summary>A unit that loggers write speed in.</summary>
/// <param name="Name">Its symbol.</param>
/// <param name="Factor">From it to m/s.</param>
public sealed record SpeedUnit(string Name, double Factor)
{
    /// <summary>The units, m/s first, those that a speed without a unit may be in before the knot.</summary>
    public static ImmutableArray<SpeedUnit> All { get; } =
    [
        new("m/s", 1.0), new("km/h", 1.0 / In.KilometresPerHour.Factor), new("mph", 0.44704), new("kn", 1852.0 / 3600.0),
    ];
}
