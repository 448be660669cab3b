using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

public class ReportTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";
    private const string Cured = "examples/garage/fern-saloon-cured.yaml";

    [Theory]
    [InlineData("html")]
    [InlineData("pdf")]
    public void Two_runs_write_the_same_bytes(string ending)
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch["again"]);
        foreach (var file in new[] { scratch[$"r.{ending}"], Path.Combine(scratch["again"], $"r.{ending}") })
        {
            var said = Spoken.Of("report", Saloon, Cured, "--parts", "car, compare, why, cost", "--speeds", "40 km/h", "--out", file);
            Assert.Equal((0, ""), (said.Code, said.Remarks));
        }

        Assert.Equal(File.ReadAllBytes(scratch[$"r.{ending}"]), File.ReadAllBytes(Path.Combine(scratch["again"], $"r.{ending}")));
    }

    // What a reader would do: save the texts that the page prints, type the line that it prints.
    [Theory]
    [InlineData("--road village-hump")]
    [InlineData(
        "--road examples/roads/country-lane.yaml --speed \"25 km/h\" --title \"Lane \\\"north\\\" & south\" --author O'Fern --class B --seed 3")]
    public void The_texts_and_the_line_in_a_report_make_it_again(string more)
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Spoken.Of(
        [
            "report", Saloon, Cured, .. Typed(more), "--load", "driver", "--parts", "cost,compare", "--speeds", "40 km/h", "--out", scratch["r.html"],
        ]).Code);
        var page = File.ReadAllText(scratch["r.html"]);
        var (line, texts) = Again(page);
        foreach (var (name, text, digest) in texts)
        {
            var file = Path.Combine(scratch["elsewhere"], name);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, text);
            Assert.Equal(digest, Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(file))));
        }

        var words = Typed(line).ToList();
        Assert.Equal("heaveline", words[0]);
        var there = words.Skip(1).Select(w => texts.Any(t => t.Name == w) || w == "r.html" ? Path.Combine(scratch["elsewhere"], w) : w);
        Assert.Equal(0, Spoken.Of([.. there]).Code);
        Assert.Equal(page, File.ReadAllText(Path.Combine(scratch["elsewhere"], "r.html")));
    }

    [Fact]
    public void A_text_keeps_its_line_ends_and_the_digest_of_its_file()
    {
        using var scratch = new Scratch();
        byte[] bytes = [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(StraightCar.Text.ReplaceLineEndings("\r\n"))];
        File.WriteAllBytes(scratch["straight.yaml"], bytes);
        Assert.Equal(0, Spoken.Of("report", scratch["straight.yaml"], "--parts", "cost", "--out", scratch["r.html"]).Code);
        var (_, texts) = Again(File.ReadAllText(scratch["r.html"]));
        Assert.Equal(StraightCar.Text.ReplaceLineEndings("\r\n"), texts[0].Text);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(bytes)), texts[0].Digest);
    }

    [Fact]
    public void A_report_does_not_say_where_its_files_lay()
    {
        using var scratch = new Scratch();
        Assert.Equal(
            0, Spoken.Of("report", Saloon, Cured, "--road", "examples/roads/school-table.yaml", "--parts", "cost", "--out", scratch["r.html"]).Code);
        var page = File.ReadAllText(scratch["r.html"]);
        Assert.DoesNotContain(Checkout.Root, page);
        Assert.DoesNotContain(Path.GetDirectoryName(scratch["r.html"])!, page);
        Assert.Equal(["garage/fern-saloon.yaml", "garage/fern-saloon-cured.yaml", "roads/school-table.yaml"], Again(page).Texts.Select(t => t.Name));
    }

    [Fact]
    public void A_car_whose_name_is_a_script_stays_a_name()
    {
        using var scratch = new Scratch();
        File.WriteAllText(
            scratch["evil.yaml"], Regex.Replace(StraightCar.Text, "^car:.*$", "car: \"<script>alert(1)</script>\"", RegexOptions.Multiline));
        Assert.Equal(0, Spoken.Of("report", scratch["evil.yaml"], "--parts", "all", "--samples", "50", "--out", scratch["r.html"]).Code);
        var page = File.ReadAllText(scratch["r.html"]);
        Assert.DoesNotContain("<script", page);
        Assert.Contains("<h1>&lt;script&gt;alert(1)&lt;/script&gt;</h1>", page);
    }

    [Theory]
    [InlineData(2, "--out", "r.doc", "must end in .html or .pdf")]
    [InlineData(2, "--parts", "car,soup", "'soup' is no part")]
    [InlineData(2, "--parts", "compare", "needs two cars")]
    [InlineData(2, "--parts", ",", "is empty")]
    [InlineData(2, "--class", "Z", "is no road class")]
    [InlineData(2, "--paper", "a3", "a3")]
    [InlineData(1, "--load", "elephant", "is no load state")]
    [InlineData(2, "--samples", "3", "10 to 1000000")]
    [InlineData(1, "--road", "nowhere", "no named road")]
    public void What_cannot_be_is_said_and_nothing_is_written(int code, string option, string value, string why)
    {
        using var scratch = new Scratch();
        List<string> line = ["report", Saloon, option, option == "--out" ? scratch[value] : value];
        if (option != "--out")
        {
            line.AddRange(["--out", scratch["r.html"]]);
        }

        var said = Spoken.Of([.. line]);
        Assert.Equal(code, said.Code);
        Assert.Contains(why, said.Remarks);
        Assert.Empty(scratch.Contents);
    }

    [Fact]
    public void A_folder_that_is_not_there_is_refused_as_by_every_other_command_before_anything_is_computed()
    {
        using var scratch = new Scratch();
        var file = Path.Combine(scratch["nowhere"], "r.pdf");
        var said = Spoken.Of("report", Saloon, "--parts", "cost", "--out", file);
        var neighbour = Spoken.Of("pass", Saloon, "--figure", file);
        Assert.Equal($"heaveline: --out '{file}': there is no folder '{scratch["nowhere"]}'.\n", said.Remarks.ReplaceLineEndings("\n"));
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Equal(
            (said.Code, said.Results, said.Remarks),
            (neighbour.Code, neighbour.Results, neighbour.Remarks.Replace("--figure", "--out", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_folder_where_the_report_is_to_be_is_refused()
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch["r.html"]);
        var said = Spoken.Of("report", Saloon, "--parts", "cost", "--out", scratch["r.html"]);
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains("this is a folder, not a file. Give another name.", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void The_kept_report_is_what_the_program_writes()
    {
        var line = Regex.Match(
            File.ReadAllText(Path.Combine(Checkout.Root, "eng", "figures.sh")),
            @"^\./run (report .+) --out (examples/reports/\S+\.html)",
            RegexOptions.Multiline);
        using var scratch = new Scratch();
        var kept = Path.Combine(Checkout.Root, line.Groups[2].Value);
        var made = scratch[Path.GetFileName(kept)];
        Assert.Equal(0, Spoken.Of([.. Typed(line.Groups[1].Value), "--out", made]).Code);
        if (KeptAnswers.Renew)
        {
            File.Copy(made, kept, overwrite: true);
        }

        Assert.InRange(new FileInfo(kept).Length, 1000, 350_000);
        Assert.True(
            File.ReadAllBytes(kept).AsSpan().SequenceEqual(File.ReadAllBytes(made)),
            $"{line.Groups[2].Value} is not what the program writes now; eng/figures.sh makes it anew.");
    }

    private static (string Line, List<(string Name, string Text, string Digest)> Texts) Again(string page)
    {
        var line = WebUtility.HtmlDecode(
            Regex.Match(page, "<pre tabindex=\"0\"><code>(heaveline report .*?)</code></pre>", RegexOptions.Singleline).Groups[1].Value);
        return (line, [.. Regex.Matches(
            page,
            "<h3 id=\"text-\\d+\">(.*?)</h3>\n<p class=\"quiet\">SHA-256 <code>([0-9a-f]{64})</code></p>\n<pre [^>]*><code>(.*?)</code></pre>",
            RegexOptions.Singleline)
            .Select(m => (WebUtility.HtmlDecode(m.Groups[1].Value), WebUtility.HtmlDecode(m.Groups[3].Value), m.Groups[2].Value))
            .Where(t => !t.Item1.StartsWith("roads/village", StringComparison.Ordinal))]);
    }

    // As a shell reads it: blanks between words, double quotes around them, a backslash before a quote inside.
    private static IEnumerable<string> Typed(string line) =>
        Regex.Matches(line, "\"((?:\\\\.|[^\"\\\\])*)\"|(\\S+)")
            .Select(m => m.Groups[2].Success ? m.Groups[2].Value : Regex.Replace(m.Groups[1].Value, @"\\(.)", "$1"));
}
