using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Heaveline.BrowserTests;

[Collection(OneProgram.Name)]
public class ReadingUnitsTests(Served served)
{
    [Fact]
    public async Task Units_chosen_on_the_first_page_are_remembered_and_the_pages_follow()
    {
        var remembered = Path.Combine(served.Garage, "garage.yaml");
        try
        {
            var page = await served.Open("/");
            await page.Awake();
            await page.GetByLabel("Numbers, sentences and figures in").SelectOptionAsync("imperial");
            await Remembered(remembered, "imperial");
            await page.GotoAsync("/car?car=fern-saloon");
            await Assertions.Expect(page.Locator("[data-number=mass] th")).ToHaveTextAsync("mass, lb");
            await Assertions.Expect(page.Locator("[data-number=mass] td").First).ToContainTextAsync("2998");
            await Assertions.Expect(page.Locator("figcaption").First).ToContainTextAsync(new Regex(@"front −\d\.\d\d in"));
            await page.GotoAsync("/pass?car=fern-saloon");
            await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("at 24.9 mph");
            await Assertions.Expect(page.Locator("[data-note=front-stop]")).ToContainTextAsync(new Regex(@"\d in left standing"));
            await page.GotoAsync("/ride?car=fern-saloon");
            await page.Awake();
            // 80 km/h = 49.7097 mph (the mile is 1.609344 km).
            await Assertions.Expect(page.GetByLabel("Spectra at, mph")).ToHaveValueAsync("49.71");
            await page.GetByLabel("Spectra at, mph").FillAsync("50");
            await page.Keyboard.PressAsync("Enter");
            await Assertions.Expect(page).ToHaveURLAsync(new Regex("at=50(%20|[+])mph"));
            await Assertions.Expect(page.GetByLabel("Spectra at, mph")).ToHaveValueAsync("50");
            await page.GotoAsync("/");
            await page.Awake();
            await Assertions.Expect(page.GetByLabel("Numbers, sentences and figures in")).ToHaveValueAsync("imperial");
            await page.GetByLabel("Numbers, sentences and figures in").SelectOptionAsync("metric");
            await Remembered(remembered, "metric");
            await page.GotoAsync("/car?car=fern-saloon");
            await Assertions.Expect(page.Locator("[data-number=mass] th")).ToHaveTextAsync("mass, kg");
        }
        finally
        {
            // The garage is that of the tests beside this one.
            File.Delete(remembered);
        }
    }

    // The page tells the program, and the program writes the file: no page says when.
    private static async Task Remembered(string file, string word)
    {
        for (var tries = 0; tries < 100; tries++)
        {
            if (File.Exists(file) && (await File.ReadAllTextAsync(file)).Contains($"units: {word}", StringComparison.Ordinal))
            {
                return;
            }

            await Task.Delay(100);
        }

        Assert.Fail($"The garage does not remember {word} units.");
    }
}
