using System.Text.RegularExpressions;
using Microsoft.Playwright;
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
            var page = await served.Open("/choose?car=fern-saloon&budget=600&open=rear+damper&draws=20&load=driver&road=speed-table&speed=30");
            await Expect(page.Locator("#finding")).ToContainTextAsync("Worth buying: A, ", new() { Timeout = Long });
            await Expect(page.Locator("#setup-A")).ToContainTextAsync("EUR");
            await Expect(page.Locator("#trade-off .picture").First).ToBeVisibleAsync();
            await Accessible.Check(page);
            await page.Locator("#keep-A").FocusAsync();
            await page.Keyboard.PressAsync("Enter");
            const string Against = "/pass\\?.*car=fern-saloon-wren.*load=driver.*road=speed-table.*speed=30.*beside=fern-saloon(&|$)";
            await Expect(page).ToHaveURLAsync(new Regex(Against), new() { Timeout = Long });
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

    // Every setup of one place costs comfort alike to the last digit: the axis is a hair wide.
    [Fact]
    public async Task A_choice_of_springs_for_one_end_is_drawn()
    {
        var list = Path.Combine(served.Garage, "village-autumn.yaml");
        File.Copy(Path.Combine(Checkout.Root, "examples", "parts", "village-autumn.yaml"), list);
        try
        {
            var page = await served.Open("/choose?car=fern-saloon&open=rear+spring&draws=20");
            await Expect(page.Locator("#finding")).ToBeVisibleAsync(new() { Timeout = Long });
            await Expect(page.Locator("#trade-off .picture").First).ToBeVisibleAsync(new() { Timeout = Long });
            await Expect(page.Locator("section.refused")).ToHaveCountAsync(0);
        }
        finally
        {
            File.Delete(list);
        }
    }

    [Fact]
    public async Task Of_lists_in_two_currencies_those_of_one_are_ticked_and_where_nothing_may_be_chosen_nothing_is_drawn()
    {
        var (first, second) = (Path.Combine(served.Garage, "far-list.yaml"), Path.Combine(served.Garage, "village-autumn.yaml"));
        File.Copy(Path.Combine(Checkout.Root, "examples", "parts", "village-autumn.yaml"), second);
        await File.WriteAllTextAsync(
            first,
            "parts: Far list\ncurrency: GBP\nsprings:\n  - {part: Alder F-21, price: 70, fits: front, rate: 20.9 N/mm ± 3 %}\n",
            TestContext.Current.CancellationToken);
        try
        {
            var page = await served.Open("/choose?car=fern-saloon&budget=1&draws=10");
            await Expect(page.Locator("#finding")).ToHaveTextAsync(new Regex("^Leave it as it is"), new() { Timeout = Long });
            await Expect(page.Locator("#nothing-drawn")).ToBeVisibleAsync();
            await Expect(page.Locator("#trade-off")).ToHaveCountAsync(0);
            await Expect(page.Locator("#more-numbers")).ToHaveCountAsync(0);
            await Expect(page.Locator("label[for=budget]")).ToContainTextAsync("GBP");
            await page.Locator("#question summary").ClickAsync();
            await Expect(page.Locator("#lists input[value=far-list]")).ToBeCheckedAsync();
            await Expect(page.Locator("#lists input[value=village-autumn]")).Not.ToBeCheckedAsync();
            await Expect(page.Locator("#currencies")).ToBeVisibleAsync();
            await Accessible.Check(page);
        }
        finally
        {
            File.Delete(first);
            File.Delete(second);
        }
    }

    [Theory]
    [InlineData("parts: Autumn\nsprings:\n  - {name: A, rate: soft}\n")]
    [InlineData("parts: Autumn\nsprings:\n  - {name: A, ra")]
    public async Task A_list_that_is_refused_is_named_with_its_reason(string text)
    {
        var list = Path.Combine(served.Garage, "broken-list.yaml");
        await File.WriteAllTextAsync(list, text, TestContext.Current.CancellationToken);
        try
        {
            var page = await served.Open("/choose?car=fern-saloon");
            await page.Awake();
            await Expect(page.Locator("#unread-lists li")).ToHaveTextAsync(new Regex("^broken-list.yaml: .{8,}"));
            await Expect(page.Locator("#none h2")).ToHaveTextAsync("No list of parts can be read here");
            Assert.DoesNotContain("must be given", await page.Locator("main").InnerTextAsync());
            await Accessible.Check(page);
        }
        finally
        {
            File.Delete(list);
        }
    }

    [Fact]
    public async Task A_garage_without_a_list_says_how_one_is_put_there()
    {
        var page = await served.Open("/choose?car=fern-saloon");
        await page.Awake();
        await Expect(page.Locator("#none h2")).ToHaveTextAsync("There is no list of parts in this garage");
        await Accessible.Check(page);
        try
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Put it into this garage: Village motor factors, autumn" }).ClickAsync();
            await Expect(page.Locator("#none")).ToHaveCountAsync(0);
            await Expect(page.Locator("#lists input")).ToBeCheckedAsync();
            await Expect(page.Locator("#finding")).ToBeVisibleAsync(new() { Timeout = Long });
        }
        finally
        {
            File.Delete(Path.Combine(served.Garage, "village-autumn.yaml"));
        }
    }
}
