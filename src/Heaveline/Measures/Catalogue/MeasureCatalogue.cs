using System.Text;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>Every measure that there is, by what it is of: what the glossary lists.</summary>
public static class MeasureCatalogue
{
    private static readonly SeatPlace Seat = SeatPlace.Of("seat");
    private static readonly WheelPlace Wheel = new("wheel", "wheel", HasSides: true, [0]);

    // Travels of a wheel stand among the side effects.
    private static IEnumerable<Measure> Details =>
        RestDetailCatalogue.Of([Wheel]).ExceptBy(SideEffectCatalogue.Of(Wheel).Select(m => m.Key), m => m.Key);

    /// <summary>Subjects in words, each with its measures; a measure of each seat or wheel stands once, at a place called seat or wheel.</summary>
    public static IReadOnlyList<(string Subject, IReadOnlyList<Measure> Measures)> Subjects { get; } =
    [
        ("a pass", PassCatalogue.Of([Seat], [Wheel])),
        ("a car at rest", [.. RestCatalogue.All.Union(SideEffectCatalogue.Of([Wheel])).Concat(Details)]),
        ("a car on a random road", [.. RideCatalogue.Of([Seat]), RideCatalogue.WorstLoadVariation]),
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
