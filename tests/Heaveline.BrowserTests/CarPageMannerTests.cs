using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>How the page of a car behaves whatever car it shows: at any width, in the dark, for those who do not see it.</summary>
[Collection(AnotherProgram.Name)]
public class CarPageMannerTests(Served served)
{
    private const string Rate = "#f-front--spring--rate";

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    [InlineData(2560)]
    public async Task The_page_never_scrolls_sideways(int width)
    {
        foreach (var car in new[] { "fern-saloon", "pebble-fluid-car" })
        {
            var page = await Open(AllOpen(car, " front/bump-stop interconnection/fluid brakes headlamp"), width);
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= window.innerWidth"), car);
        }
    }

    [Theory]
    [InlineData("fern-saloon", false, 1280)]
    [InlineData("fern-saloon", true, 390)]
    [InlineData("fern-saloon-cured", false, 390)]
    [InlineData("pebble-fluid-car", true, 1280)]
    public async Task The_accessibility_engine_finds_nothing(string car, bool dark, int width)
    {
        var page = await Open(AllOpen(car, " seats/driver"), width, dark);
        await page.Locator("#f-front--unsprung-mass").FillAsync("many");
        await Expect(page.Locator("#f-front--unsprung-mass-said")).ToBeVisibleAsync();
        await NothingFound(page);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task The_accessibility_engine_finds_nothing_in_a_conflict_or_in_the_garage(bool dark)
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address("front front/spring"), 1280, dark);
        await page.Locator(Rate).FillAsync("25");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        await File.WriteAllTextAsync(
            Path.Combine(served.Garage, car.Name + ".yaml"), car.Before + "# another hand\n", TestContext.Current.CancellationToken);
        await page.Locator(".keeping button").First.ClickAsync();
        await Expect(page.Locator(".conflict")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Save mine under another name" }).ClickAsync();
        await NothingFound(page);
        await NothingFound(await served.Open("/", 390, 900, dark));
    }

    private static string AllOpen(string car, string more)
    {
        const string parts =
            "variant car weighing body front front/spring front/damper rear interconnection seats loads loads/driver loads/driver/1 text";
        return $"/car?car={car}&open={Uri.EscapeDataString(parts + more)}";
    }

    private static async Task NothingFound(IPage page)
    {
        // For a moment, while the page comes to life, its head is being written anew.
        await Expect(page).ToHaveTitleAsync(new System.Text.RegularExpressions.Regex("Heaveline"));
        await page.WaitForTimeoutAsync(300);
        await Accessible.Check(page);
    }

    private async Task<IPage> Open(string path, int width = 1280, bool dark = false)
    {
        var page = await served.Open(path, width, 900, dark);
        await Expect(page.Locator("[data-live=yes]")).ToBeAttachedAsync(new() { Timeout = 20000 });
        return page;
    }
}
