using System.Globalization;

namespace Heaveline.Files.Roads;

/// <summary>
/// The header of a measured profile: <c>distance [m], left [mm], right [mm]</c>, or <c>distance [m], height [mm]</c> for one track.
/// </summary>
/// <param name="Names">Name of each column: distance first, then left and right in either order, or height.</param>
/// <param name="Units">Unit of each column, as written.</param>
/// <param name="Metres">Metres in one unit of each column.</param>
internal sealed record MeasuredProfileHeader(IReadOnlyList<string> Names, IReadOnlyList<string> Units, IReadOnlyList<double> Metres)
{
    /// <summary>Advice that shows the header.</summary>
    internal const string Example = "Write the first line as 'distance [m], left [mm], right [mm]', or 'distance [m], height [mm]' for one track.";

    // No more is read of a line that is no header: every cell of it would be refused by name.
    private const int Longest = 1000;

    // NIST Special Publication 811, Appendix B: the international inch and foot are exact.
    private static readonly Dictionary<string, double> Lengths = new(StringComparer.Ordinal)
    {
        ["m"] = 1.0, ["mm"] = 1e-3, ["cm"] = 1e-2, ["km"] = 1e3, ["in"] = 0.0254, ["ft"] = 0.3048,
    };

    /// <summary>Reads the header; null when its columns cannot be told, with the refusals added.</summary>
    internal static MeasuredProfileHeader? Read(string file, MeasuredLine at, ReadOnlySpan<char> written, List<Refusal> refusals)
    {
        if (written.Length > Longest)
        {
            refusals.Add(new Refusal(
                file,
                at.Number,
                1,
                1,
                string.Create(CultureInfo.InvariantCulture, $"the header has {written.Length} characters; it must have at most {Longest}."),
                Example));
            return null;
        }

        var before = refusals.Count;
        var line = written.ToString();
        var cells = Cell.Of(line, at.Number);
        if (cells.Count == 1 && line.AsSpan().IndexOfAny(';', '\t') is var other and >= 0)
        {
            refusals.Add(new Refusal(
                file,
                cells[0].Line,
                other + 1,
                1,
                $"the columns are separated by {(line[other] == ';' ? "semicolons" : "tabs")}; they must be separated by commas.",
                "Save the table as comma-separated text with decimal points."));
            return null;
        }

        var names = new List<string>();
        var units = new List<string>();
        var metres = new List<double>();
        foreach (var cell in cells)
        {
            var open = cell.Text.IndexOf('[', StringComparison.Ordinal);
            var name = (open < 0 ? cell.Text : cell.Text[..open]).Trim();
            var unit = open >= 0 && cell.Text.EndsWith(']') ? cell.Text[(open + 1)..^1].Trim() : "";
            names.Add(name);
            units.Add(unit);
            metres.Add(Lengths.GetValueOrDefault(unit));
            CheckName(file, cell, name, names, refusals);
            if (unit.Length == 0)
            {
                refusals.Add(cell.Refuse(file, $"column '{cell.Text}' has no unit; it must have one in square brackets.", Example));
            }
            else if (!Lengths.ContainsKey(unit))
            {
                refusals.Add(cell.Refuse(file, $"unit of column '{name}' is '{unit}'; it must be m, mm, cm, km, in or ft.", Example));
            }
        }

        if (refusals.Count == before && !IsWhole(names))
        {
            refusals.Add(new Refusal(
                file,
                cells[0].Line,
                1,
                line.Length,
                $"the columns are {string.Join(", ", names)}; they must be distance and height, or distance, left and right.",
                "Name a single height column 'height': both wheels then run in that track."));
        }

        return refusals.Count == before ? new MeasuredProfileHeader(names, units, metres) : null;
    }

    private static void CheckName(string file, Cell cell, string name, List<string> names, List<Refusal> refusals)
    {
        if (names.Count == 1 != (name == "distance") || name is not ("distance" or "left" or "right" or "height"))
        {
            refusals.Add(cell.Refuse(
                file, $"column {names.Count} is named '{name}'; it must be {(names.Count == 1 ? "distance" : "left, right or height")}.", Example));
        }
        else if (names.IndexOf(name) < names.Count - 1)
        {
            refusals.Add(cell.Refuse(file, $"column '{name}' stands twice; it must stand once.", "Keep one of them."));
        }
    }

    private static bool IsWhole(List<string> names) =>
        (names.Count == 2 && names[1] == "height") || (names.Count == 3 && !names.Contains("height"));
}
