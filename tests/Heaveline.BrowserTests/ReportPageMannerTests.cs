using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>The report page against bad intent, by keyboard, on a phone and for readers who do not see it.</summary>
[Collection(AnotherProgram.Name)]
public class ReportPageMannerTests(Served served)
{
    private const string Quick = "/report?car=fern-saloon&car=fern-saloon-cured&parts=cost,car&date=1%20May%202026";

    [Fact]
    public async Task Only_the_preview_may_be_framed_and_only_by_our_own_pages_in_a_sandbox()
    {
        using var client = new HttpClient { BaseAddress = served.Address };
        const string query = "?car=fern-saloon&parts=cost&date=";
        string Policy(HttpResponseMessage answer) => string.Join(';', answer.Headers.GetValues("Content-Security-Policy"));
        async Task<HttpResponseMessage> Ask(string path) => await client.GetAsync(path + query, TestContext.Current.CancellationToken);

        // Nothing is made by looking.
        Assert.Equal(404, (int)(await Ask("/preview/report.html")).StatusCode);
        var file = await Ask("/download/report.html");
        Assert.Equal("attachment", file.Content.Headers.ContentDisposition!.DispositionType);
        Assert.Contains("frame-ancestors 'none'", Policy(file), StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", Policy(await Ask("/report")), StringComparison.Ordinal);

        var preview = await Ask("/preview/report.html");
        Assert.Equal(200, (int)preview.StatusCode);
        Assert.Equal(
            "default-src 'none'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'self'; sandbox",
            Policy(preview));
        Assert.Equal(
            await file.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken),
            await preview.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        foreach (var near in new[] { "/preview/report.html/", "/preview/", "/preview/report.htm" })
        {
            Assert.Contains("frame-ancestors 'none'", Policy(await Ask(near)), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_script_in_a_cars_name_runs_neither_on_the_page_nor_in_the_preview_nor_in_a_shell()
    {
        var text = await File.ReadAllTextAsync(Path.Combine(served.Garage, "fern-saloon.yaml"), TestContext.Current.CancellationToken);
        var file = Path.Combine(served.Garage, "planted.yaml");
        await File.WriteAllTextAsync(
            file,
            Regex.Replace(
                text,
                "^car:.*$",
                "car: \"<script>parent.planted=1;window.planted=1</script><img src=x onerror='parent.planted=1'> $(touch planted) it's\"",
                RegexOptions.Multiline),
            TestContext.Current.CancellationToken);
        try
        {
            var page = await ReportPageTests.Ready(served, "/report?car=planted&parts=car");
            await ReportPageTests.Make(page);
            await Expect(page.FrameLocator("iframe.preview").GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync(
                "<script>parent.planted=1");
            Assert.True(await page.EvaluateAsync<bool>(
                "() => window.planted === undefined && document.querySelector('iframe').getAttribute('sandbox') === ''"));
            foreach (var frame in page.Frames)
            {
                Assert.False(
                    await frame.EvaluateAsync<bool>("() => 'planted' in window || document.querySelector('main script, main img') !== null"));
            }

            Assert.Contains(
                "--title '<script>parent.planted=1;window.planted=1</script><img src=x onerror='\\''parent.planted=1'\\''> "
                + "$(touch planted) it'\\''s'",
                await page.Locator("#line-html").InnerTextAsync(),
                StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public async Task A_refused_car_shows_why()
    {
        var file = Path.Combine(served.Garage, "refused-report.yaml");
        await File.WriteAllTextAsync(file, "car: No wheels\n", TestContext.Current.CancellationToken);
        try
        {
            var page = await ReportPageTests.Ready(served, "/report?car=refused-report");
            await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "refused-report is refused" })).ToBeVisibleAsync();
            await Expect(page.Locator("#make")).ToBeDisabledAsync();
            await page.Locator("#car-1").SelectOptionAsync("fern-saloon");
            await Expect(page.Locator("#make")).ToBeEnabledAsync();
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public async Task A_report_is_kept_whole_in_the_garage_and_another_one_is_replaced_only_when_told()
    {
        var page = await ReportPageTests.Ready(served, Quick + "&file=kept-report");
        await ReportPageTests.Make(page);
        var path = Path.Combine(served.Garage, "reports", "kept-report.html");
        await ReportPageTests.Press(page, "#keep-html");
        await Expect(page.Locator("#keep-says")).ToHaveTextAsync("Kept as reports/kept-report.html.");
        var kept = await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken);
        await ReportPageTests.Press(page, "#keep-html");
        await Expect(page.Locator("#keep-says")).ToContainTextAsync("the same to the last byte");

        await page.GetByLabel("Author").FillAsync("Somebody else");
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.Locator("#changed")).ToBeVisibleAsync();
        await ReportPageTests.Make(page);
        await ReportPageTests.Press(page, "#keep-html");
        await Expect(page.Locator("#keep-says")).ToContainTextAsync("It was left alone.");
        Assert.Equal(kept, await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken));
        await ReportPageTests.Press(page, "#replace");
        await Expect(page.Locator("#keep-says")).ToHaveTextAsync("Kept as reports/kept-report.html.");
        Assert.NotEqual(kept, await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken));
        await ReportPageTests.Press(page, "#keep-pdf");
        await Expect(page.Locator("#keep-says")).ToHaveTextAsync("Kept as reports/kept-report.pdf.");
        Assert.Equal(
            ["kept-report.html", "kept-report.pdf"], Directory.EnumerateFiles(Path.GetDirectoryName(path)!).Select(f => Path.GetFileName(f)).Order());
        Directory.Delete(Path.GetDirectoryName(path)!, recursive: true);
    }

    [Fact]
    public async Task The_line_is_copied_or_where_that_is_refused_marked()
    {
        var page = await ReportPageTests.Ready(served, Quick);
        await ReportPageTests.Make(page);
        var line = await page.Locator("#line-html").InnerTextAsync();
        await page.EvaluateAsync("() => { Object.defineProperty(navigator, 'clipboard', { configurable: true, value: { writeText: "
            + "async text => { window.copied = text; } } }); }");
        await ReportPageTests.Press(page, "[data-copy=line-html]");
        await Expect(page.Locator("[data-copied=line-html]")).ToHaveTextAsync("Copied.");
        Assert.Equal(line, await page.EvaluateAsync<string>("() => window.copied"));
        await page.EvaluateAsync("() => { navigator.clipboard.writeText = async () => { throw new DOMException('no', 'NotAllowedError'); }; }");
        await ReportPageTests.Press(page, "[data-copy=line-pdf]");
        await Expect(page.Locator("[data-copied=line-pdf]")).ToContainTextAsync("The line is marked");
        Assert.Equal(await page.Locator("#line-pdf").InnerTextAsync(), await page.EvaluateAsync<string>("() => window.getSelection().toString()"));
    }

    [Fact]
    public async Task The_keyboard_alone_chooses_makes_and_takes()
    {
        var page = await ReportPageTests.Ready(served, "/report?car=fern-saloon&parts=cost&date=");
        await To(page, "part-car");
        await page.Keyboard.PressAsync("Space");
        await Expect(page.Locator("#part-car")).ToBeCheckedAsync();
        await To(page, "author");
        await page.Keyboard.TypeAsync("Keys only");
        await To(page, "make");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("iframe.preview")).ToBeVisibleAsync(new() { Timeout = 60000 });
        await To(page, "download-pdf");
        var taken = await page.RunAndWaitForDownloadAsync(() => page.Keyboard.PressAsync("Enter"));
        Assert.Equal("fern-saloon-report.pdf", taken.SuggestedFilename);
        Assert.Contains("author=Keys%20only", page.Url, StringComparison.Ordinal);

        static async Task To(IPage page, string id)
        {
            for (var n = 0; n < 80; n++)
            {
                if (await page.EvaluateAsync<string>("() => document.activeElement.id") == id)
                {
                    return;
                }

                await page.Keyboard.PressAsync("Tab");
            }

            Assert.Fail($"Tab does not reach {id}.");
        }
    }

    [Theory]
    [InlineData(320)]
    [InlineData(390)]
    [InlineData(1280)]
    [InlineData(2560)]
    public async Task Nothing_scrolls_sideways(int width)
    {
        var page = await ReportPageTests.Ready(served, Quick, width);
        await ReportPageTests.Make(page);
        Assert.Equal(0, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Readers_who_do_not_see_it_are_served(bool dark)
    {
        var page = await ReportPageTests.Ready(served, Quick, dark: dark);
        await Accessible.Check(page, frames: false);
        await ReportPageTests.Make(page);
        await Accessible.Check(page, frames: false);
        var taken = await page.RunAndWaitForDownloadAsync(() => page.Locator("#download-html").ClickAsync());
        var report = await taken.PathAsync();
        await page.GotoAsync("/report?car=nobody&speed=fast&parts=&title=one%0Atwo");
        await Expect(page.Locator("[data-live=yes]")).ToBeAttachedAsync();
        await Accessible.Check(page, frames: false);

        // The report is checked as a file of its own: in its frame no script runs, not even the engine's.
        await page.GotoAsync("about:blank");
        await page.SetContentAsync(await File.ReadAllTextAsync(report!, TestContext.Current.CancellationToken));
        await Accessible.Check(page, frames: false);
    }
}
