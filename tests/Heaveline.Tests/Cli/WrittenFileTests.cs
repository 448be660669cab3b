using System.Text;
using System.Xml.Linq;

namespace Heaveline.Tests.Cli;

public class WrittenFileTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";

    [Theory]
    [InlineData("describe examples/garage/fern-saloon.yaml")]
    [InlineData("describe examples/garage/fern-saloon.yaml --modes")]
    [InlineData("pass examples/garage/fern-saloon.yaml")]
    [InlineData("road examples/roads/country-lane.yaml")]
    [InlineData("compare examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml")]
    [InlineData("compare examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --speed \"30 km/h, 60 km/h\"")]
    public void Figures_are_written_whole_in_each_format(string line)
    {
        using var scratch = new Scratch();
        foreach (var ending in new[] { "svg", "png", "pdf" })
        {
            Assert.Equal(0, Spoken.Of([.. Spoken.Words(line), "--figure", scratch[$"figure.{ending}"]]).Code);
        }

        Assert.Equal(["figure.pdf", "figure.png", "figure.svg"], scratch.Contents);
        Assert.Equal("svg", XDocument.Load(scratch["figure.svg"]).Root!.Name.LocalName);
        var png = File.ReadAllBytes(scratch["figure.png"]);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], png[..8]);
        Assert.Equal("IEND", Encoding.ASCII.GetString(png[^8..^4]));
        var pdf = Encoding.Latin1.GetString(File.ReadAllBytes(scratch["figure.pdf"]));
        Assert.StartsWith("%PDF-", pdf);
        Assert.EndsWith("%%EOF", pdf.TrimEnd());
    }

    [Fact]
    public void A_figure_replaces_the_one_that_was_there()
    {
        using var scratch = new Scratch();
        var first = Spoken.Of("pass", Saloon, "--figure", scratch["figure.svg"]);
        Assert.Equal((0, ""), (first.Code, first.Remarks));
        File.WriteAllText(scratch["figure.svg"], "old");
        var said = Spoken.Of("pass", Saloon, "--figure", scratch["figure.svg"]);
        Assert.Equal(0, said.Code);
        Assert.Equal($"heaveline: --figure '{scratch["figure.svg"]}': a file of this name was there; it is replaced.\n", said.Remarks);
        Assert.Equal("svg", XDocument.Load(scratch["figure.svg"]).Root!.Name.LocalName);
    }

    [Theory]
    [InlineData("--figure", "taken.svg")]
    [InlineData("--csv", "taken.csv")]
    public void A_failing_write_leaves_no_half_file(string option, string name)
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch[name]);
        var said = Spoken.Of("pass", Saloon, option, scratch[name]);
        Assert.Equal(1, said.Code);
        Assert.StartsWith("heaveline: ", said.Remarks);
        Assert.Equal([name], scratch.Contents);
        Assert.Empty(Directory.EnumerateFileSystemEntries(scratch[name]));
    }

    [Theory]
    [InlineData("--figure", "figure.svg")]
    [InlineData("--csv", "traces.csv")]
    public void A_missing_folder_is_named(string option, string name)
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("pass", Saloon, option, Path.Combine(scratch["nowhere"], name));
        Assert.Equal(1, said.Code);
        Assert.Contains($"there is no folder '{scratch["nowhere"]}'", said.Remarks);
        Assert.DoesNotContain(".partial", said.Remarks);
        Assert.Empty(scratch.Contents);
    }

    [Theory]
    [InlineData("pass", "examples/garage/fern-saloon.yaml")]
    [InlineData("describe", "examples/garage/fern-saloon.yaml")]
    [InlineData("compare", "examples/garage/fern-saloon.yaml", "examples/garage/fern-saloon-cured.yaml")]
    public void A_format_that_is_not_there_is_refused_before_any_work(params string[] line)
    {
        using var scratch = new Scratch();
        var said = Spoken.Of([.. line, "--figure", scratch["figure.gif"]]);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.EndsWith("the name must end in .svg, .png or .pdf.\n", said.Remarks);
        Assert.Empty(scratch.Contents);
    }
}
