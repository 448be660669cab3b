using System.Reflection;
using System.Text.RegularExpressions;

namespace Heaveline.Tests.House;

public class HabitTests
{
    private const int LongestFile = 400;
    private const int LongestLine = 150;

    private static readonly string[] BannedNames = ["Util", "Utils", "Helper", "Helpers", "Manager", "Service", "Processor", "Common", "Misc"];

    [Fact]
    public void No_source_file_is_longer_than_400_lines() => Report(
        new[] { "src", "bench", "tests" }
            .SelectMany(folder => Checkout.Sources(folder))
            .Select(f => (File: f, Lines: File.ReadLines(f).Count()))
            .Where(f => f.Lines > LongestFile)
            .Select(f => $"{Checkout.Relative(f.File)}: {f.Lines} lines"));

    [Fact]
    public void No_line_is_wider_than_150_characters() => Report(
        new[] { "src", "bench", "tests" }
            .SelectMany(folder => Checkout.Sources(folder))
            .SelectMany(f => File.ReadLines(f).Select((line, n) => (Place: $"{Checkout.Relative(f)}:{n + 1}", line.Length)))
            .Where(line => line.Length > LongestLine)
            .Select(line => $"{line.Place}: {line.Length} characters"));

    [Fact]
    public void The_median_source_file_is_short()
    {
        var lengths = Checkout.Sources("src").Select(f => File.ReadLines(f).Count()).Order().ToList();
        Assert.InRange(lengths[lengths.Count / 2], 1, 100);
    }

    [Fact]
    public void No_type_carries_a_name_that_says_nothing() => Report(
        Ours().SelectMany(a => a.GetTypes())
            .Where(t => BannedNames.Any(b => t.Name.EndsWith(b, StringComparison.Ordinal)))
            .Select(t => t.FullName!));

    [Fact]
    public void Public_records_cannot_be_changed_after_they_are_made() => Report(
        Ours().SelectMany(a => a.GetExportedTypes())
            .Where(t => t.GetMethod("<Clone>$") is not null)
            .SelectMany(t => t.GetProperties(BindingFlags.Instance | BindingFlags.Public | BindingFlags.DeclaredOnly))
            .Where(p => p.SetMethod is { IsPublic: true } set
                && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(System.Runtime.CompilerServices.IsExternalInit)))
            .Select(p => $"{p.DeclaringType}.{p.Name}"));

    [Fact]
    public void Nothing_is_left_unfinished_or_swallowed()
    {
        var unfinished = new Regex(@"\b(TO" + @"DO|FIX" + @"ME|HA" + @"CK|NotImplemented" + @"Exception)\b");
        Report(Checkout.Sources("src")
            .SelectMany(f => File.ReadLines(f).Select((line, i) => (File: f, Line: i + 1, Text: line)))
            .Where(l => unfinished.IsMatch(l.Text))
            .Select(l => $"{Checkout.Relative(l.File)}:{l.Line}: {l.Text.Trim()}"));

        // A catch that does nothing must at least say why.
        Report(Checkout.Sources("src")
            .SelectMany(f => Swallowing(File.ReadAllText(f)).Select(caught => $"{Checkout.Relative(f)}: {caught}")));
    }

    // What a piece of a bare parallel loop throws comes out wrapped, past whoever waits for it.
    [Fact]
    public void Parallel_work_is_done_by_the_one_loop_that_hands_on_what_a_piece_throws() => Report(
        Checkout.Sources("src")
            .Where(f => Path.GetFileName(f) != "ParallelLoop.cs" && Regex.IsMatch(File.ReadAllText(f), @"\bParallel\.(For|Invoke)|\bAsParallel\b"))
            .Select(Checkout.Relative));

    [Theory]
    [InlineData("try\n{\n    F();\n}\ncatch (IOException)\n{\n}", true)]
    [InlineData("catch { }", true)]
    [InlineData("catch (IOException) when (a(b))\n{\n\n}", true)]
    [InlineData("catch (IOException)\n{\n    // The file is gone: what was wanted.\n}", false)]
    [InlineData("catch (IOException e)\n{\n    throw new Stopped(e.Message);\n}", false)]
    public void A_catch_that_does_nothing_is_seen_wherever_its_braces_stand(string text, bool seen) => Assert.Equal(seen, Swallowing(text).Any());

    private static IEnumerable<string> Swallowing(string text) =>
        Regex.Matches(text, @"\bcatch\b[^{};]*\{\s*\}").Select(match => Regex.Replace(match.Value, @"\s+", " "));

    [Fact]
    public void One_public_type_stands_in_a_file() => Report(
        Checkout.Sources("src")
            .Select(f => (File: f, Count: Regex.Count(
                File.ReadAllText(f),
                @"^public (?:(?:sealed|static|abstract|readonly|partial|unsafe) )*(?:record struct|record|class|struct|enum|interface|delegate) ",
                RegexOptions.Multiline)))
            .Where(f => f.Count > 1)
            .Select(f => $"{Checkout.Relative(f.File)}: {f.Count} public types"));

    private static IEnumerable<Assembly> Ours() => Rooms.Order.Select(o => Assembly.Load(o.Assembly));

    private static void Report(IEnumerable<string> offenders)
    {
        var all = offenders.ToList();
        Assert.True(all.Count == 0, string.Join('\n', all));
    }
}
