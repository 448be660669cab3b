using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>What is typed outlives the program, the page and the window, and is offered, never put in unasked.</summary>
[Collection(AnotherProgram.Name)]
public sealed class DraftTests(Served served) : IDisposable
{
    private const string Rate = "#f-front--spring--rate";
    private const string Mass = "#f-front--unsprung-mass";
    private const string Parts = "front front/spring";
    private Process? own;

    public void Dispose() => End();

    [Fact]
    public async Task A_program_that_ends_takes_nothing_with_it_and_the_page_comes_back_by_itself()
    {
        using var car = new OwnCar(served);
        var address = await Start(0);
        var page = await Open(new Uri(address, car.Address(Parts)).ToString());
        await page.Locator(Rate).ClickAsync();
        await page.Locator(Rate).FillAsync("22");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        End();
        await Expect(page.Locator("#components-reconnect-modal")).ToBeVisibleAsync();
        await Expect(page.Locator(".lost-touch .kept")).ToBeVisibleAsync();
        await Expect(page.Locator(".lost-touch .plain")).ToBeHiddenAsync();
        await page.Locator(Mass).FillAsync("39");

        var asked = new List<string>();
        page.Dialog += async (_, dialog) =>
        {
            asked.Add(dialog.Type);
            await dialog.AcceptAsync();
        };
        await Start(address.Port);
        await Expect(page.Locator("#unsaved")).ToBeVisibleAsync();
        Assert.Empty(asked);
        await Expect(page.Locator("#unsaved h2")).ToHaveTextAsync(new Regex(@"^You had unsaved numbers here, from \d\d:\d\d$"));
        await Expect(page.Locator("#unsaved .added code")).ToContainTextAsync("22 N/mm");
        await Expect(page.Locator("#unsaved")).ToContainTextAsync("front unsprung mass 39");
        await Expect(page.Locator(Rate)).ToHaveValueAsync("20.7");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("As on the disk.");
        await Accessible.Check(page);

        await page.GetByRole(AriaRole.Button, new() { Name = "Take them up" }).ClickAsync();
        await Expect(page.Locator("#unsaved")).ToHaveCountAsync(0);
        await Expect(page.Locator(Rate)).ToHaveValueAsync("22");
        await Expect(page.Locator(Mass)).ToHaveValueAsync("39");
        await Expect(page.Locator("#text")).ToHaveValueAsync(new Regex("39 kg"));
        Assert.Equal(car.Before, car.Text);
        await page.Locator(".keeping button").First.ClickAsync();
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("Saved");
        Assert.Contains("rate: 22 N/mm", car.Text, StringComparison.Ordinal);
        await PassPageTests.Eventually(async () => Assert.Equal("[]", await Kept(page)));
    }

    [Fact]
    public async Task What_is_typed_while_the_program_sleeps_is_there_once_when_it_wakes()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(Parts));
        await page.Locator(Rate).FillAsync("22");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        try
        {
            served.Signal("STOP");
            // Letter by letter, as a hand does it, in two boxes, and the first one once more.
            await page.Locator(Rate).ClickAsync();
            await page.Keyboard.PressAsync("Control+A");
            await page.Keyboard.TypeAsync("23.4", new() { Delay = 60 });
            await page.Locator(Mass).ClickAsync();
            await page.Keyboard.PressAsync("Control+A");
            await page.Keyboard.TypeAsync("39.25", new() { Delay = 60 });
            await page.Locator(Rate).ClickAsync();
            await page.Keyboard.PressAsync("End");
            await page.Keyboard.TypeAsync("5", new() { Delay = 60 });
            await page.Keyboard.PressAsync("Tab");
            await page.WaitForTimeoutAsync(1500);
            await Expect(page.Locator(Rate)).ToHaveValueAsync("23.45");
        }
        finally
        {
            served.Signal("CONT");
        }

        await Expect(page.Locator("#text")).ToHaveValueAsync(new Regex(@"rate: 23\.45 N/mm"));
        await Expect(page.Locator("#text")).ToHaveValueAsync(new Regex("unsprung-mass: 39[.]25 kg"));
        await Expect(page.Locator(Rate)).ToHaveValueAsync("23.45");
        await Expect(page.Locator(Mass)).ToHaveValueAsync("39.25");
        await page.Locator(".keeping button").First.ClickAsync();
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("Saved");
        Assert.Equal(1, Regex.Count(car.Text, "23[.]45"));
        Assert.Equal(1, Regex.Count(car.Text, "39[.]25"));
    }

    [Fact]
    public async Task What_is_typed_while_the_program_sleeps_into_a_page_that_is_loaded_anew_is_offered_once()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(Parts));
        // From then on what is typed is kept.
        await PassPageTests.Eventually(async () => Assert.True(await page.EvaluateAsync<bool>(
            "async () => (await navigator.locks.query()).held.some(one => one.name.startsWith('heaveline draft'))")));
        try
        {
            served.Signal("STOP");
            await page.Locator(Rate).ClickAsync();
            await page.Keyboard.PressAsync("Control+A");
            await page.Keyboard.TypeAsync("23.45", new() { Delay = 60 });
            await page.Keyboard.PressAsync("Tab");
            // The line is cut under it: the page is loaded anew, and what it sent reaches nobody.
            await Assert.ThrowsAsync<TimeoutException>(() => page.ReloadAsync(new() { WaitUntil = WaitUntilState.Commit, Timeout = 500 }));
        }
        finally
        {
            served.Signal("CONT");
        }

        await Expect(page.Locator("#unsaved")).ToContainTextAsync("Typed last: front spring rate 23.45.");
        await Expect(page.Locator("#unsaved")).ToHaveCountAsync(1);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take them up" }).ClickAsync();
        await Expect(page.Locator(Rate)).ToHaveValueAsync("23.45");
        await Expect(page.Locator("#text")).ToHaveValueAsync(new Regex(@"rate: 23\.45 N/mm"));
        await Expect(page.Locator("#unsaved")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_window_that_was_closed_left_its_numbers_and_they_can_be_left()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(Parts));
        await page.Locator(Rate).FillAsync("22");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        // In a window beside it nothing is offered as long as it is open.
        var beside = await Beside(page, car.Address(Parts));
        await Expect(beside.Locator("[data-live=yes]")).ToBeAttachedAsync();
        await beside.WaitForTimeoutAsync(500);
        await Expect(beside.Locator("#unsaved")).ToHaveCountAsync(0);
        await page.CloseAsync();
        await beside.ReloadAsync();
        await Expect(beside.Locator("#unsaved")).ToBeVisibleAsync();
        await beside.GetByRole(AriaRole.Button, new() { Name = "Leave them" }).ClickAsync();
        await Expect(beside.Locator("#unsaved")).ToHaveCountAsync(0);
        await Expect(beside.Locator(Rate)).ToHaveValueAsync("20.7");
        Assert.Equal("[]", await Kept(beside));
    }

    [Fact]
    public async Task Numbers_typed_into_an_older_file_are_offered_with_that_said_and_meet_the_file_as_a_conflict()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(Parts));
        await page.Locator(Rate).FillAsync("22");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        var beside = await Beside(page, "/");
        await page.CloseAsync();
        File.WriteAllText(Path.Combine(served.Garage, car.Name + ".yaml"), car.Before + "# another hand\n");
        await beside.GotoAsync(car.Address(Parts));
        await Expect(beside.Locator("#unsaved")).ToContainTextAsync("it has changed since");
        await Expect(beside.Locator("#unsaved .added code")).ToContainTextAsync("22 N/mm");
        await beside.GetByRole(AriaRole.Button, new() { Name = "Take them up" }).ClickAsync();
        await Expect(beside.Locator(".conflict .added code").First).ToHaveTextAsync("# another hand");
        await Expect(beside.Locator(Rate)).ToHaveValueAsync("22");
        Assert.EndsWith("# another hand\n", car.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_is_offered_of_what_was_saved_or_given_up()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(Parts));
        await page.Locator(Rate).FillAsync("22");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        await page.Locator(".keeping button").First.ClickAsync();
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("Saved");
        await PassPageTests.Eventually(async () => Assert.Equal("[]", await Kept(page)));
        await page.Locator(Rate).FillAsync("23");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        await page.GetByRole(AriaRole.Link, new() { Name = "The pass" }).First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Go without saving" }).ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/pass"));
        await PassPageTests.Eventually(async () => Assert.Equal("[]", await Kept(page)));
    }

    [Fact]
    public async Task A_browser_that_keeps_nothing_is_told_so_and_its_page_is_not_loaded_anew()
    {
        using var car = new OwnCar(served);
        var address = await Start(0);
        var page = await Open("about:blank", isLive: false);
        await page.AddInitScriptAsync("Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };");
        await page.GotoAsync(new Uri(address, car.Address(Parts)).ToString());
        await Expect(page.Locator("[data-live=yes]")).ToBeAttachedAsync();
        await page.Locator(Rate).FillAsync("22");
        await Expect(page.Locator("#unkept")).ToContainTextAsync("keeps no draft");
        End();
        await Expect(page.Locator(".lost-touch .unkept")).ToBeVisibleAsync();
        await Start(address.Port);
        await Expect(page.Locator(".lost-touch .back")).ToBeVisibleAsync();
        await Expect(page.Locator(Rate)).ToHaveValueAsync("22");
    }

    [Fact]
    public async Task A_page_of_a_pass_comes_back_with_what_stands_in_its_address()
    {
        var address = await Start(0);
        var page = await Open(new Uri(address, "/pass?car=fern-saloon&speed=55").ToString(), isLive: false);
        await Expect(page.Locator("h1")).ToContainTextAsync("55 km/h");
        await page.WaitForTimeoutAsync(1000);
        End();
        await Expect(page.Locator(".lost-touch .plain")).ToBeVisibleAsync();
        await Expect(page.Locator(".lost-touch .kept")).ToBeHiddenAsync();
        await Start(address.Port);
        await Expect(page.Locator("#components-reconnect-modal")).ToBeHiddenAsync();
        await Expect(page.Locator("h1")).ToContainTextAsync("55 km/h");
    }

    // A program of the test's own on the garage of the others, which it may end.
    private async Task<Uri> Start(int port)
    {
        (own, var address, _) = await served.Start([served.Garage, "--port", port.ToString(CultureInfo.InvariantCulture)]);
        return address;
    }

    private void End()
    {
        own?.Kill(entireProcessTree: true);
        own?.WaitForExit();
        own?.Dispose();
        own = null;
    }

    private static Task<string> Kept(IPage page) =>
        page.EvaluateAsync<string>("JSON.stringify(Object.keys(localStorage).filter(key => key.startsWith('heaveline draft')))");

    private static async Task<IPage> Beside(IPage page, string path)
    {
        var other = await page.Context.NewPageAsync();
        await other.GotoAsync(path);
        return other;
    }

    private async Task<IPage> Open(string path, bool isLive = true)
    {
        var page = await served.Open(path);
        if (isLive)
        {
            await Expect(page.Locator("[data-live=yes]")).ToBeAttachedAsync(new() { Timeout = 20000 });
        }

        return page;
    }
}
