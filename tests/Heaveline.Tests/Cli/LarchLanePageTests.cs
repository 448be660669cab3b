using System.Text.RegularExpressions;
using Heaveline.Tests.Drives.Lanes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>The story of Larch Lane quotes the program, on logs that are made when the test runs.</summary>
public class LarchLanePageTests
{
    [Fact]
    public void The_program_prints_every_line_that_the_story_quotes()
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch["after"]);
        File.WriteAllText(scratch["before.csv"], LaneWriter.Whole(LarchLane.Before.Log));
        foreach (var (name, text) in LaneWriter.Apart(LarchLane.After.Log))
        {
            File.WriteAllText(Path.Combine(scratch["after"], name), text);
        }

        var page = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "guide", "lump-in-the-road.md")).ReplaceLineEndings("\n");
        var blocks = Regex.Matches(page, "^```text\n\\$ \\./run (.*?)\n(.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline);
        Assert.Equal(2, blocks.Count);
        foreach (Match block in blocks)
        {
            var said = Spoken.Of([.. Spoken.Words(block.Groups[1].Value)
                .Select(word => word.StartsWith("larch-lane/", StringComparison.Ordinal) ? scratch[word["larch-lane/".Length..]] : word)]);
            Assert.True(said.Code == 0, said.Remarks);
            var lines = said.Results.Split('\n').Select(l => l.TrimEnd()).ToList();
            foreach (var quote in block.Groups[2].Value.Split('\n').Where(l => l.Length > 0))
            {
                Assert.True(
                    lines.Exists(l => quote.EndsWith('…') ? l.StartsWith(quote[..^1], StringComparison.Ordinal) : l == quote),
                    $"not printed: {quote}\n{said.Results}");
            }
        }
    }
}
