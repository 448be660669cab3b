using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

[Collection(AnotherProgram.Name)]
public class ReportPageTests(Served served)
{
    private const string Quick = "/report?car=fern-saloon&car=fern-saloon-cured&parts=cost,car&date=1%20May%202026";

    [Fact]
    public async Task Chosen_parts_are_made_and_looked_at_in_the_file_itself()
    {
        var page = await Open("/report?car=fern-saloon&date=1%20May%202026");
        foreach (var part in new[] { "In short", "Modes", "The pass", "Why it pitches", "How sure it is", "The rule", "The ride" })
        {
            await page.GetByRole(AriaRole.Checkbox, new() { Name = part, Exact = true }).UncheckAsync();
        }

        await Expect(page).ToHaveURLAsync(new Regex("parts=car%2Ccost"));
        await Make(page);
        var report = page.FrameLocator("iframe.preview");
        await Expect(report.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToBeVisibleAsync();
        Assert.Equal(
            [
                "The car: ",
                "Roll, dive, travel, headlamp",
                "Before anybody acts on these numbers",
                "Sources of the numbers",
                "To make this report again",
            ],
            (await report.GetByRole(AriaRole.Heading, new() { Level = 2 })
                .AllInnerTextsAsync()).Select(h => h.StartsWith("The car: ", StringComparison.Ordinal) ? "The car: " : h));
    }

    [Fact]
    public async Task A_pinned_trial_goes_into_the_report_as_a_variant_and_no_part_is_unticked_by_it()
    {
        using var car = new OwnCar(served);
        var page = await Open($"/report?car={car.Name}&parts=modes,cure&pins=rear-spring_50&rear-damping=1.5");
        await Expect(page.Locator("#trials li").First).ToContainTextAsync("A: rear spring 50 N/mm");
        await Expect(page.Locator("#trials li").Last).ToContainTextAsync("set now: rear damping 1.5");
        await page.Locator("#trial-A").ClickAsync();
        await Expect(page.Locator("#car-2")).ToHaveValueAsync(new Regex($"^{car.Name}-rear-spring-50"));
        await Expect(page.Locator("#part-modes")).ToBeCheckedAsync();
        await Expect(page.Locator("#part-cure")).ToBeCheckedAsync();
        await Expect(page.Locator("#part-compare")).ToBeCheckedAsync();
        await Accessible.Check(page);
        await page.Locator("#part-cure").UncheckAsync();
        await Make(page);
        await Expect(page.FrameLocator("iframe.preview").GetByRole(AriaRole.Heading, new() { Level = 2, Name = "Side by side" })).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData("html", "<!DOCTYPE html>")]
    [InlineData("pdf", "%PDF-")]
    public async Task A_download_is_the_same_every_time_and_the_same_as_the_commands_file(string ending, string magic)
    {
        var page = await Open(Quick);
        await Make(page);
        var (first, second) = (await Take(page, ending), await Take(page, ending));
        Assert.StartsWith(magic, Encoding.ASCII.GetString(first.AsSpan(0, 20)), StringComparison.Ordinal);
        Assert.Equal(first, second);

        // The line on the page, typed in the garage's folder as it stands there.
        var words = Typed(await page.Locator($"#line-{ending}").InnerTextAsync()).ToList();
        Assert.Equal($"fern-saloon-report.{ending}", words[^1]);
        var scratch = Directory.CreateTempSubdirectory("heaveline-report-");
        try
        {
            words[^1] = Path.Combine(scratch.FullName, words[^1]);
            await Command(served.Garage, words[1..]);
            Assert.Equal(await File.ReadAllBytesAsync(words[^1], TestContext.Current.CancellationToken), first);
        }
        finally
        {
            scratch.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task A_download_needs_no_page_and_is_computed_from_its_address()
    {
        using var client = new HttpClient { BaseAddress = served.Address };
        var address = "/download/report.html?car=sprig-kit-car&parts=cost&author=A.%20Fern&date=";
        var first = await client.GetByteArrayAsync(address, TestContext.Current.CancellationToken);
        Assert.Contains("A. Fern", Encoding.UTF8.GetString(first), StringComparison.Ordinal);
        Assert.Equal(first, await client.GetByteArrayAsync(address, TestContext.Current.CancellationToken));

        // A changed file makes another report at the same address: nothing old is handed out.
        var file = Path.Combine(served.Garage, "sprig-kit-car.yaml");
        var text = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(file, text + "# weighed again\n", TestContext.Current.CancellationToken);
        try
        {
            Assert.NotEqual(first, await client.GetByteArrayAsync(address, TestContext.Current.CancellationToken));
        }
        finally
        {
            await File.WriteAllTextAsync(file, text, TestContext.Current.CancellationToken);
        }
    }

    [Fact]
    public async Task What_is_chosen_stands_in_the_address_and_a_reload_brings_it_back()
    {
        var page = await Open(Quick);
        await page.GetByLabel("Title", new() { Exact = true }).FillAsync("Two saloons");
        await page.GetByLabel("Author").FillAsync("A. Fern & son");
        await page.Locator("#speed").FillAsync("25 mph");
        await page.GetByLabel("Road", new() { Exact = true }).SelectOptionAsync("pothole-left");
        await page.GetByLabel("Sheet of the PDF").SelectOptionAsync("letter");
        await Expect(page).ToHaveURLAsync(new Regex("paper=letter"));
        await Make(page);
        await page.ReloadAsync();
        await Expect(page.GetByLabel("Title", new() { Exact = true })).ToHaveValueAsync("Two saloons");
        await Expect(page.GetByLabel("Author")).ToHaveValueAsync("A. Fern & son");
        await Expect(page.Locator("#speed")).ToHaveValueAsync("25 mph");
        await Expect(page.GetByLabel("Road", new() { Exact = true })).ToHaveValueAsync("pothole-left");
        await Expect(page.GetByLabel("Sheet of the PDF")).ToHaveValueAsync("letter");
        await Expect(page.GetByLabel("Held against it, no. 1")).ToHaveValueAsync("fern-saloon-cured");
        await Expect(page.GetByRole(AriaRole.Checkbox, new() { Name = "Modes", Exact = true })).Not.ToBeCheckedAsync();
        await Expect(page.FrameLocator("iframe.preview").GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Two saloons");
    }

    [Fact]
    public async Task What_was_just_typed_counts_when_the_button_is_pressed_at_once()
    {
        var page = await Open(Quick);
        await page.GetByLabel("Title", new() { Exact = true }).FillAsync("Typed in haste");
        await page.Locator("#make").ClickAsync();
        await Expect(page.FrameLocator("iframe.preview").GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Typed in haste");
        await Expect(page).ToHaveURLAsync(new Regex("title=Typed%20in%20haste"));
    }

    [Fact]
    public async Task A_report_of_other_choices_says_that_it_is_one()
    {
        var page = await Open(Quick);
        await Make(page);
        await page.GetByLabel("Load", new() { Exact = true }).SelectOptionAsync("four up with luggage");
        await Expect(page.Locator("#changed")).ToBeVisibleAsync();
        var before = await page.Locator("iframe.preview").GetAttributeAsync("src");
        Assert.DoesNotContain("load=four", before, StringComparison.Ordinal);
        await Make(page);
        await Expect(page.Locator("#changed")).ToBeHiddenAsync();
        Assert.Contains("load=four", await page.Locator("iframe.preview").GetAttributeAsync("src"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_long_report_can_be_stopped_and_another_one_waits_its_turn_meanwhile()
    {
        var page = await Open("/report?car=fern-saloon&parts=doubt&samples=1000000");
        var other = await Open("/report?car=fern-saloon&parts=cost&seed=77");
        await page.Locator("#make").ClickAsync();
        await Expect(page.Locator("#making-says")).ToContainTextAsync("Part 1 of 1: How sure it is");
        await other.Locator("#make").ClickAsync();
        await Expect(other.Locator("#making-says")).ToContainTextAsync("waits its turn");
        await page.Locator("#cancel").ClickAsync();
        await Expect(page.Locator("#making-says")).ToContainTextAsync("Stopped. Nothing was made.", new() { Timeout = 30000 });
        await Expect(page.Locator("#make")).ToBeEnabledAsync();
        await Expect(other.Locator("iframe.preview")).ToBeVisibleAsync(new() { Timeout = 60000 });
    }

    [Fact]
    public async Task A_download_whose_reader_goes_away_is_given_up()
    {
        using var client = new HttpClient { BaseAddress = served.Address, Timeout = TimeSpan.FromSeconds(90) };
        using var leaves = new CancellationTokenSource(TimeSpan.FromSeconds(3));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => client.GetByteArrayAsync(
            "/download/report.html?car=fern-saloon&parts=doubt&samples=999999", leaves.Token));

        // Only one is made at a time: this one would otherwise wait for minutes.
        var answer = await client.GetAsync("/download/report.html?car=fern-saloon&parts=cost&seed=78", TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode);
    }

    [Fact]
    public async Task Beyond_a_few_that_wait_a_download_is_told_to_come_back()
    {
        using var client = new HttpClient { BaseAddress = served.Address, Timeout = TimeSpan.FromSeconds(90) };
        using var leaves = new CancellationTokenSource();
        var asked = Enumerable.Range(0, 7)
            .Select(i => client.GetAsync($"/download/report.html?car=fern-saloon&parts=doubt&samples={900000 + i}", leaves.Token)).ToList();
        var first = await await Task.WhenAny(asked);
        Assert.Equal(429, (int)first.StatusCode);
        Assert.Contains(
            "Too many computations wait", await first.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        await leaves.CancelAsync();
        await Task.WhenAll(asked.Select(async one => await Record.ExceptionAsync(() => one)));
    }

    [Theory]
    [InlineData("car=no-such-car", "#car-1-refused", "There is no car named no-such-car in this garage.")]
    [InlineData("car=fern-saloon&car=fern-saloon", "#car-1-refused", "chosen twice")]
    [InlineData("car=fern-saloon&speed=fast", "#speed-refused", "speed 'fast'")]
    [InlineData("car=fern-saloon&speeds=30%20km/h,-5%20km/h", "#speeds-refused", "must be between 1.8 and 432 km/h")]
    [InlineData("car=fern-saloon&load=elephant", "#load-refused", "is no load state")]
    [InlineData("car=fern-saloon&road=nowhere", "#road-refused", "There is no road named nowhere.")]
    [InlineData("car=fern-saloon&class=Z", "#class-refused", "is no road class")]
    [InlineData("car=fern-saloon&rule=thumb", "#rule-refused", "is no rule")]
    [InlineData("car=fern-saloon&samples=3", "#samples-refused", "give 10 to 1000000")]
    [InlineData("car=fern-saloon&seed=-1", "#seed-refused", "give 0 to 18446744073709551615")]
    [InlineData("car=fern-saloon&paper=a3", "#paper-refused", "is no paper")]
    [InlineData("car=fern-saloon&file=../../x", "#file-refused", "letters without accents, digits")]
    [InlineData("car=fern-saloon&title=one%0Atwo", "#title-refused", "one line")]
    [InlineData("car=fern-saloon&parts=", "#parts-refused", "list of parts is empty")]
    [InlineData("car=fern-saloon&parts=soup", "#parts-refused", "'soup' is no part")]
    [InlineData("car=fern-saloon&drive=nowhere", "#drive-1-refused", "There is no drive")]
    [InlineData("car=fern-saloon&parts=drive", "#parts-refused", "needs a drive")]
    [InlineData("car=fern-saloon&parts=compare", "#parts-refused", "needs two cars")]
    public async Task What_cannot_be_is_said_beside_its_choice_and_at_the_door_of_the_files(string query, string place, string words)
    {
        var page = await Open("/report?" + query);
        await Expect(page.Locator(place)).ToContainTextAsync(words);
        await Expect(page.Locator("#make")).ToBeDisabledAsync();
        await Expect(page.Locator("#why-not")).ToBeVisibleAsync();
        using var client = new HttpClient { BaseAddress = served.Address };
        foreach (var door in new[] { "/download/report.html?", "/download/report.pdf?", "/preview/report.html?" })
        {
            var answer = await client.GetAsync(door + query, TestContext.Current.CancellationToken);
            Assert.Equal(words.StartsWith("There is no ", StringComparison.Ordinal) ? 404 : 422, (int)answer.StatusCode);
            Assert.Contains(words, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }
    }

    private Task<IPage> Open(string path) => Ready(served, path);

    internal static async Task<IPage> Ready(Served served, string path, int width = 1280, bool dark = false)
    {
        var page = await served.Open(path, width, 900, dark);
        await Expect(page.Locator("[data-live=yes]")).ToBeAttachedAsync(new() { Timeout = 30000 });
        return page;
    }

    internal static async Task Make(IPage page)
    {
        await Press(page, "#make");
        await Expect(page.Locator("[data-shows=current]")).ToBeAttachedAsync(new() { Timeout = 60000 });
        await Expect(page.FrameLocator("iframe.preview").GetByRole(AriaRole.Heading, new() { Level = 1 })).ToBeVisibleAsync();
    }

    /// <summary>
    /// Clicks once the page has come to rest. The preview is a frame of its own process: a click within a few frames after scrolling is still
    /// sent to where that frame stood before.
    /// </summary>
    internal static async Task Press(IPage page, string what)
    {
        await page.Locator(what).ScrollIntoViewIfNeededAsync();
        await page.WaitForTimeoutAsync(500);
        await page.Locator(what).ClickAsync();
    }

    private static async Task<byte[]> Take(IPage page, string ending)
    {
        var taken = await page.RunAndWaitForDownloadAsync(() => page.Locator($"#download-{ending}").ClickAsync());
        Assert.Equal($"fern-saloon-report.{ending}", taken.SuggestedFilename);
        return await File.ReadAllBytesAsync((await taken.PathAsync())!, TestContext.Current.CancellationToken);
    }

    private static async Task Command(string folder, IEnumerable<string> words)
    {
        using var program = Process.Start(new ProcessStartInfo(
            Served.ProgramPath, words)
        {
            WorkingDirectory = folder,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        })!;
        var said = program.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await program.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(program.ExitCode == 0, await said);
    }

    // As a POSIX shell reads the line: blanks between words, double quotes around them.
    private static IEnumerable<string> Typed(string line) =>
        Regex.Matches(line, "\"((?:\\\\.|[^\"\\\\])*)\"|(\\S+)")
            .Select(m => m.Groups[2].Success ? m.Groups[2].Value : Regex.Replace(m.Groups[1].Value, @"\\(.)", "$1"));
}
