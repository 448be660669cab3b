using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>Waits until a page lives: before that a press goes nowhere.</summary>
internal static class Waking
{
    /// <summary>Returns when the program has taken the page over and its scripts are there.</summary>
    public static async Task Awake(this IPage page)
    {
        await Expect(page.Locator("#content[data-awake=yes]")).ToBeAttachedAsync(new() { Timeout = 30_000 });
        await page.WaitForLoadStateAsync(LoadState.NetworkIdle);
    }
}
