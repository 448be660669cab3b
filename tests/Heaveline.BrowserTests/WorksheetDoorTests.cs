using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>A worksheet that opens beside the field whose number it gives.</summary>
[Collection(AnotherProgram.Name)]
public class WorksheetDoorTests(Served served)
{
    [Fact]
    public async Task On_the_sheet_of_a_new_car_a_spring_is_worked_out_by_keyboard_and_saved_with_what_it_came_from()
    {
        var page = await served.Open("/sheet");
        await page.Awake();
        foreach (var (key, words) in new[] { ("wheelbase", "2.74 m"), ("front", "768 kg"), ("rear", "672 kg") })
        {
            await page.Locator($"#sheet-{key}").FillAsync(words);
            await page.Keyboard.PressAsync("Tab");
        }

        var name = $"Own {Guid.NewGuid():N}";
        await page.Locator("#sheet-name").FillAsync(name);
        await page.Keyboard.PressAsync("Tab");
        await page.Locator("#sheet-front-spring-work").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#sheet-front-spring-pair-0-0")).ToBeVisibleAsync();
        await Expect(page.Locator("#sheet-front-spring-worked")).ToContainTextAsync("Still to be read: pair.");
        await Accessible.Check(page);
        await Pairs(page, "#sheet-front-spring", "310", "480", "290", "905", "270 kg", "1310");
        await Expect(page.Locator("#sheet-front-spring-pair-2-0")).ToHaveAttributeAsync("aria-invalid", "true");
        await Expect(page.Locator("#sheet-front-spring-pair-said-2")).ToContainTextAsync("270 kg");
        await Expect(page.Locator("#sheet-front-spring-put")).ToBeDisabledAsync();
        await page.Locator("#sheet-front-spring-pair-2-0").FillAsync("27 cm");
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.Locator("#sheet-front-spring-worked strong")).ToHaveTextAsync(new Regex("^20\\.\\d+ N/mm ± \\d"));
        await Accessible.Check(page);

        // Nothing that is typed is lost by closing it, nor by loading the page anew.
        await page.GetByRole(AriaRole.Button, new() { Name = "Close: the readings stay" }).ClickAsync();
        await page.ReloadAsync();
        await page.Awake();
        await Expect(page.Locator("#sheet-wheelbase")).ToHaveValueAsync("2.74 m");
        await page.Locator("#sheet-front-spring-work").ClickAsync();
        await Expect(page.Locator("#sheet-front-spring-pair-2-0")).ToHaveValueAsync("27 cm");
        await page.Locator("#sheet-front-spring-put").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#sheet-front-spring")).ToHaveValueAsync(new Regex("^20\\.\\d+ N/mm ± \\d"));
        await Expect(page.Locator("#sheet-front-spring")).ToBeFocusedAsync();
        await Expect(page.Locator("#sheet-front-spring-said")).ToContainTextAsync("Worked out from 3 pairs of length and force.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save it and open the full form" }).ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/car[?]car=own-"));
        var file = Path.Combine(served.Garage, name.ToLowerInvariant().Replace(' ', '-') + ".yaml");
        try
        {
            Assert.Matches(
                "rate: 20\\.\\d+ N/mm ± [0-9.]+ # worked out from 3 pairs of length and force\n",
                await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public async Task On_the_full_form_a_height_is_worked_out_put_in_and_kept_as_a_draft()
    {
        using var car = new OwnCar(served);
        var page = await served.Open(car.Address("body"));
        await Expect(page.Locator("[data-live=yes]").First).ToBeAttachedAsync(new() { Timeout = 20000 });
        const string Field = "#f-body--centre-of-gravity-height";
        await page.Locator($"{Field}-work").ClickAsync();
        // What the car says already is not asked again.
        await Expect(page.Locator($"{Field}-wheelbase-0-0")).Not.ToHaveValueAsync("");
        foreach (var (box, words) in new[]
        {
            ("total-0-0", "1360 ± 2"), ("level-0-0", "618 ± 1"), ("lifted-0-0", "647"), ("angle-0-0", "12 ± 0.3"), ("radius-0-0", "0.31"),
            ("radius-0-1", "0.31"), ("unsprung-0-0", "162 ± 10"),
        })
        {
            await page.Locator($"{Field}-{box}").FillAsync(words);
            await page.Keyboard.PressAsync("Tab");
        }

        await Expect(page.Locator($"{Field}-worked strong")).ToHaveTextAsync(new Regex("^0\\.\\d+ m ± 0\\.\\d+$"));
        await page.SetViewportSizeAsync(390, 800);
        Assert.Equal("", await page.EvaluateAsync<string>(
            """
            () => document.documentElement.scrollWidth <= 390 ? "" : [...document.querySelectorAll("main *")]
                .filter((one) => one.getBoundingClientRect().right > 390).map((one) => one.outerHTML.slice(0, 90)).join("\n")
            """));
        await Accessible.Check(page);
        await page.Locator($"{Field}-put").ClickAsync();
        await Expect(page.Locator(Field)).ToHaveValueAsync(new Regex("^0\\.\\d+$"));
        await Expect(page.Locator(Field)).ToBeFocusedAsync();
        await Expect(page.Locator("html")).ToHaveAttributeAsync("data-draft", "kept");
        Assert.Equal(car.Before, car.Text);
        await page.Locator(".keeping button").First.ClickAsync();
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("Saved");
        Assert.Matches("centre-of-gravity-height: 0\\.\\d+ m ± 0\\.\\d+ # worked out from a tilt of 12°, the front lifted\n", car.Text);
    }

    private static async Task Pairs(IPage page, string field, params string[] cells)
    {
        foreach (var (words, n) in cells.Select((words, n) => (words, n)))
        {
            await page.Locator($"{field}-pair-{n / 2}-{n % 2}").FillAsync(words);
            await page.Keyboard.PressAsync("Tab");
        }
    }
}
