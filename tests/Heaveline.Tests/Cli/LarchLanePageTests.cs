using System.Text.RegularExpressions;
using Heaveline.Tests.Drives.Lanes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>The story of Larch Lane quotes the program, on logs that are made when the test runs.</summary>
public class LarchLanePageTests
{
    private const string Fern = "examples/garage/fern-saloon.yaml";

    [Fact]
    public void The_program_prints_every_line_that_the_story_quotes()
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch["after"]);
        foreach (var (name, lane) in new[] { ("before", LarchLane.Before), ("morning", LarchLane.Morning), ("evening", LarchLane.Evening) })
        {
            File.WriteAllText(scratch[$"{name}.csv"], LaneWriter.Whole(lane.Log));
        }

        foreach (var (name, text) in LaneWriter.Apart(LarchLane.After.Log))
        {
            File.WriteAllText(Path.Combine(scratch["after"], name), text);
        }

        var page = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "guide", "lump-in-the-road.md")).ReplaceLineEndings("\n");
        var blocks = Regex.Matches(page, "^```text\n\\$ \\./run (.*?)\n(.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline);
        Assert.Equal(3, blocks.Count);
        // The car lies beside what is written of it.
        File.Copy(Path.Combine(Checkout.Root, Fern), scratch["fern-saloon.yaml"]);
        foreach (Match block in blocks)
        {
            var isDrive = block.Groups[1].Value.StartsWith("drive ", StringComparison.Ordinal);
            var said = Spoken.Of(
            [
                .. Spoken.Words(block.Groups[1].Value).Select(word => word == Fern && isDrive ? scratch["fern-saloon.yaml"]
                    : word.StartsWith("larch-lane/", StringComparison.Ordinal) ? scratch[word["larch-lane/".Length..]] : word),
                .. isDrive ? new[] { "--write", scratch["chapel.yaml"], "--write-twin", scratch["as-driven.yaml"] } : [],
            ]);
            Assert.True(said.Code == 0, said.Remarks);
            if (isDrive)
            {
                Assert.Contains($"--write '{scratch["chapel.yaml"]}': written.", said.Remarks, StringComparison.Ordinal);
                Assert.Contains($"writes '{scratch["chapel.csv"]}' beside it: written.", said.Remarks, StringComparison.Ordinal);
                Assert.Contains($"--write-twin '{scratch["as-driven.yaml"]}': written.", said.Remarks, StringComparison.Ordinal);
                var check = Spoken.Of("check", scratch["as-driven.yaml"]);
                Assert.True(check.Code == 0, check.Remarks);
                var pass = Spoken.Of("pass", scratch["as-driven.yaml"], "--load", LarchLane.Load, "--road", scratch["chapel.yaml"]);
                Assert.Contains("left and right alike", pass.Results, StringComparison.Ordinal);
            }
            else if (block.Groups[1].Value.Contains("--change", StringComparison.Ordinal))
            {
                Quoted(page, said.Results);
            }

            var lines = said.Results.Split('\n').Select(l => l.TrimEnd()).ToList();
            foreach (var quote in block.Groups[2].Value.Split('\n').Where(l => l.Length > 0))
            {
                Assert.True(
                    lines.Exists(l => quote.EndsWith('…') ? l.StartsWith(quote[..^1], StringComparison.Ordinal) : l == quote),
                    $"not printed: {quote}\n{said.Results}");
            }
        }
    }

    // What the pages say of the forecast in words of their own has the digits of the printout.
    private static void Quoted(string page, string printed)
    {
        var words = Regex.Match(printed, @"said −([0-9.]+) % \(.*?\), measured −([0-9.]+) % \(−([0-9.]+)…−([0-9.]+)\)").Groups;
        Assert.Contains(
            $"It said {words[1]} % less, {words[2]} % less was measured, from {words[4]} to {words[3]}.", page, StringComparison.Ordinal);
        var other = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "guide", "did-the-change-work.md"));
        Assert.Contains($"where the car files said {words[1]} % and {words[2]} % was measured", other, StringComparison.Ordinal);
    }
}
