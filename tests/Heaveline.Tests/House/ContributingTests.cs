using System.Text.RegularExpressions;

namespace Heaveline.Tests.House;

/// <summary>CONTRIBUTING sends people to files and tests: they are there.</summary>
public class ContributingTests
{
    // Examples that are no part of the house.
    private static readonly string[] Imagined = ["WhyView.cs", "WhyRoutes.cs", "WhyPage.razor"];

    private static readonly string Page = File.ReadAllText(Path.Combine(Checkout.Root, "CONTRIBUTING.md"));

    // Made by a build, or beside the checkout.
    private static readonly string[] Elsewhere = ["artifacts/", "shared/", "./"];

    private static readonly Regex NotOurs = new(@"(^|/)(bin|obj|artifacts|BenchmarkDotNet\.Artifacts|\.git)/");

    // "Web/Pages" stands for Heaveline.Web/Pages as well.
    private static readonly string[] Files =
    [
        .. Directory.EnumerateFiles(Checkout.Root, "*", SearchOption.AllDirectories)
            .Select(f => "/" + Checkout.Relative(f))
            .Where(f => !NotOurs.IsMatch(f))
            .SelectMany(f => new[] { f, f.Replace("/Heaveline.", "/", StringComparison.Ordinal) }),
    ];

    // A data file without its folder is one that the program writes.
    [Fact]
    public void Every_file_that_it_names_is_there() => Report(
        Regex.Matches(Page, @"`((?:[\w.-]+/)*[\w.-]*\.(?:cs|razor|md|txt|sh|editorconfig)|(?:[\w.-]+/)+[\w.-]+\.(?:html|yaml|json|svg))`")
            .Select(m => m.Groups[1].Value)
            .Concat(Regex.Matches(Page, @"`(eng/[\w.-]+)`").Select(m => m.Groups[1].Value))
            .Where(name => !Imagined.Contains(name.Split('/')[^1]))
            .Where(name => !Files.Any(f => f.EndsWith("/" + name, StringComparison.Ordinal))));

    [Fact]
    public void Every_folder_that_it_names_is_there() => Report(
        Regex.Matches(Page, @"`((?:[\w.-]+/)+[\w-]+(?:\.[A-Z]\w*)?)`").Select(m => m.Groups[1].Value)
            .Where(name => !Elsewhere.Any(place => name.StartsWith(place, StringComparison.Ordinal)))
            .Where(name => !Files.Any(f => f.EndsWith("/" + name, StringComparison.Ordinal)
                || f.Contains($"/{name}/", StringComparison.Ordinal) || f.Contains($"/{name}.", StringComparison.Ordinal))));

    [Fact]
    public void Every_test_that_it_names_is_there() => Report(
        Regex.Matches(Page, @"`(\w+Tests)`").Select(m => m.Groups[1].Value)
            .Where(name => !Files.Any(f => f.EndsWith($"/{name}.cs", StringComparison.Ordinal))));

    private static void Report(IEnumerable<string> missing)
    {
        var all = missing.Distinct().ToList();
        Assert.True(all.Count == 0, string.Join('\n', all));
    }
}
