using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>What to buy as it is asked by a file: a study opened, asked otherwise, kept and opened again; parts from a price sheet.</summary>
[Collection(OneProgram.Name)]
public class ChooseStudyTests(Served served)
{
    // A choice on a busy machine.
    private const float Long = 240_000;

    private const string Study = """
        # Mine.
        study: Fern in autumn
        car: fern-saloon.yaml
        parts: [village-autumn.yaml]
        open: {rear-damper: any}
        use:
          - {road: speed-table, speeds: [30 km/h]}  # twice a day
        loads: [driver]
        budget: 600 EUR
        draws: 20

        """;

    private string File => Path.Combine(served.Garage, "autumn.yaml");

    [Fact]
    public async Task A_study_that_is_opened_is_asked_otherwise_saved_in_its_file_and_kept_as_another_that_opens_again()
    {
        using var garage = With("village-autumn.yaml");
        await System.IO.File.WriteAllTextAsync(File, Study, TestContext.Current.CancellationToken);
        var page = await served.Open("/");
        await page.Awake();
        await page.Locator("#studies").GetByRole(AriaRole.Link, new() { Name = "Fern in autumn" }).ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/choose[?].*study=autumn[.]yaml"));
        var standing = page.Locator("#opened-study");
        await Expect(standing).ToHaveTextAsync("Study: Fern in autumn (autumn.yaml). This page asks what the file asks.");
        await Expect(page.Locator("#save-study")).ToHaveCountAsync(0);
        await Expect(page.Locator("#finding")).ToContainTextAsync("Worth buying: A, ", new() { Timeout = Long });
        await Accessible.Check(page);

        await Ask(page, "500 EUR");
        await Expect(standing).ToContainTextAsync("This page asks otherwise than the file in the budget.");
        await page.Locator("#save-study").ClickAsync();
        await Expect(page.Locator("#kept-study")).ToHaveTextAsync(
            new Regex("^Saved in autumn[.]yaml; .* In a terminal, in the garage.s folder: heaveline choose autumn[.]yaml$"));
        Assert.Equal(Study.Replace("600", "500", StringComparison.Ordinal), await Text());
        await Expect(standing).ToContainTextAsync("This page asks what the file asks.");

        // A name that is free is offered, and what was said of the former question is not said of the next.
        await Expect(page.Locator("#study-title")).ToHaveValueAsync("Fern in autumn");
        await Ask(page, "510 EUR");
        await Expect(standing).ToContainTextAsync("This page asks otherwise than the file in the budget.");
        await Expect(page.Locator("#kept-study")).ToHaveTextAsync("");
        await Ask(page, "500 EUR");
        await Expect(standing).ToContainTextAsync("This page asks what the file asks.");

        await page.Locator("#study-title").FillAsync("Fern, for mother");
        await page.Locator("#study-title").BlurAsync();
        await page.Locator("#keep-study").ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex("study=fern-for-mother[.]yaml"));
        await Expect(page.Locator("#kept-study")).ToContainTextAsync("Kept as fern-for-mother.yaml. In a terminal");
        await Expect(standing).ToContainTextAsync("Study: Fern, for mother (fern-for-mother.yaml).");
        await page.ReloadAsync();
        await page.Awake();
        await Expect(standing).ToContainTextAsync("Study: Fern, for mother (fern-for-mother.yaml). This page asks what the file asks.");
        await Expect(page.Locator("#study-title")).ToHaveValueAsync("Fern, for mother 2");
        // An address that names the study alone asks what it asks.
        await page.GotoAsync("/choose?study=fern-for-mother.yaml");
        await page.Awake();
        await Expect(page).ToHaveURLAsync(new Regex("car=fern-saloon.*budget=500"));
        await Expect(standing).ToContainTextAsync("Study: Fern, for mother (fern-for-mother.yaml). This page asks what the file asks.");
        await Expect(page.Locator("#budget")).ToHaveValueAsync("500 EUR");
        await Expect(page.Locator("#unread")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_study_whose_file_changes_meanwhile_is_not_saved_over_unless_one_knows()
    {
        using var garage = With("village-autumn.yaml");
        await System.IO.File.WriteAllTextAsync(File, Study, TestContext.Current.CancellationToken);
        var page = await served.Open("/");
        await page.Awake();
        await page.Locator("#studies").GetByRole(AriaRole.Link, new() { Name = "Fern in autumn" }).ClickAsync();
        await Expect(page.Locator("#opened-study")).ToContainTextAsync("asks what the file asks");
        await Ask(page, "450 EUR");
        await Expect(page.Locator("#opened-study")).ToContainTextAsync("otherwise than the file in the budget.");
        var other = Study.Replace("draws: 20", "draws: 24", StringComparison.Ordinal);
        await System.IO.File.WriteAllTextAsync(File, other, TestContext.Current.CancellationToken);
        await page.Locator("#save-study").ClickAsync();
        await Expect(page.Locator("#kept-study")).ToContainTextAsync("Not saved: autumn.yaml has changed on the disk since it was opened here.");
        await Expect(page.Locator("#kept-study")).ToContainTextAsync("the budget and the draws");
        Assert.Equal(other, await Text());
        await page.Locator("#save-over").ClickAsync();
        await Expect(page.Locator("#kept-study")).ToContainTextAsync("Saved in autumn.yaml");
        Assert.Equal(Study.Replace("600", "450", StringComparison.Ordinal), await Text());
        await Ask(page, "400 EUR");
        await page.Locator("#as-the-file").ClickAsync();
        await Expect(page.Locator("#budget")).ToHaveValueAsync("450 EUR");
        await Expect(page.Locator("#opened-study")).ToContainTextAsync("asks what the file asks");
    }

    [Fact]
    public async Task What_has_come_over_a_study_since_the_page_said_that_it_had_changed_is_not_saved_over()
    {
        using var garage = With("village-autumn.yaml");
        await System.IO.File.WriteAllTextAsync(File, Study, TestContext.Current.CancellationToken);
        var page = await served.Open("/");
        await page.Awake();
        await page.Locator("#studies").GetByRole(AriaRole.Link, new() { Name = "Fern in autumn" }).ClickAsync();
        await Expect(page.Locator("#opened-study")).ToContainTextAsync("asks what the file asks");
        await Ask(page, "450 EUR");
        await Expect(page.Locator("#opened-study")).ToContainTextAsync("otherwise than the file in the budget.");
        var other = Study.Replace("draws: 20", "draws: 24", StringComparison.Ordinal);
        await System.IO.File.WriteAllTextAsync(File, other, TestContext.Current.CancellationToken);
        await page.Locator("#save-study").ClickAsync();
        await Expect(page.Locator("#kept-study")).ToContainTextAsync("the budget and the draws");

        var third = other.Replace("loads: [driver]", "loads: [four up with luggage]", StringComparison.Ordinal);
        await System.IO.File.WriteAllTextAsync(File, third, TestContext.Current.CancellationToken);
        var said = await page.EvaluateAsync<string>(
            "() => { const said = document.getElementById('kept-study').textContent; document.getElementById('save-over').click(); return said; }");
        // Where the page has seen the third text by then, and said so, the press is meant for it.
        var isSaid = said.Contains("the loads", StringComparison.Ordinal);
        await Expect(page.Locator("#kept-study")).ToContainTextAsync(isSaid ? "Saved in autumn.yaml" : "the loads, the budget and the draws");
        Assert.Equal(isSaid, await Text() != third);
    }

    [Fact]
    public async Task A_price_sheet_of_springs_is_chosen_from_kept_and_driven()
    {
        using var garage = With("shed.csv");
        var page = await served.Open("/choose?car=fern-saloon&open=rear+spring&draws=20&load=four+up+with+luggage&road=village-hump&speed=40");
        await page.Locator("#question summary").ClickAsync();
        await Expect(page.Locator("#lists input[value='shed.csv']")).ToBeCheckedAsync();
        await Expect(page.Locator("#finding")).ToHaveTextAsync(new Regex("^(Worth buying: A, |Leave it as it is: )"), new() { Timeout = Long });
        await page.Locator("#study-title").FillAsync("From the shed");
        await page.Locator("#study-title").BlurAsync();
        await page.Locator("#keep-study").ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex("study=from-the-shed[.]yaml"));
        Assert.Contains("parts: [shed.csv]", await System.IO.File.ReadAllTextAsync(
            Path.Combine(served.Garage, "from-the-shed.yaml"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        await page.GotoAsync("/");
        await page.Awake();
        await page.Locator("#studies").GetByRole(AriaRole.Link, new() { Name = "From the shed" }).ClickAsync();
        await Expect(page.Locator("#opened-study")).ToContainTextAsync("asks what the file asks");
        await Expect(page.Locator("#finding")).ToBeVisibleAsync(new() { Timeout = Long });
        await page.Locator("nav[aria-label=Pages] a", new() { HasTextString = "The pass" }).ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/pass[?].*car=fern-saloon"));
        await Expect(page.Locator("h1")).ToContainTextAsync("Fern saloon", new() { Timeout = Long });
    }

    [Fact]
    public async Task What_is_cancelled_is_said_to_be_and_goes_on_to_the_whole_answer()
    {
        using var garage = With("village-autumn.yaml");
        var page = await served.Open("/choose?car=fern-saloon&draws=40");
        await page.Locator(".underway button").ClickAsync(new() { Timeout = Long });
        await Expect(page.Locator(".underway")).ToContainTextAsync("Stopped before its end.", new() { Timeout = Long });
        await Expect(page.Locator(".underway button")).ToHaveTextAsync("Go on");
        await Expect(page.Locator("#finding, .waiting").First).ToContainTextAsync(
            new Regex("[Ss]topped before its end|Nothing has been chosen yet"), new() { Timeout = Long });
        await Accessible.Check(page);
    }

    private static async Task Ask(IPage page, string budget)
    {
        await page.Locator("#budget").FillAsync(budget);
        await page.Locator("#budget").BlurAsync();
    }

    private Task<string> Text() => System.IO.File.ReadAllTextAsync(File, TestContext.Current.CancellationToken);

    private Cleared With(string list)
    {
        var before = Directory.GetFiles(served.Garage).ToHashSet(StringComparer.Ordinal);
        System.IO.File.Copy(Path.Combine(Checkout.Root, "examples", "parts", list), Path.Combine(served.Garage, list));
        return new Cleared(served.Garage, before);
    }

    // What a test has put into the garage goes with it.
    private sealed class Cleared(string garage, HashSet<string> before) : IDisposable
    {
        public void Dispose()
        {
            foreach (var file in Directory.GetFiles(garage).Where(file => !before.Contains(file) && Path.GetExtension(file) is ".yaml" or ".csv"))
            {
                System.IO.File.Delete(file);
            }
        }
    }
}
