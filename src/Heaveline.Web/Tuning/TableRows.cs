using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Web.Tuning;

/// <summary>Force tables as rows of a car file.</summary>
internal static class TableRows
{
    /// <summary>Rows [place, force].</summary>
    /// <param name="table">The table, SI units.</param>
    /// <param name="unit">Unit of the first column.</param>
    /// <param name="size">That unit in SI units.</param>
    public static Node Of(ForceTable table, string unit, double size) => Node.List(table.At.Zip(table.Force, (at, force) =>
        Node.List(Node.Scalar($"{Rounded.Text(Math.Round(at / size, 9))} {unit}"), Node.Scalar($"{Rounded.Text(Math.Round(force, 6))} N"))));
}
