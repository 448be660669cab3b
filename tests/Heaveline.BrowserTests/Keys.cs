using Microsoft.Playwright;

namespace Heaveline.BrowserTests;

/// <summary>Goes through a page by keyboard alone.</summary>
internal static class Keys
{
    /// <summary>Presses a key until the focus is there; fails where it does not come there.</summary>
    /// <param name="page">The page.</param>
    /// <param name="selector">What is to have the focus: the first that it finds.</param>
    /// <param name="key">The key.</param>
    /// <param name="most">How often it may be pressed.</param>
    public static async Task TabTo(IPage page, string selector, string key = "Tab", int most = 200)
    {
        for (var n = 0; !await page.Locator(selector).EvaluateAllAsync<bool>("all => all.length > 0 && all[0] === document.activeElement"); n++)
        {
            Assert.True(n < most, $"{selector} cannot be reached by {key}.");
            await page.Keyboard.PressAsync(key);
        }
    }
}
