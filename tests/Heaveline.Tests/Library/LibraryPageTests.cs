using System.Text.RegularExpressions;
using Heaveline.Tests.House;
using Samples;

namespace Heaveline.Tests.Library;

/// <summary>What docs/library.md shows of C# is compiled here, and what it says that this prints is what it prints.</summary>
public class LibraryPageTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "library.md")).ReplaceLineEndings("\n");

    [Fact]
    public void The_page_shows_the_samples_word_for_word() =>
        Assert.Equal([.. Regions(nameof(CarInCode)), .. Regions(nameof(CarFromText))], Blocks("csharp"));

    [Fact]
    public void The_samples_print_what_the_page_quotes() =>
        Assert.Equal(string.Join('\n', Blocks("text")), (Printed(CarInCode.Run) + Printed(CarFromText.Run)).TrimEnd('\n'));

    private static string Printed(Action<TextWriter> sample)
    {
        using var output = new StringWriter();
        sample(output);
        return output.ToString().ReplaceLineEndings("\n");
    }

    private static IEnumerable<string> Blocks(string language) =>
        Regex.Matches(Page, $"^```{language}\n(.*?)\n```$", RegexOptions.Multiline | RegexOptions.Singleline).Select(m => m.Groups[1].Value);

    // What stands between #region and #endregion, moved left as far as its first line stands in.
    private static IEnumerable<string> Regions(string sample)
    {
        var text = File.ReadAllText(Path.Combine(Checkout.Root, "tests", "Heaveline.Tests", "Library", "Samples", sample + ".cs"));
        foreach (Match region in Regex.Matches(
            text.ReplaceLineEndings("\n"), @"^( *)#region \w+\n(.*?)\n *#endregion$", RegexOptions.Multiline | RegexOptions.Singleline))
        {
            var indent = region.Groups[1].Value;
            yield return string.Join('\n', region.Groups[2].Value.Split('\n')
                .Select(line => line.StartsWith(indent, StringComparison.Ordinal) ? line[indent.Length..] : line));
        }
    }
}
