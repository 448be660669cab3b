using Heaveline.Drives;
using static Heaveline.Files.Drives.LogTable;

namespace Heaveline.Files.Drives;

/// <summary>
/// Cells that no sensor of a road vehicle means, and stamps far from their neighbours: few are left out as a gap and said, many are refused.
/// </summary>
internal static class FarCell
{
    /// <summary>A stamp so far from both its neighbours stands alone, s.</summary>
    public const double Apart = 600.0;

    // One row of so many may be left out; one in any log. A proposal of this program.
    private const int Every = 1000;
    private const int Named = 3;

    /// <summary>The most rows of a log that are left out.</summary>
    /// <param name="rows">How many it has.</param>
    public static int Most(int rows) => Math.Max(1, rows / Every);

    /// <summary>The rows of a sensor without those beyond its bound; all of them where it is refused.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="rows">Its rows.</param>
    /// <param name="story">Gets what was left out.</param>
    /// <param name="refusals">Gets a refusal where there are too many.</param>
    public static List<int> Without(SensorColumns sensor, List<int> rows, List<StoryLine> story, List<LogRefusal> refusals)
    {
        var most = SensorBound.Of(sensor.Kind, sensor.UnitSaid);
        var unit = SensorBound.UnitOf(sensor.Kind);
        var far = new HashSet<int>();
        foreach (var column in double.IsFinite(most) ? sensor.Columns : [])
        {
            var limit = most / sensor.FactorOf(column);
            int[] here = [.. rows.Where(i => !(Math.Abs(column.Values[i]) <= limit))];
            if (here.Length > Most(rows.Count))
            {
                refusals.Add(new LogRefusal(
                    sensor.Table.File,
                    Text($"{here.Length} of the {rows.Count} cells of column '{column.Name}' are beyond {most:G4} {unit}, ")
                    + Text($"the first in row {here[0] + 1} of those read: {column.Values[here[0]]:G3} {sensor.UnitTaken}."),
                    "Look at that column and its unit."));
                return rows;
            }

            if (here.Length > 0)
            {
                story.Add(new StoryLine(
                    "far-cells",
                    Text($"{sensor.Table.File}: column '{column.Name}', {Places(here)}: beyond {most:G4} {unit}, which no such sensor means; ")
                    + "left out as a gap.",
                    IsDoubtful: true));
                far.UnionWith(here);
            }
        }

        return far.Count == 0 ? rows : [.. rows.Where(i => !far.Contains(i))];
    }

    /// <summary>Rows whose stamps stand alone, each far from both its neighbours, which lie together; none where they are many.</summary>
    /// <param name="times">Instants, s; not a number where there is none.</param>
    public static int[] Stamps(double[] times)
    {
        const int fewest = 5;
        int[] rows = [.. Enumerable.Range(0, times.Length).Where(i => !double.IsNaN(times[i]))];
        bool IsApart(int k, int other) => Math.Abs(times[rows[k]] - times[rows[other]]) > Apart;
        bool IsAlone(int k) => k == 0 ? IsApart(0, 1) && !IsApart(1, 2)
            : k == rows.Length - 1 ? IsApart(k, k - 1) && !IsApart(k - 1, k - 2)
            : IsApart(k, k - 1) && IsApart(k, k + 1) && !IsApart(k - 1, k + 1);
        int[] alone = rows.Length < fewest ? [] : [.. Enumerable.Range(0, rows.Length).Where(IsAlone).Select(k => rows[k])];
        return alone.Length > Most(rows.Length) ? [] : alone;
    }

    /// <summary>What is said of stamps that stand alone; null for none.</summary>
    /// <param name="file">The file.</param>
    /// <param name="clock">Its instants.</param>
    public static StoryLine? Said(string file, Timeline clock) => clock.Alone.Length == 0 ? null : new StoryLine(
        "far-stamps",
        Text($"{file}: column '{clock.Column.Name}', {Places(clock.Alone)}: more than {Apart:F0} s from the rows beside it; left out as a gap."),
        IsDoubtful: true);

    private static string Places(int[] rows) =>
        (rows.Length == 1 ? "row " : "rows ") + string.Join(", ", rows.Take(Named).Select(i => Text($"{i + 1}")))
        + (rows.Length > Named ? Text($" and {rows.Length - Named} more") : "") + " of those read";
}
