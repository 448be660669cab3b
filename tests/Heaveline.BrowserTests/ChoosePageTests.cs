using System.Text.RegularExpressions;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>What to buy, as a page: asked, answered, kept and driven.</summary>
[Collection(OneProgram.Name)]
public class ChoosePageTests(Served served)
{
    // A choice on a busy machine.
    private const float Long = 240_000;

    [Fact]
    public async Task A_setup_is_found_kept_as_a_variant_by_keyboard_and_driven()
    {
        var list = Path.Combine(served.Garage, "village-autumn.yaml");
        File.Copy(Path.Combine(Checkout.Root, "examples", "parts", "village-autumn.yaml"), list);
        try
        {
            var page = await served.Open("/choose?car=fern-saloon&budget=600&open=rear+damper&draws=20");
            await Expect(page.Locator("#finding")).ToContainTextAsync("Worth buying: A, ", new() { Timeout = Long });
            await Expect(page.Locator("#setup-A")).ToContainTextAsync("EUR");
            await Expect(page.Locator("#trade-off .picture").First).ToBeVisibleAsync();
            await Accessible.Check(page);
            await page.Locator("#keep-A").FocusAsync();
            await page.Keyboard.PressAsync("Enter");
            await Expect(page).ToHaveURLAsync(new Regex("/pass\\?.*car=fern-saloon-wren"), new() { Timeout = Long });
            Assert.NotEmpty(Kept());
            await Expect(page.Locator("h1")).ToContainTextAsync("Fern saloon", new() { Timeout = Long });
        }
        finally
        {
            foreach (var file in Kept().Append(list))
            {
                File.Delete(file);
            }
        }

        string[] Kept() => Directory.GetFiles(served.Garage, "fern-saloon-wren*.yaml");
    }

    [Fact]
    public async Task A_garage_without_a_list_says_how_one_is_put_there()
    {
        var page = await served.Open("/choose?car=fern-saloon");
        await page.Awake();
        await Expect(page.Locator("#none h2")).ToHaveTextAsync("There is no list of parts in this garage");
        await Accessible.Check(page);
    }
}
