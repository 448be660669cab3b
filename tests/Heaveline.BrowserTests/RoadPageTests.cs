using Microsoft.Playwright;

namespace Heaveline.BrowserTests;

/// <summary>A road is made in a browser: by keyboard, and on a phone.</summary>
[Collection(OneProgram.Name)]
public class RoadPageTests(Served served)
{
    [Fact]
    public async Task A_road_is_made_saved_and_driven_over_by_keyboard_alone()
    {
        var name = $"own-{Guid.NewGuid():N}";
        try
        {
            var page = await Open("/road?car=fern-saloon");
            await Keys.TabTo(page, "#road-called");
            await page.Keyboard.TypeAsync(name);
            await page.Keyboard.PressAsync("Tab");
            await page.Keyboard.TypeAsync("plank");
            await Assertions.Expect(page.Locator("#road-edge")).ToBeVisibleAsync();
            foreach (var (field, typed) in new[] { ("height", "2 in"), ("length", "0,3 m"), ("edge", "20") })
            {
                await Keys.TabTo(page, $"#road-{field}");
                await page.Keyboard.TypeAsync(typed);
            }

            await Assertions.Expect(page.Locator(".road-drawing img")).ToBeVisibleAsync();
            await Assertions.Expect(page.Locator(".lede")).ToContainTextAsync("50.8 mm high and 0.3 m long, edges over 20 mm");
            await Keys.TabTo(page, "button:text-is('Save it and drive over it')");
            await page.Keyboard.PressAsync("Enter");
            await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex($"/pass[?]car=fern-saloon&road={name}[.]yaml"));
            await Assertions.Expect(page.Locator("#choose-road")).ToHaveValueAsync(name + ".yaml");
            await Assertions.Expect(page.Locator(".finding")).Not.ToBeEmptyAsync();
            Assert.Equal(
                $"road: {name}\nplank: {{height: 2 in, length: \"0,3 m\", edge: 20 mm}}\n",
                await File.ReadAllTextAsync(Path.Combine(served.Garage, name + ".yaml"), TestContext.Current.CancellationToken));
        }
        finally
        {
            File.Delete(Path.Combine(served.Garage, name + ".yaml"));
        }
    }

    [Fact]
    public async Task On_a_phone_nothing_hangs_over_the_edge_and_the_engine_finds_nothing()
    {
        var page = await Open("/road?from=village-hump&called=Mill");
        foreach (var width in new[] { 390, 1280 })
        {
            await page.SetViewportSizeAsync(width, 844);
            await Assertions.Expect(page.Locator(".road-drawing img")).ToBeVisibleAsync();
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"));
            await page.Locator("#road-height").FillAsync("banana");
            await Assertions.Expect(page.Locator("#road-height-said .refused-words")).ToBeVisibleAsync();
            await Accessible.Check(page);
            await page.Locator("#road-height").FillAsync("75 mm");
        }
    }

    private async Task<IPage> Open(string address)
    {
        var page = await served.Open(address);
        await Assertions.Expect(page.Locator("[data-live=yes]").First).ToBeVisibleAsync();
        return page;
    }
}
