using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>How a garage begins: with nothing in it, or from another car.</summary>
[Collection(AnotherProgram.Name)]
public class FirstCarTests(Served served)
{
    [Fact]
    public async Task A_program_on_an_empty_folder_begins_a_car_by_keyboard_alone()
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-nothing-").FullName;
        var (program, address, _) = await served.Start([folder, "--port", "0"]);
        try
        {
            var page = await served.Open(new Uri(address, "/").ToString());
            await Expect(page.Locator(".begin [data-live=yes]")).ToBeAttachedAsync(new() { Timeout = 20000 });
            await Expect(page.Locator(".invented li").First).ToContainTextAsync("invented");
            await Accessible.Check(page);
            await Keys.TabTo(page, "#begin-name", most: 60);
            await page.Keyboard.TypeAsync("Lark estate");
            await page.Keyboard.PressAsync("Enter");
            await Expect(page).ToHaveURLAsync(new Regex("/car[?]car=lark-estate"));
            await Expect(page.Locator("h1")).ToHaveTextAsync("lark-estate.yaml, which is no car yet");
            await page.Locator("#f-wheelbase").FillAsync("2.74 m");
            await page.Keyboard.PressAsync("Tab");
            await Expect(page.Locator("#f-wheelbase")).ToHaveValueAsync("2.74");
            await page.Locator(".keeping button").First.ClickAsync();
            await Expect(page.Locator(".keeping .state")).ToContainTextAsync("Saved");
            Assert.Contains(
                "wheelbase: 2.74 m",
                await File.ReadAllTextAsync(Path.Combine(folder, "lark-estate.yaml"), TestContext.Current.CancellationToken),
                StringComparison.Ordinal);
        }
        finally
        {
            await Stop(program, folder);
        }
    }

    [Fact]
    public async Task From_an_empty_folder_a_sheet_of_numbers_ends_in_a_pass_by_mouse()
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-sheet-").FullName;
        var (program, address, _) = await served.Start([folder, "--port", "0"]);
        try
        {
            var page = await served.Open(new Uri(address, "/").ToString());
            await page.GetByRole(AriaRole.Link, new() { Name = "One page of numbers" }).ClickAsync();
            await Expect(page.Locator(".garage-sheet[data-live=yes]")).ToBeAttachedAsync(new() { Timeout = 20000 });
            await page.GetByLabel("What the car is called").FillAsync("Lark estate");
            await page.GetByLabel("Hub to hub").FillAsync("2.74 m");
            await page.GetByLabel("Front wheels on the scale").FillAsync("768 kg");
            await page.GetByLabel("Rear wheels on the scale").FillAsync("672 kg");
            await page.GetByLabel("Front spring", new() { Exact = true }).FillAsync("118 lbf/in");
            await page.GetByLabel("Rear spring", new() { Exact = true }).FillAsync("217 lbf/in");
            await page.GetByLabel("Front spring moves").FillAsync("47.5");
            await page.GetByLabel("Rear spring moves").ClickAsync();
            await Expect(page.GetByLabel("Front spring moves")).ToHaveValueAsync("47.5 mm");
            await Expect(page.Locator("h1")).ToContainTextAsync("6 measured, 7 estimated: rear over front comes to");
            await Expect(page.Locator("#sheet-next")).ToContainTextAsync("Measure number 8 next, rear spring moves: it makes");
            await Accessible.Check(page);
            await page.ReloadAsync();
            await Expect(page.Locator(".garage-sheet[data-live=yes]")).ToBeAttachedAsync(new() { Timeout = 20000 });
            await Expect(page.GetByLabel("Rear spring", new() { Exact = true })).ToHaveValueAsync("217 lbf/in");
            await page.GetByRole(AriaRole.Button, new() { Name = "Save it and drive it" }).ClickAsync();
            await Expect(page).ToHaveURLAsync(new Regex("/pass[?]car=lark-estate"));
            await Expect(page.Locator("[data-time]")).Not.ToHaveTextAsync("", new() { Timeout = 20000 });
            var text = await File.ReadAllTextAsync(Path.Combine(folder, "lark-estate.yaml"), TestContext.Current.CancellationToken);
            Assert.Contains("    rate: 217 lbf/in\n", text, StringComparison.Ordinal);
            Assert.Contains("    moves: 42 mm ± 8 mm for 50 mm at the wheel # estimated: ", text, StringComparison.Ordinal);
        }
        finally
        {
            await Stop(program, folder);
        }
    }

    [Fact]
    public async Task From_an_empty_folder_a_sheet_of_numbers_ends_in_a_pass_by_keyboard_alone_on_a_phones_width()
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-sheet-").FullName;
        var (program, address, _) = await served.Start([folder, "--port", "0"]);
        try
        {
            var page = await served.Open(new Uri(address, "/").ToString(), 390);
            await Keys.TabTo(page, "main [href=sheet]", most: 60);
            await page.Keyboard.PressAsync("Enter");
            await Expect(page.Locator(".garage-sheet[data-live=yes]")).ToBeAttachedAsync(new() { Timeout = 20000 });
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= window.innerWidth"));
            foreach (var (id, words) in new[]
            {
                ("name", "Lark estate"), ("wheelbase", "107 7/8 in"), ("front", "768"), ("rear", "672"),
            })
            {
                await Keys.TabTo(page, $"#sheet-{id}", most: 60);
                await page.Keyboard.TypeAsync(words);
            }

            await page.Keyboard.PressAsync("Tab");
            await Expect(page.Locator("#sheet-wheelbase")).ToHaveValueAsync("107.875 in");
            await Expect(page.Locator("h1")).ToContainTextAsync("3 measured, 8 estimated");
            await Keys.TabTo(page, "button:text-is('Save it and drive it')", most: 60);
            await page.Keyboard.PressAsync("Enter");
            await Expect(page).ToHaveURLAsync(new Regex("/pass[?]car=lark-estate"));
            await Expect(page.Locator("[data-time]")).Not.ToHaveTextAsync("", new() { Timeout = 20000 });
        }
        finally
        {
            await Stop(program, folder);
        }
    }

    [Fact]
    public async Task With_a_car_of_its_own_a_garage_still_offers_invented_ones_apart_from_its_own()
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-own-").FullName;
        File.Copy(Path.Combine(served.Garage, "fern-saloon.yaml"), Path.Combine(folder, "my-own.yaml"));
        var (program, address, _) = await served.Start([folder, "--port", "0"]);
        try
        {
            var page = await served.Open(new Uri(address, "/").ToString());
            await page.Awake();
            await Expect(page.Locator("#invented-heading")).ToHaveTextAsync("Look at an invented car");
            await page.GetByRole(AriaRole.Button, new() { Name = "Look at it: Pebble small car" }).FocusAsync();
            await page.Keyboard.PressAsync("Enter");
            await Expect(page).ToHaveURLAsync(new Regex("/pass[?]car=invented(/|%2F)pebble-fluid-car"));
            await Expect(page.Locator("[data-time]")).Not.ToHaveTextAsync("", new() { Timeout = 20000 });
            Assert.Equal(["my-own.yaml"], Directory.EnumerateFiles(folder, "*.yaml").Select(Path.GetFileName));
            Assert.True(File.Exists(Path.Combine(folder, "invented", "pebble-fluid-car.yaml")));
            await page.GotoAsync(new Uri(address, "/").ToString());
            await page.Awake();
            await Expect(page.Locator(".cars > li").First).ToContainTextAsync("my-own");
            await Expect(page.Locator(".cars > li").Last).ToContainTextAsync("invented, to be looked at");
            // Where no car is named, it is one's own.
            await page.GotoAsync(new Uri(address, "/rule").ToString());
            await Expect(page.Locator("#choose-car option", new() { HasText = "Pebble small car, invented" })).ToHaveCountAsync(1);
            await Accessible.Check(page);
        }
        finally
        {
            await Stop(program, folder);
        }
    }

    [Fact]
    public async Task The_sheet_asks_what_the_car_looks_like_and_about_a_number_that_cannot_be_meant()
    {
        var page = await served.Open("/sheet");
        await page.Awake();
        await page.Locator("#body-style-open").FocusAsync();
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("ArrowDown");
        await Expect(page.Locator("#body-style-estate")).ToBeCheckedAsync();
        await Expect(page).ToHaveURLAsync(new Regex("body-style=estate"));
        await page.Locator("#sheet-wheelbase").FillAsync("2520");
        await page.Keyboard.PressAsync("Tab");
        // A bare number is shown back at once with the unit that it was taken in.
        await Expect(page.Locator("#sheet-wheelbase")).ToHaveValueAsync("2520 m");
        await Expect(page.Locator("#sheet-wheelbase-mend")).ToHaveTextAsync("Did you mean 2520 mm?");
        await Accessible.Check(page);
        await page.Locator("#sheet-wheelbase-mend").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#sheet-wheelbase")).ToHaveValueAsync("2520 mm");
        await Expect(page.Locator("#sheet-wheelbase-mend")).ToHaveCountAsync(0);
        await page.Locator("#sheet-front-moves").FillAsync("0.9");
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.Locator("#sheet-front-moves-mend")).ToHaveTextAsync("Did you mean 45 mm, a ratio of 0.9?");
    }

    [Fact]
    public async Task The_full_form_asks_about_a_number_that_cannot_be_meant()
    {
        using var car = new OwnCar(served);
        var page = await served.Open(car.Address("car"));
        await Expect(page.Locator("[data-live=yes]").First).ToBeAttachedAsync(new() { Timeout = 20000 });
        await page.Locator("#f-wheelbase").FillAsync("2700");
        await page.Locator("#f-wheelbase-mend").ClickAsync();
        await Expect(page.Locator("#f-wheelbase")).ToHaveValueAsync("2700");
        await Expect(page.GetByLabel("wheelbase: unit", new() { Exact = true })).ToHaveValueAsync("mm");
        await Expect(page.Locator("#f-wheelbase-mend")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_new_car_from_another_shows_what_was_not_measured_until_it_is()
    {
        using var car = new OwnCar(served);
        var page = await served.Open(car.Address());
        await Expect(page.Locator("[data-live=yes]")).ToBeAttachedAsync(new() { Timeout = 20000 });
        await page.GetByRole(AriaRole.Button, new() { Name = "New car from this one" }).ClickAsync();
        await page.GetByLabel("What the car is called").FillAsync("Lark estate");
        await Expect(page.GetByLabel("Its file")).ToHaveValueAsync("lark-estate.yaml");
        await page.GetByLabel("Its file").FillAsync(car.Name + "-lark");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin the new car" }).ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex($"car={car.Name}-lark"));
        await Expect(page.Locator("h1")).ToContainTextAsync("Lark estate, measured in part");
        await Expect(page.Locator("#unmeasured")).ToContainTextAsync("not measured");
        var wheelbase = page.GetByRole(AriaRole.Group, new() { Name = "wheelbase", Exact = true });
        await Expect(wheelbase.Locator(".unmeasured-words")).ToContainTextAsync("from Fern saloon, not measured");
        await page.Locator("#f-wheelbase").FillAsync("2.74");
        await Expect(wheelbase.Locator(".unmeasured-words")).ToHaveCountAsync(0);
        await page.Locator("[data-part=weighing] > summary").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "weighing rear: it holds for this car" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "weighing rear: it holds for this car" })).ToHaveCountAsync(0);
        await page.Locator("[data-part=front] > summary").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "The front axle: all of it holds for this car" }).ClickAsync();
        await Expect(page.Locator("[data-part=front] > summary")).Not.ToContainTextAsync("not measured here");
        await Accessible.Check(page);
        await page.Locator(".keeping button").First.ClickAsync();
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("Saved");
        var text = await File.ReadAllTextAsync(
            Path.Combine(served.Garage, car.Name + "-lark.yaml"), TestContext.Current.CancellationToken);
        Assert.Contains("wheelbase: 2.74 m ± 5 mm\n", text, StringComparison.Ordinal);
        Assert.Contains("  rear: 618 kg ± 2 kg\n", text, StringComparison.Ordinal);
        Assert.Contains("  front: 742 kg ± 2 kg # from Fern saloon, not measured\n", text, StringComparison.Ordinal);
    }

    private static async Task Stop(System.Diagnostics.Process program, string folder)
    {
        program.Kill(entireProcessTree: true);
        await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        program.Dispose();
        Directory.Delete(folder, recursive: true);
    }
}
