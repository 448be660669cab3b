using System.Globalization;
using System.Text;
using Heaveline.Files;
using Heaveline.Files.Roads;
using Heaveline.Roads;

namespace Heaveline.Tests;

/// <summary>
/// A measured stone-block test road, 10 m by 10 mm (OpenCRG, crg-bin/belgian_block.crg, Apache License 2.0): a grid of heights in mm with an
/// offset of 2.1 m and empty cells at its edges.
/// </summary>
internal static class StoneBlocks
{
    /// <summary>The two whole tracks that lie farthest apart, 1.37 m.</summary>
    internal static Road Road => MeasuredProfileFile.Read(new SourceText("stone blocks.csv", Tracks("0.00", "-1.37").Text)).Value!;

    /// <summary>
    /// Two tracks, named by their lateral place, as the text of a measured road and as heights in mm; NaN where nothing was measured.
    /// </summary>
    internal static (string Text, List<double> Left, List<double> Right) Tracks(string left, string right)
    {
        var lines = File.ReadAllLines(SharedData.Require("stone-block-road-right", "grid.csv"));
        var header = lines[0].Split(',');
        var (l, r) = (Array.IndexOf(header, left), Array.IndexOf(header, right));
        var text = new StringBuilder("distance [m], left [mm], right [mm]\n");
        var (leftHeights, rightHeights) = (new List<double>(), new List<double>());
        foreach (var cells in lines.Skip(1).Select(line => line.Split(',')))
        {
            text.Append(cells[0]).Append(", ").Append(cells[l]).Append(", ").Append(cells[r]).Append('\n');
            leftHeights.Add(Number(cells[l]));
            rightHeights.Add(Number(cells[r]));
        }

        return (text.ToString(), leftHeights, rightHeights);
    }

    private static double Number(string cell) => cell.Length == 0 ? double.NaN : double.Parse(cell, CultureInfo.InvariantCulture);
}
