using Heaveline.Files;
using Heaveline.Files.Choosing;
using Heaveline.Files.Garages;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files.Choosing;

public class StudyTextTests
{
    public static TheoryData<string> Studies =>
        [.. Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "studies"), "*.yaml").Select(path => Path.GetFileName(path)!)];

    [Theory, MemberData(nameof(Studies))]
    public void What_is_written_of_a_study_is_read_again(string file)
    {
        var sheet = StudyFile.Load(Path.Combine(Checkout.Root, "examples", "studies", file)).Value!;
        var again = StudyFile.Read(new SourceText(file, StudyText.Of(sheet))).Value!;
        Assert.Equal((sheet.Name, sheet.Note), (again.Name, again.Note));
        Assert.Equal(sheet.Lines.Select(line => (line.Choice, line.Words)), again.Lines.Select(line => (line.Choice, line.Words)));
    }

    [Fact]
    public void Lines_that_ask_otherwise_are_written_into_the_text_and_all_else_in_it_stays()
    {
        var path = Path.Combine(Checkout.Root, "examples", "studies", "fern-four-up.yaml");
        var text = File.ReadAllText(path);
        var sheet = StudyFile.Load(path).Value!;
        var other = sheet with
        {
            Lines =
            [
                .. sheet.Lines.Where(line => line.Choice is not ("budget" or "with"))
                    .Select(line => line.Choice == "draws" ? line with { Words = "200" } : line),
                new("keep", "front bar", 1, 1, 1),
            ],
        };
        var edited = StudyText.Edited(text, other, ["budget", "with", "draws", "keep"]).Text!;
        var again = StudyFile.Read(new SourceText("x.yaml", edited)).Value!;
        Assert.Equal(
            other.Lines.Select(line => (line.Choice, line.Words)).Order(), again.Lines.Select(line => (line.Choice, line.Words)).Order());
        Assert.StartsWith("# What to buy for the Fern saloon", edited, StringComparison.Ordinal);
        Assert.Contains(
            "  - {road: village-hump, speeds: [25 km/h, 40 km/h], loads: [four up with luggage], weight: 2}\n", edited, StringComparison.Ordinal);
        Assert.Equal((sheet.Name, sheet.Note), (again.Name, again.Note));
        Assert.Equal(text, StudyText.Edited(text, sheet, []).Text);
    }

    [Fact]
    public void A_garage_lists_a_study_and_finds_what_it_names()
    {
        using var folder = new Heaveline.Tests.Cli.Scratch();
        var root = Path.GetDirectoryName(folder["x"])!;
        File.Copy(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"), folder["fern-saloon.yaml"]);
        File.Copy(Path.Combine(Checkout.Root, "examples", "parts", "village-autumn.yaml"), folder["village-autumn.yaml"]);
        File.Copy(Path.Combine(Checkout.Root, "examples", "parts", "shed.csv"), folder["shed.csv"]);
        File.WriteAllText(folder["profile.csv"], "x [m], left [m], right [m]\n0, 0, 0\n");
        const string Text = "study: autumn\ncar: fern-saloon.yaml\nparts: [village-autumn.yaml, shed.csv]\nuse: [{road: plank, speeds: [30 km/h]}]\n";
        File.WriteAllText(folder["autumn.yaml"], Text);
        var garage = new Garage(root);
        var entry = garage.List().Studies.Single();
        Assert.Equal(("autumn.yaml", "autumn", 0), (entry.Name, entry.Title, entry.Refusals));
        Assert.Equal(
            ["fern-saloon.yaml", "village-autumn.yaml", "shed.csv", "plank at 30 km/h"],
            garage.Study("autumn.yaml").Value!.Lines.Select(line => line.Words));
        var refused = garage.Study("autumn.yaml", Text.Replace("village-autumn", "village-winter", StringComparison.Ordinal));
        Assert.Equal((null, 3, 9), (refused.Value, refused.Refusals.Single().Line, refused.Refusals.Single().Column));
        Assert.Contains("leads out of the folder", garage.Study("a.yaml", Text.Replace("shed.csv", "../shed.csv", StringComparison.Ordinal))
            .Refusals.Single().Message, StringComparison.Ordinal);
        Assert.Equal(["shed.csv"], GarageSheets.Names(garage));
        Assert.NotEmpty(garage.Parts("shed.csv").Value!.Parts);
        Assert.Null(garage.Parts("../shed.csv").Value);
    }
}
