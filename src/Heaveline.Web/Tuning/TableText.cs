using Heaveline.Cars;

namespace Heaveline.Web.Tuning;

/// <summary>Force tables as rows of a car file.</summary>
internal static class TableText
{
    /// <summary>Rows [place, force].</summary>
    /// <param name="table">The table, SI units.</param>
    /// <param name="unit">Unit of the first column.</param>
    /// <param name="size">That unit in SI units.</param>
    public static string Of(ForceTable table, string unit, double size) =>
        $"[{string.Join(", ", table.At.Zip(table.Force, (at, force) => $"[{Rounded.Text(Math.Round(at / size, 9))} {unit}, {Rounded.Text(Math.Round(force, 6))} N]"))}]";
}
