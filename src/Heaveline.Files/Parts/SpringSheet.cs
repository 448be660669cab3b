using System.Globalization;
using Heaveline.Files.Roads;
using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Files.Parts;

/// <summary>
/// Springs as comma-separated text: a heading with a unit for each amount (<c>part, fits, rate [N/mm], free length [mm], price [EUR]</c>), then a row
/// a spring; a cell may carry its own unit and its doubt (<c>20.7 ± 3 %</c>). Blank lines and lines that begin with # are skipped. Everything
/// that is wrong with it is refused at once.
/// </summary>
public static class SpringSheet
{
    private const string Example = "Write the first line as 'part, fits, rate [N/mm], free length [mm], block length [mm], price [EUR], stock'.";
    private const int MostShown = 20;
    private const int MostRefusals = 300;
    private const int LongestHeading = 1000;

    private static readonly string[] Keys =
        ["part", "fits", "rate", "free-length", "block-length", "seat-diameter", "allowed-stress", "price", "stock", "maker", "pieces", "labour"];

    /// <summary>Reads a sheet.</summary>
    /// <param name="source">The text under its file's name, which without its ending names the list.</param>
    public static Reading<PartsList> Read(SourceText source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var refusals = new List<Refusal>();
        SpringColumn[]? columns = null;
        var rows = new List<SpringRow>();
        for (var number = 1; number <= source.LineCount && refusals.Count < MostRefusals; number++)
        {
            var line = source.Line(number);
            if (string.IsNullOrWhiteSpace(line) || line.AsSpan().TrimStart().StartsWith("#"))
            {
                continue;
            }

            if (columns is null)
            {
                columns = Heading(source.File, line, number, refusals);
                if (columns is null)
                {
                    break;
                }
            }
            else if (Row(source, line, number, columns, rows, refusals) is { } row)
            {
                rows.Add(row);
            }
        }

        if (refusals.Count == 0 && rows.Count == 0)
        {
            refusals.Add(new Refusal(source.File, 1, 1, 1, columns is null ? "the sheet is empty." : "the sheet has no spring.", Example));
        }

        return new Reading<PartsList>
        {
            Value = refusals.Count > 0 ? null : new PartsList
            {
                Name = Path.GetFileNameWithoutExtension(source.File) is { Length: > 0 } name ? name : source.File,
                Currency = Currency(columns!),
                Parts = [.. rows.Select(row => row.Part)],
            },
            Refusals = refusals,
            Warnings = refusals.Count > 0 ? [] :
            [
                .. rows.SelectMany(row => row.Warnings),
                .. PartSlips.Of([.. rows.Select(row => row.Part)]).Select(slip =>
                    rows.First(row => row.Part == slip.Part).At(columns!, slip.Key).Warn(source.File, $"{slip.Part.Name} {slip.Words}", slip.Advice)),
            ],
            Sources = [source],
            MostShown = MostShown,
        };
    }

    /// <summary>Whether a text is meant as a sheet: its heading has a column of parts and one of rates.</summary>
    /// <param name="beginning">The text, or its beginning.</param>
    public static bool IsMeant(string beginning)
    {
        ArgumentNullException.ThrowIfNull(beginning);
        var heading = beginning.Split('\n').FirstOrDefault(line => !string.IsNullOrWhiteSpace(line) && line.TrimStart()[0] != '#');
        string[] columns = [.. (heading ?? "").Split(',', ';', '\t').Select(cell => cell.Split('[')[0].Trim())];
        return columns.Contains("part") && columns.Contains("rate");
    }

    private static string Currency(SpringColumn[] columns) => columns.FirstOrDefault(column => column.Key == "price")?.Unit ?? "";

    private static SpringColumn[]? Heading(string file, string line, int number, List<Refusal> refusals)
    {
        if (line.Length > LongestHeading)
        {
            refusals.Add(new Refusal(file, number, 1, 1, "the heading is too long to be one.", Example));
            return null;
        }

        var cells = Cell.Of(line, number);
        if (cells.Count == 1 && line.IndexOfAny([';', '\t']) is var other and >= 0)
        {
            refusals.Add(new Refusal(
                file,
                number,
                other + 1,
                1,
                $"the columns are separated by {(line[other] == ';' ? "semicolons" : "tabs")}; they must be separated by commas.",
                "Save the table as comma-separated text with decimal points."));
            return null;
        }

        var columns = new List<SpringColumn>();
        foreach (var cell in cells)
        {
            var open = cell.Text.IndexOf('[', StringComparison.Ordinal);
            var key = (open < 0 ? cell.Text : cell.Text[..open]).Trim().Replace(' ', '-');
            var unit = open >= 0 && cell.Text.EndsWith(']') ? cell.Text[(open + 1)..^1].Trim() : "";
            var near = NearestWord.Of(key, Keys) is { } word ? $" Did you mean {word}?" : "";
            if (!Keys.Contains(key, StringComparer.Ordinal))
            {
                refusals.Add(cell.Refuse(file, $"column '{cell.Shown}' is not known.{near}", $"Columns are {string.Join(", ", Keys)}."));
            }
            else if (columns.Exists(column => column.Key == key))
            {
                refusals.Add(cell.Refuse(file, $"column '{key}' stands twice; it must stand once.", "Keep one of them."));
            }
            else if (key == "price" && unit.Length == 0)
            {
                refusals.Add(cell.Refuse(file, "column 'price' has no currency; it must have one in square brackets.", "Write price [EUR]."));
            }
            else if (key == "price" && PartWords.ReadCurrency(unit).Refusal is { } odd)
            {
                refusals.Add(cell.Refuse(file, odd.Message, odd.Advice));
            }
            else if (Misfit(key, unit) is { } why)
            {
                refusals.Add(cell.Refuse(file, $"unit of column '{key}' is '{unit}'; {why}", Example));
            }

            columns.Add(new SpringColumn(key, unit));
        }

        foreach (var key in new[] { "part", "rate" }.Where(key => !columns.Exists(column => column.Key == key)))
        {
            refusals.Add(new Refusal(file, number, 1, Math.Max(1, line.Length), $"there is no column '{key}'; there must be one.", Example));
        }

        return refusals.Count == 0 ? [.. columns] : null;
    }

    private static string? Misfit(string key, string unit) => unit.Length == 0 || key == "price" ? null : key switch
    {
        "rate" => QuantityText.Parse<Stiffness>($"1 {unit}").Refusal is null ? null : "it must be one of a spring rate: N/mm, kg/mm, lb/in.",
        "free-length" or "block-length" or "seat-diameter" =>
            QuantityText.Parse<Length>($"1 {unit}").Refusal is null ? null : "it must be one of a length: mm, cm, in.",
        "labour" => QuantityText.Parse<Time>($"1 {unit}").Refusal is null ? null : "it must be one of a time: h, min.",
        "allowed-stress" => QuantityText.Parse<Pressure>($"1 {unit}").Refusal is null ? null : "it must be one of a stress: MPa, psi.",
        _ => "it takes none.",
    };

    private static SpringRow? Row(
        SourceText source, string line, int number, SpringColumn[] columns, List<SpringRow> before, List<Refusal> refusals)
    {
        if (line.IndexOf('"', StringComparison.Ordinal) is var quote and >= 0)
        {
            refusals.Add(new Refusal(
                source.File, number, quote + 1, 1, "the row has a quote; cells stand without.", "Take quotes and commas out of the names."));
            return null;
        }

        var cells = Cell.Of(line, number);
        if (cells.Count != columns.Length)
        {
            refusals.Add(new Refusal(
                source.File,
                number,
                1,
                Math.Max(1, line.Length),
                string.Create(CultureInfo.InvariantCulture, $"the row has {cells.Count} cells; it must have {columns.Length}, one for each column."),
                "Separate cells with commas and write decimals with a point."));
            return null;
        }

        var row = new SpringRow(source, cells, columns, refusals);
        var part = row.Read();
        if (part is not null && before.Find(other => other.Part.Name == part.Name) is { } twice)
        {
            refusals.Add(row.At(columns, "part").Refuse(
                source.File,
                FormattableString.Invariant($"{part.Name} stands in the sheet already, in line {twice.At(columns, "part").Line}; each must stand ")
                    + "once.",
                "Take one out, or tell them apart."));
            return null;
        }

        return part is null ? null : row;
    }
}
