using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>Pages follow the files that they show, whoever writes them.</summary>
[Collection(AnotherProgram.Name)]
public sealed class DiskTests(Served served)
{
    private const string Rate = "#f-front--spring--rate";
    private const string Parts = "front front/spring";

    [Fact]
    public async Task A_file_changed_in_an_editor_is_shown_at_once_where_nothing_is_unsaved()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(Parts));
        Edit(car, "22.5 N/mm");
        await Expect(page.Locator(Rate)).ToHaveValueAsync("22.5");
        await Expect(page.Locator("#on-disk")).ToContainTextAsync($"{car.Name}.yaml: changed on the disk at ");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("As on the disk.");
        await Accessible.Check(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take back the last step" }).ClickAsync();
        await Expect(page.Locator(Rate)).ToHaveValueAsync("20.7");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
    }

    [Fact]
    public async Task A_file_changed_under_unsaved_numbers_is_a_conflict_before_anybody_saves()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(Parts));
        await page.Locator(Rate).FillAsync("25");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        Edit(car, "22.5 N/mm");
        await Expect(page.Locator(".conflict .added code").First).ToContainTextAsync("22.5 N/mm");
        await Expect(page.Locator(Rate)).ToHaveValueAsync("25");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take what is on the disk" }).ClickAsync();
        await Expect(page.Locator(".conflict")).ToHaveCountAsync(0);
        await Expect(page.Locator(Rate)).ToHaveValueAsync("22.5");
    }

    [Fact]
    public async Task Of_two_windows_the_second_hears_of_the_first_ones_save_and_the_first_hears_nothing_of_its_own()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(Parts));
        var other = await page.Context.NewPageAsync();
        await other.GotoAsync(car.Address(Parts));
        await Expect(other.Locator("[data-live=yes]")).ToBeAttachedAsync();
        await page.Locator(Rate).FillAsync("24");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        await page.Locator(".keeping button").First.ClickAsync();
        await Expect(other.Locator(Rate)).ToHaveValueAsync("24");
        await Expect(other.Locator("#on-disk")).ToBeVisibleAsync();
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("Saved");
        await Expect(page.Locator("#on-disk")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task The_numbers_of_a_variant_follow_its_base()
    {
        using var car = new OwnCar(served);
        var variant = Path.Combine(served.Garage, car.Name + "-softer.yaml");
        await File.WriteAllTextAsync(
            variant,
            $"variant: softer\nof: {car.Name}.yaml\nchange:\n  rear:\n    spring:\n      rate: 20 N/mm\n",
            TestContext.Current.CancellationToken);
        var page = await Open($"/car?car={car.Name}-softer&open=front+front%2Fspring");
        var frequency = page.Locator("tr[data-number=front-frequency] td").First;
        await Expect(frequency).ToContainTextAsync("±");
        var before = await frequency.InnerTextAsync();
        Edit(car, "32 N/mm");
        await Expect(frequency).Not.ToHaveTextAsync(before, new() { UseInnerText = true });
        await Expect(page.Locator("#on-disk")).ToContainTextAsync("taken into the numbers here");
    }

    [Fact]
    public async Task Pass_garage_and_report_take_up_the_new_state_with_a_line()
    {
        using var car = new OwnCar(served);
        var pass = await served.Open($"/pass?car={car.Name}");
        await Expect(pass.Locator("#verdict")).ToBeVisibleAsync();
        var garage = await pass.Context.NewPageAsync();
        await garage.GotoAsync("/");
        var report = await pass.Context.NewPageAsync();
        await report.GotoAsync($"/report?car={car.Name}");
        await Expect(report.Locator("[data-live=yes]")).ToBeAttachedAsync();
        // Each page listens when it has come to life.
        await pass.WaitForTimeoutAsync(2000);
        var before = await pass.Locator(".finding").InnerTextAsync();
        Edit(car, "32 N/mm");
        await Expect(pass.Locator("#on-disk")).ToContainTextAsync("driven here as it is now");
        await Expect(pass.Locator(".finding")).Not.ToHaveTextAsync(before, new() { UseInnerText = true });
        await Expect(garage.Locator("#on-disk")).ToContainTextAsync($"{car.Name}.yaml");
        await Expect(report.Locator("#on-disk")).ToContainTextAsync($"{car.Name}.yaml");
        // What a page does not show is no news to it.
        using var another = new OwnCar(served);
        await Expect(garage.Locator("#on-disk")).ToContainTextAsync($"{another.Name}.yaml");
        await Expect(pass.Locator("#on-disk")).Not.ToContainTextAsync(another.Name);
    }

    [Fact]
    public async Task The_map_of_a_rule_is_computed_for_the_file_as_it_is_now()
    {
        using var car = new OwnCar(served);
        var page = await served.Open($"/rule?car={car.Name}&from=40&to=50");
        await Expect(page.Locator(".rule-map, figure").First).ToBeVisibleAsync();
        await page.WaitForTimeoutAsync(1000);
        Edit(car, "32 N/mm");
        await Expect(page.Locator("#on-disk")).ToContainTextAsync("computed here as it is now");
    }

    private void Edit(OwnCar car, string rate) => File.WriteAllText(
        Path.Combine(served.Garage, car.Name + ".yaml"), car.Before.Replace("rate: 20.7 N/mm", $"rate: {rate}", StringComparison.Ordinal));

    private async Task<IPage> Open(string path)
    {
        var page = await served.Open(path);
        await Expect(page.Locator("[data-live=yes]")).ToBeAttachedAsync(new() { Timeout = 20000 });
        return page;
    }
}
