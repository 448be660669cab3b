using System.Text;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Every number that a table holds, by what it is of: the measures and what single questions add to them.</summary>
public static class Glossary
{
    /// <summary>Subjects in words, each with its measures; a measure of each seat or wheel stands once, at a place called seat or wheel.</summary>
    public static IReadOnlyList<(string Subject, IReadOnlyList<Measure> Measures)> Subjects { get; } =
    [
        .. MeasureCatalogue.Subjects,
        ("a seat on a pass, by the comfort standard", ComfortTable.Measures),
        ("a damped mode", ModesTable.Measures),
        ("an interconnection on the bench", LinkTable.Measures),
        ("a road", RoadTable.Measures),
        ("a log of a drive", DriveTable.Measures),
        ("a hump of a test day", PlanTable.Measures),
        ("cable ties on the damper rods", TiesTable.Measures),
        ("a row of planks", PlankTable.Measures),
        ("a bump of a drive", EventTable.Measures),
        ("the floor in a drive", FloorTable.Measures),
        ("a car told by a drive", DriveCarTable.Measures),
        ("a site of a drive, by speed", SiteSpeedTable.Measures),
        ("the road along a drive", RoughnessTable.Measures),
        ("a film of a passing car", FilmTable.Measures),
        ("a headlamp at night", FlashTable.Measures),
        ("two drives compared", ProveTable.Measures),
        ("what changed in a car", ChangeTable.Measures),
        ("a rule of the trade", RuleTables.Measures),
        ("a kit's tolerances", ToleranceTable.Measures),
    ];

    /// <summary>The glossary's part that is made from the measures, in Markdown.</summary>
    public static string Page
    {
        get
        {
            var text = new StringBuilder("## Measures\n\nMade from the program's own list of measures; do not edit below this line. ");
            text.Append("*seat* and *wheel* stand for each of them by its name.\n");
            foreach (var (subject, measures) in Subjects)
            {
                text.Append($"\n### Of {subject}\n\n| measure | key | unit | better | what it is | defined in |\n|---|---|---|---|---|---|\n");
                foreach (var measure in measures)
                {
                    var unit = measure.Unit == In.Plain ? "" : measure.Unit.Symbol;
                    var page = $"[{Path(measure.Page)}]({measure.Page})";
                    text.Append($"| {Names(measure)} | `{measure.Key}` | {unit} | {Word(measure.Better)} | {measure.Says} | {page} |\n");
                }
            }

            return text.ToString();
        }
    }

    private static string Names(Measure measure) =>
        string.Join("; ", new[] { measure.Label, measure.Name, measure.ShortLabel, measure.CaptionLabel }.Distinct());

    private static string Word(Better better) => better switch { Better.Less => "less", Better.More => "more", _ => "" };

    private static string Path(string page) => page.Split('/')[^1].Split('.')[0];
}
