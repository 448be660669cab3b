using System.Text.RegularExpressions;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

public class KeptFigureTests
{
    private static readonly string Script = Path.Combine(Checkout.Root, "eng", "figures.sh");

    public static TheoryData<string> Lines =>
        [.. Regex.Matches(File.ReadAllText(Script), @"^\./run (.+ --figure docs/figures/\S+\.svg)", RegexOptions.Multiline)
            .Select(m => m.Groups[1].Value)];

    // SVG holds places rounded to a hundredth of a point, far above the rounding of any machine.
    [Theory, MemberData(nameof(Lines))]
    public void A_figure_of_the_pages_is_what_the_program_writes(string line)
    {
        using var scratch = new Scratch();
        var words = Spoken.Words(line).ToList();
        var kept = Path.Combine(Checkout.Root, words[^1]);
        Assert.Equal(0, Spoken.Of([.. words[..^1], scratch["figure.svg"]]).Code);
        if (KeptAnswers.Renew)
        {
            File.Copy(scratch["figure.svg"], kept, overwrite: true);
            return;
        }

        Assert.True(File.Exists(kept), $"{words[^1]} is missing; eng/figures.sh makes it.");
        Assert.True(
            File.ReadAllBytes(kept).AsSpan().SequenceEqual(File.ReadAllBytes(scratch["figure.svg"])),
            $"{words[^1]} is not what the program draws now; eng/figures.sh makes it anew.");
    }

    [Fact]
    public void Every_kept_figure_comes_from_the_script() => Assert.Equal(
        Lines.Select(row => Path.GetFileName(row.Data.Split(' ')[^1])).Order(StringComparer.Ordinal),
        Directory.EnumerateFiles(Path.Combine(Checkout.Root, "docs", "figures")).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
}
