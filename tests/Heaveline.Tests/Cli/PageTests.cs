using System.Text.RegularExpressions;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

public class PageTests
{
    public static TheoryData<string> Pages =>
        [.. Directory.EnumerateFiles(Path.Combine(Checkout.Root, "docs"), "*.md", SearchOption.AllDirectories)
            .Append(Path.Combine(Checkout.Root, "README.md"))
            .Where(f => Consoles(f).Any()).Select(Checkout.Relative).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Pages))]
    public void The_program_prints_every_line_that_a_page_quotes(string page)
    {
        var missing = new List<string>();
        foreach (var (command, quoted) in Consoles(Path.Combine(Checkout.Root, page)))
        {
            using var scratch = new Scratch();
            var said = Spoken.Of([.. Spoken.Words(command)
                .Select(word => Regex.IsMatch(word, @"\.(svg|png|pdf|csv|html)$") && !IsRead(word) ? scratch[Path.GetFileName(word)] : word)]);
            Assert.True(said.Code == 0, $"{page}: $ ./run {command}\n{said.Remarks}");
            var lines = said.Results.Split('\n').Select(l => l.TrimEnd()).ToList();
            var at = 0;
            foreach (var quote in quoted)
            {
                // In the order of the printout, so that a row is that of the table it is quoted under.
                var found = lines.FindIndex(at, l => quote.EndsWith('…') ? l.StartsWith(quote[..^1], StringComparison.Ordinal) : l == quote);
                if (found < 0)
                {
                    missing.Add($"$ ./run {command}\n  does not print: {quote}");
                }
                else
                {
                    at = found + 1;
                }
            }
        }

        Assert.True(missing.Count == 0, $"{page}:\n{string.Join('\n', missing)}");
    }

    // A sheet of parts, and what was kept of a film, is read; what else ends so is written.
    private static bool IsRead(string word) =>
        word.StartsWith("examples/parts/", StringComparison.Ordinal) || word.StartsWith("examples/films/", StringComparison.Ordinal);

    [Fact]
    public void The_story_quotes_the_program_at_length() =>
        Assert.True(Consoles(Path.Combine(Checkout.Root, "docs", "guide", "from-scales-to-cure.md")).Sum(c => c.Quoted.Count) > 30);

    // ```console blocks: "$ ./run …" lines, each followed by lines of what it prints; an ellipsis alone marks a gap.
    private static IEnumerable<(string Command, IReadOnlyList<string> Quoted)> Consoles(string page)
    {
        foreach (Match block in Regex.Matches(
            File.ReadAllText(page).ReplaceLineEndings("\n"), "^```console\n(.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline))
        {
            var lines = block.Groups[1].Value.Split('\n').Select(l => l.TrimEnd()).ToList();
            for (var i = 0; i < lines.Count; i++)
            {
                if (lines[i].StartsWith("$ ./run ", StringComparison.Ordinal))
                {
                    yield return (
                        lines[i]["$ ./run ".Length..],
                        [.. lines.Skip(i + 1).TakeWhile(l => !l.StartsWith('$')).Where(l => l.Length > 0 && l != "…")]);
                }
            }
        }
    }
}
