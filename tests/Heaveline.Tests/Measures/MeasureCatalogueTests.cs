using System.Text.RegularExpressions;
using Heaveline.Files;
using Heaveline.Measures;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Measures;

public class MeasureCatalogueTests
{
    private static readonly string Glossary = Path.Combine(Checkout.Root, "docs", "glossary.md");

    public static TheoryData<string> Subjects => [.. MeasureCatalogue.Subjects.Select(s => s.Subject)];

    [Theory, MemberData(nameof(Subjects))]
    public void One_key_has_one_label_one_unit_and_one_meaning(string subject)
    {
        var measures = MeasureCatalogue.Subjects.Single(s => s.Subject == subject).Measures;
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
        MeasureCatalogue.Subjects
            .SelectMany(s => s.Measures).GroupBy(m => m.Key).Where(g => g.Select(m => m.Unit).Distinct().Count() > 1).Select(g => g.Key));

    [Fact]
    public void Words_of_the_command_line_are_told_apart() =>
        Assert.Equal(PassCatalogue.Judges.Count, PassCatalogue.Judges.Select(m => m.Word).Distinct().Count());

    [Fact]
    public void The_glossary_holds_every_measure()
    {
        var text = File.ReadAllText(Glossary).ReplaceLineEndings("\n");
        var at = text.IndexOf("## Measures\n", StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("HEAVELINE_WRITE_DOCS") == "1")
        {
            WholeFile.Write(Glossary, System.Text.Encoding.UTF8.GetBytes((at < 0 ? text + "\n" : text[..at]) + MeasureCatalogue.Page));
            return;
        }

        Assert.Equal(MeasureCatalogue.Page, at < 0 ? "" : text[at..]);
    }

    // A label that is written a second time will one day say something else. Terms of the trade that the glossary explains may be written anywhere,
    // and the rooms before this one name quantities, not measures.
    [Fact]
    public void No_label_of_a_measure_is_written_outside_the_room_of_measures()
    {
        string[] upstream = ["Quantities", "Numerics", "Cars", "Roads", "Worksheets", "Models", "Modes", "Passes", "Rides", "Measures"];
        var terms = Regex.Matches(File.ReadAllText(Glossary).Split("## Measures")[0], @"^\| ([^|]+) \|", RegexOptions.Multiline)
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

    // Degrees, km/h and the true minus: one place each.
    [Fact]
    public void Units_turn_and_numbers_get_their_minus_in_the_room_of_quantities()
    {
        var turned = new Regex(@"180\.0 ?/ ?Math\.PI|Math\.PI ?/ ?180|\b3\.6 \*|[*/] 3\.6\b|Replace\('-', '−'\)");
        string[] pages = [.. Directory.EnumerateFiles(Path.Combine(Checkout.Root, "src"), "*.razor", SearchOption.AllDirectories)];
        Assert.Equal(
            // The speed of the roughness index is a constant of its definition.
            ["src/Heaveline/Roads/GoldenCar.cs"],
            from file in Checkout.Sources("src").Concat(pages)
            let place = Checkout.Relative(file)
            where !place.StartsWith("src/Heaveline/Quantities/", StringComparison.Ordinal) && turned.IsMatch(File.ReadAllText(file))
            select place);
    }
}
