using System.Text.RegularExpressions;
using Heaveline.Files;
using Heaveline.Measures;
using Heaveline.Studies;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Measures;

public class MeasureCatalogueTests
{
    private static readonly string GlossaryFile = Path.Combine(Checkout.Root, "docs", "glossary.md");

    public static TheoryData<string> Subjects => [.. Glossary.Subjects.Select(s => s.Subject)];

    [Theory, MemberData(nameof(Subjects))]
    public void One_key_has_one_label_one_unit_and_one_meaning(string subject)
    {
        var measures = Glossary.Subjects.Single(s => s.Subject == subject).Measures;
        Assert.Empty(measures.GroupBy(m => m.Key).Where(g => g.Count() > 1).Select(g => g.Key));
        Assert.Empty(measures.GroupBy(m => m.Name).Where(g => g.Count() > 1).Select(g => g.Key));
        Assert.All(measures, m =>
        {
            Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", m.Key);
            Assert.Matches(@"^[^\s].*[^\s.]$", m.Label);
            Assert.EndsWith(".", m.Says, StringComparison.Ordinal);
            Assert.InRange(m.Digits, 0, 4);
            Assert.True(File.Exists(Path.Combine(Checkout.Root, "docs", m.Page)), m.Page);
        });
    }

    // What is shown of a key may not depend on where it is shown: a key of two subjects has one unit too.
    [Fact]
    public void A_key_that_two_subjects_share_has_one_unit() => Assert.Empty(
        Glossary.Subjects
            .SelectMany(s => s.Measures).GroupBy(m => m.Key).Where(g => g.Select(m => m.Unit).Distinct().Count() > 1).Select(g => g.Key));

    // The same number of a pass and of a random road has one key.
    [Fact]
    public void A_key_of_a_questions_own_table_is_of_that_table_alone()
    {
        var own = Glossary.Subjects.Select(s => s.Subject).Except(MeasureCatalogue.Subjects.Select(s => s.Subject));
        Assert.Empty(
            Glossary.Subjects.SelectMany(s => s.Measures.Select(m => (m.Key, s.Subject)))
                .GroupBy(one => one.Key, one => one.Subject).Where(g => g.Count() > 1 && g.Intersect(own).Any()).Select(g => g.Key));
    }

    // A row whose key stands in no list, and is made of none that does, is missing from the glossary. Worksheets' rows are of one sheet each;
    // those of a list of parts are the keys of its file (docs/parts-file.md).
    [Fact]
    public void Rows_of_tables_are_of_listed_measures() => Assert.Equal(
        [],
        from file in Checkout.Sources("src", "Heaveline", "Studies")
        let place = Checkout.Relative(file)
        where !place.Contains("/Studies/Worksheet/", StringComparison.Ordinal) && !place.Contains("/Studies/Parts/", StringComparison.Ordinal)
        from Match row in Regex.Matches(File.ReadAllText(file), @"\.Add\(\s*\$?""(?!{measure\.Key}-)[^""]*"",")
        select $"{place}: {row.Value}");

    [Fact]
    public void Words_of_the_command_line_are_told_apart() =>
        Assert.Equal(PassCatalogue.Judges.Count, PassCatalogue.Judges.Select(m => m.Word).Distinct().Count());

    [Fact]
    public void The_glossary_holds_every_measure()
    {
        var text = File.ReadAllText(GlossaryFile).ReplaceLineEndings("\n");
        var at = text.IndexOf("## Measures\n", StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("HEAVELINE_WRITE_DOCS") == "1")
        {
            WholeFile.Write(GlossaryFile, System.Text.Encoding.UTF8.GetBytes((at < 0 ? text + "\n" : text[..at]) + Glossary.Page));
            return;
        }

        Assert.Equal(Glossary.Page, at < 0 ? "" : text[at..]);
    }

    // A label that is written a second time will one day say something else. Terms of the trade that the glossary explains may be written anywhere,
    // and the rooms before this one name quantities, not measures.
    [Fact]
    public void No_label_of_a_measure_is_written_outside_the_room_of_measures()
    {
        string[] upstream = ["Quantities", "Numerics", "Cars", "Roads", "Worksheets", "Models", "Modes", "Passes", "Rides", "Measures"];
        var terms = Regex.Matches(File.ReadAllText(GlossaryFile).Split("## Measures")[0], @"^\| ([^|]+) \|", RegexOptions.Multiline)
            .SelectMany(m => m.Groups[1].Value.Split(", "));
        var labels = MeasureCatalogue.Subjects.SelectMany(s => s.Measures).SelectMany(m => new[] { m.Label, m.Name, m.ShortLabel, m.CaptionLabel })
            .Where(label => label.Contains(' ', StringComparison.Ordinal)).Except(terms).ToHashSet();
        string[] pages = [.. Directory.EnumerateFiles(Path.Combine(Checkout.Root, "src"), "*.razor", SearchOption.AllDirectories)];
        var offenders =
            from file in Checkout.Sources("src").Concat(pages)
            where !upstream.Any(room => Checkout.Relative(file).StartsWith($"src/Heaveline/{room}/", StringComparison.Ordinal))
            from Match literal in Regex.Matches(File.ReadAllText(file), "\"([^\"\n]+)\"")
            where labels.Contains(literal.Groups[1].Value)
            select $"{Checkout.Relative(file)}: \"{literal.Groups[1].Value}\"";
        Assert.Equal([], offenders);
    }

    // Degrees, km/h, thousandths, millionths and the true minus: one place each.
    [Fact]
    public void Units_turn_and_numbers_get_their_minus_in_the_room_of_quantities()
    {
        var turned = new Regex(
            @"180\.0 ?/ ?Math\.PI|Math\.PI ?/ ?180|\b3\.6 \*|[*/] 3\.6\b|Replace\('-', '−'\)"
            + @"|[*/] ?(?:1000(?:\.0)?|1e-?[36])\b(?!\.)|(?<![\w.])(?:1000\.0|1e-3|1e6) \*");
        string[] pages = [.. Directory.EnumerateFiles(Path.Combine(Checkout.Root, "src"), "*.razor", SearchOption.AllDirectories)];
        Assert.Equal(
            // A speed and a unit of the roughness index' definition, a price of no unit, and sliders of rates in N/mm and volumes in litres, whose
            // text must stay what was typed: times 1e-3 and over 1000 differ in the last digit.
            [
                "src/Heaveline.Press/Plates/BesideMarks.cs",
                "src/Heaveline.Web/Pages/Passes/SettingNotes.cs",
                "src/Heaveline.Web/Pages/Rules/TrialLink.cs",
                "src/Heaveline.Web/Tuning/SettingWords.cs",
                "src/Heaveline/Roads/GoldenCar.cs",
                "src/Heaveline/Roads/Iri.cs",
                "src/Heaveline/Roads/IriSegment.cs",
                "src/Heaveline/Tuning/LinkSetting.cs",
                "src/Heaveline/Tuning/SpringSetting.cs",
            ],
            from file in Checkout.Sources("src").Concat(pages)
            let place = Checkout.Relative(file)
            where !place.StartsWith("src/Heaveline/Quantities/", StringComparison.Ordinal)
                && File.ReadLines(file).Any(line => !line.TrimStart().StartsWith("///", StringComparison.Ordinal) && turned.IsMatch(line))
            orderby place
            select place);
    }
}
