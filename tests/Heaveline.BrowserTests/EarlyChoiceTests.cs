using System.Text.RegularExpressions;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>What a hand does on a page that the program has not yet taken over.</summary>
[Collection(OneProgram.Name)]
public class EarlyChoiceTests(Served served)
{
    [Fact]
    public async Task What_is_chosen_before_a_page_lives_is_chosen_when_it_does_and_none_of_it_undoes_another()
    {
        var page = await served.Open("/_content/Heaveline.Web/mark.svg");
        var held = new TaskCompletionSource();
        await page.RouteAsync("**/blazor.web.js", async route =>
        {
            await held.Task;
            await route.ContinueAsync();
        });
        await page.GotoAsync("/ride?car=fern-saloon", new() { WaitUntil = Microsoft.Playwright.WaitUntilState.Commit });
        await page.Locator("#load").SelectOptionAsync("four up with luggage");
        await page.Locator("#at").FillAsync("50 mph");
        await page.Locator("#at").BlurAsync();
        await Expect(page.Locator("#content[data-awake=no]")).ToBeAttachedAsync();
        held.SetResult();
        await page.Awake();
        await Expect(page).ToHaveURLAsync(new Regex("load=four(%20|[+])up"));
        await Expect(page).ToHaveURLAsync(new Regex("at=50(%20|[+])mph"));
        await Expect(page.Locator("#at")).ToHaveValueAsync("80.467");
    }
}
