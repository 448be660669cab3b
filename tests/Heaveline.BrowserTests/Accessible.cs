using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Heaveline.BrowserTests;

/// <summary>Asks the accessibility engine about a page: every rule of WCAG 2.0 to 2.2, levels A and AA, that a machine can judge.</summary>
internal static class Accessible
{
    private static readonly List<string> Levels = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

    /// <summary>Fails with what the engine finds.</summary>
    /// <param name="page">The page.</param>
    /// <param name="frames">Whether frames in it are looked into; in a sandboxed one no script runs, not even the engine's.</param>
    /// <param name="rule">The one rule that is asked about; null for all.</param>
    public static async Task Check(IPage page, bool frames = true, string? rule = null)
    {
        // A page that has just come alive takes its title off and puts it on again.
        await Assertions.Expect(page).ToHaveTitleAsync(new Regex("."));
        var options = new AxeRunOptions
        {
            RunOnly = rule is null ? new RunOnlyOptions { Type = "tag", Values = Levels } : new RunOnlyOptions { Type = "rule", Values = [rule] },
        };
        if (!frames)
        {
            options.Iframes = false;
        }

        var found = await page.RunAxe(options);
        Assert.True(
            found.Violations.Length == 0,
            string.Join('\n', found.Violations.Select(v => $"{v.Id}: {v.Help}: {string.Join("; ", v.Nodes.Select(n => n.Html))}")));
    }
}
