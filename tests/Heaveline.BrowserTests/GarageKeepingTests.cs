using Microsoft.Playwright;

namespace Heaveline.BrowserTests;

/// <summary>The garage as a place to work, by keyboard, on a phone and in two tabs.</summary>
[Collection(OneProgram.Name)]
public class GarageKeepingTests(Served served)
{
    [Fact]
    public async Task Cars_are_found_by_a_number_and_a_wrong_one_is_refused_where_it_is_typed()
    {
        var page = await Open("/");
        await page.Locator("#find").FillAsync("fern, front frequency at most 1.3 Hz");
        await Assertions.Expect(page.Locator("#found")).ToContainTextAsync(" found: ", new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator(".cars .note").First).ToContainTextAsync(" Hz ");
        await Accessible.Check(page);
        await page.Locator("#find").FillAsync("front frequency at most 1.3 kg");
        await Assertions.Expect(page.Locator("#found.refused-words")).ToContainTextAsync("write a number in Hz");
    }

    [Fact]
    public async Task A_car_is_found_renamed_and_taken_out_and_put_back_by_keyboard_alone()
    {
        using var car = new OwnCar(served);
        var page = await Open("/");
        await Keys.TabTo(page, "#find");
        await page.Keyboard.TypeAsync(car.Name);
        await Assertions.Expect(page.Locator("#found")).ToHaveTextAsync(new System.Text.RegularExpressions.Regex("^1 of [0-9]+ found: 1 car[.]$"));
        await Assertions.Expect(page.Locator(".cars > li")).ToHaveCountAsync(1);

        // Renamed: the file's name follows what it is called, until another is written.
        await Keys.TabTo(page, ".cars button");
        await page.Keyboard.PressAsync("Enter");
        await Keys.TabTo(page, ".file-acts button");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".file-acts input").First).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Control+a");
        await page.Keyboard.TypeAsync("Lapwing");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Control+a");
        await page.Keyboard.TypeAsync(car.Name + "-lapwing");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#garage-said")).ToContainTextAsync($"is called Lapwing ({car.Name}-lapwing) now.");
        await Assertions.Expect(page.Locator("#garage-said")).ToBeFocusedAsync();

        // Taken out, and put back: the focus waits there.
        await Keys.TabTo(page, ".cars button");
        await page.Keyboard.PressAsync("Enter");
        await Keys.TabTo(page, ".file-acts button:text-is('Take out')");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".file-acts .leading")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#put-back")).ToBeFocusedAsync();
        Assert.False(File.Exists(Path.Combine(served.Garage, car.Name + "-lapwing.yaml")));
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#garage-said")).ToHaveTextAsync("It is back as it was.");
        Assert.Equal(
            car.Before.Replace("car: Fern saloon", "car: Lapwing", StringComparison.Ordinal),
            await File.ReadAllTextAsync(Path.Combine(served.Garage, car.Name + "-lapwing.yaml"), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task On_a_phone_nothing_hangs_over_the_edge_and_the_engine_finds_nothing()
    {
        using var car = new OwnCar(served);
        var page = await Open($"/?find={car.Name}");
        await page.SetViewportSizeAsync(390, 844);
        await page.Locator(".cars button").First.ClickAsync();
        foreach (var act in new[] { "Rename", "Copy", "New car from this one", "Take out" })
        {
            await page.Locator($".file-acts button:text-is('{act}')").ClickAsync();
            await Assertions.Expect(page.Locator(".file-acts .leading")).ToBeVisibleAsync();
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"), act);
            await Accessible.Check(page);
        }
    }

    [Fact]
    public async Task What_one_tab_renames_the_other_shows_by_its_new_name()
    {
        using var car = new OwnCar(served);
        var page = await Open($"/?find={car.Name}");
        var other = await page.Context.NewPageAsync();
        await other.GotoAsync(new Uri(served.Address, $"/?find={car.Name}").ToString());
        await Assertions.Expect(other.Locator("[data-live=yes]").First).ToBeVisibleAsync();
        await page.Locator(".cars button").First.ClickAsync();
        await page.Locator(".file-acts button:text-is('Rename')").ClickAsync();
        await page.Locator(".file-acts input").First.FillAsync("Two tabs");
        await page.Locator(".file-acts input").Nth(1).FillAsync(car.Name + "-two");
        await page.Locator(".file-acts .leading").ClickAsync();
        await Assertions.Expect(page.Locator("#garage-said")).ToContainTextAsync("is called Two tabs");
        await Assertions.Expect(other.Locator(".cars .title").First).ToHaveTextAsync("Two tabs");
        await other.CloseAsync();
    }

    private async Task<IPage> Open(string address)
    {
        var page = await served.Open(address);
        await Assertions.Expect(page.Locator("[data-live=yes]").First).ToBeVisibleAsync();
        return page;
    }
}
