using System.Text;
using Heaveline.Cli;
using Heaveline.Cli.Output;
using Heaveline.Files;
using Heaveline.Tests.Files;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>Where a command writes: through links and devices, to standard output, and never over what it reads.</summary>
public class OutputTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";

    [Fact]
    public void The_width_of_a_picture_is_asked_where_there_is_one_and_nowhere_else()
    {
        Assert.Contains("--column", Spoken.Of("pass", "--help").Results, StringComparison.Ordinal);
        Assert.All(
            ["new", "check", "cure", "report", "serve", "worksheet"],
            command => Assert.DoesNotContain("--column", Spoken.Of(command, "--help").Results, StringComparison.Ordinal));
        var without = Spoken.Of("pass", "examples/garage/fern-saloon.yaml", "--column");
        Assert.Equal((2, "heaveline: --column speaks of the file of --figure: give that too, or leave it out.\n"), (without.Code, without.Remarks));
    }

    [Theory]
    [InlineData("pass", "--csv", "out.csv", "/dev/null")]
    [InlineData("pass", "--figure", "out.svg", "/dev/null")]
    [InlineData("report", "--out", "out.html", "/dev/null")]
    public void A_device_is_written_through_and_stays_one(string command, string option, string link, string device)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "There are no device nodes here.");
        using var scratch = new Scratch();
        File.CreateSymbolicLink(scratch[link], device);
        foreach (var file in new[] { device, scratch[link] })
        {
            var said = Spoken.Of([command, Saloon, .. command == "report" ? ["--parts", "modes"] : Array.Empty<string>(), option, file]);
            Assert.Equal((0, ""), (said.Code, said.Remarks));
            Assert.Equal(FileNodeKind.Special, FileNode.Of(device));
        }

        Assert.Equal(device, new FileInfo(scratch[link]).LinkTarget);
    }

    [Fact]
    public void A_device_that_is_full_is_said()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "There is no /dev/full here.");
        var said = Spoken.Of("pass", Saloon, "--csv", "/dev/full");
        Assert.Equal(3, said.Code);
        Assert.StartsWith("heaveline: ", said.Remarks, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("link.csv")]
    [InlineData("sub/../lane.csv")]
    [InlineData("up/lane.csv")]
    public void A_profile_that_is_read_is_not_written_over_through_a_link_or_by_another_spelling(string name)
    {
        using var scratch = new Scratch();
        var profile = "distance [m],height [mm]\n" + string.Concat(
            Enumerable.Range(0, 60).Select(i => FormattableString.Invariant($"{0.1 * i:F1},{i % 3}\n")));
        File.WriteAllText(scratch["lane.csv"], profile);
        Directory.CreateDirectory(scratch["sub"]);
        File.CreateSymbolicLink(scratch["link.csv"], "lane.csv");
        Directory.CreateSymbolicLink(scratch["up"], scratch[""]);
        var said = Spoken.Of("pass", Saloon, "--road", scratch["lane.csv"], "--csv", scratch[name]);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains("is read for the answer and is not written over", said.Remarks, StringComparison.Ordinal);
        Assert.Equal(profile, File.ReadAllText(scratch["lane.csv"]));
    }

    [Theory]
    [InlineData("pass", "--figure", "car.svg")]
    [InlineData("report", "--out", "car.html")]
    public void A_figure_or_a_report_is_not_written_over_the_car_through_a_link(string command, string option, string link)
    {
        using var scratch = new Scratch();
        var text = File.ReadAllText(Path.Combine(Checkout.Root, Saloon));
        File.WriteAllText(scratch["car.yaml"], text);
        File.CreateSymbolicLink(scratch[link], "car.yaml");
        var said = Spoken.Of(command, scratch["car.yaml"], option, scratch[link]);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains("is read for the answer and is not written over", said.Remarks, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(scratch["car.yaml"]));
    }

    [Theory]
    [InlineData("-")]
    [InlineData("/dev/stdout")]
    public void Numbers_sent_to_standard_output_are_alone_there(string name)
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Spoken.Of("pass", Saloon, "--csv", scratch["numbers.csv"]).Code);
        var said = Spoken.Of("pass", Saloon, "--csv", name);
        Assert.Equal((0, File.ReadAllText(scratch["numbers.csv"])), (said.Code, said.Results));
        Assert.Contains("Fern saloon", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_sent_to_standard_output_is_an_svg_byte_for_byte_and_a_report_a_page()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Spoken.Of("pass", Saloon, "--figure", scratch["figure.svg"]).Code);
        using var sent = new MemoryStream();
        using (var results = new StreamWriter(sent, new UTF8Encoding(false)))
        using (var remarks = new StringWriter())
        {
            string[] line = ["pass", Path.Combine(Checkout.Root, Saloon), "--figure", "-"];
            Assert.Equal(0, Program.Run(line, new Streams(results, remarks, interactive: false)));
        }

        Assert.Equal(File.ReadAllBytes(scratch["figure.svg"]), sent.ToArray());
        var report = Spoken.Of("report", Saloon, "--parts", "modes", "--out", "-");
        Assert.Equal(0, report.Code);
        Assert.StartsWith("<!DOCTYPE html>", report.Results, StringComparison.OrdinalIgnoreCase);
        Assert.EndsWith("</html>\n", report.Results, StringComparison.OrdinalIgnoreCase);
        Assert.EndsWith(", written to -.\n", report.Remarks, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--csv", "-", "--json")]
    [InlineData("--csv", "-", "--figure", "-")]
    public void Standard_output_takes_one_thing(params string[] options)
    {
        var said = Spoken.Of(["pass", Saloon, .. options]);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains("standard output takes one thing", said.Remarks, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("numbers.csv", "figure.svg")]
    [InlineData("numbers.csv", "sub/../figure.svg")]
    public void Two_outputs_never_share_a_file(string numbers, string figure)
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch["sub"]);
        File.CreateSymbolicLink(scratch["numbers.csv"], "both.txt");
        File.CreateSymbolicLink(scratch["figure.svg"], "both.txt");
        var said = Spoken.Of("pass", "nowhere.yaml", "--csv", scratch[numbers], "--figure", scratch[figure]);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains("this is the file of --figure too, and takes one of them", said.Remarks, StringComparison.Ordinal);
        Assert.False(File.Exists(scratch["both.txt"]));
    }

    [Fact]
    public void Nor_a_pipe_but_a_device_that_swallows_everything_takes_both()
    {
        using var scratch = new Scratch();
        var pipe = Fifo.At(scratch["pipe.csv"]);
        Assert.Contains("takes one of them", Spoken.Of("pass", Saloon, "--csv", pipe, "--figure", pipe).Remarks, StringComparison.Ordinal);
        Assert.Equal(0, Spoken.Of("pass", Saloon, "--csv", "/dev/null", "--figure", "/dev/null").Code);
    }

    [Fact]
    public void A_pipe_in_place_of_a_car_ends_every_command_at_once()
    {
        using var scratch = new Scratch();
        var pipe = Fifo.At(scratch["car.yaml"]);
        foreach (var command in new[] { "check", "describe", "pass", "why", "doubt" })
        {
            var said = Fifo.Soon(() => Spoken.Of(command, pipe));
            Assert.Equal(1, said.Code);
            Assert.Contains("is no regular file", said.Remarks, StringComparison.Ordinal);
        }
    }
}
