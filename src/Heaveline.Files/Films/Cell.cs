using System.Globalization;

namespace Heaveline.Files.Films;

/// <summary>A cell of a kept track.</summary>
internal static class Cell
{
    /// <summary>Its number; null where it has none.</summary>
    public static double? Number(string cell) =>
        double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
}
