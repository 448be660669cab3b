using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>The whole job, from an empty folder to a report: a car measured, why it pitches, what cures it, kept, and put on paper.</summary>
[Collection(AnotherProgram.Name)]
public class JobTests(Served served)
{
    private static readonly (string Id, string Words)[] Measured =
    [
        ("name", "Lark estate"), ("wheelbase", "2.74 m"), ("front", "768 kg"), ("rear", "672 kg"), ("front-spring", "118 lbf/in"),
        ("rear-spring", "217 lbf/in"),
    ];

    [Theory]
    [InlineData(false, 1280)]
    [InlineData(true, 1280)]
    [InlineData(true, 390)]
    public async Task From_an_empty_folder_to_a_report_of_the_cure_in_ten_presses_and_nothing_is_asked_twice(bool keyboard, int width)
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-job-").FullName;
        var (program, address, _) = await served.Start([folder, "--port", "0"]);
        try
        {
            var page = await served.Open(new Uri(address, "/").ToString(), width);
            var presses = 0;

            // A car out of what was measured on it.
            await Press("main [href=sheet]");
            await Expect(page.Locator(".garage-sheet[data-live=yes]")).ToBeAttachedAsync(new() { Timeout = 20000 });
            foreach (var (id, words) in Measured)
            {
                await Type($"#sheet-{id}", words);
            }

            await Press("button:text-is('Save it and drive it')");
            await Expect(page).ToHaveURLAsync(new Regex("/pass[?]car=lark-estate"));

            // Under which load, why, and what helps.
            var loads = page.Locator(".tray-loads button");
            await Expect(loads).ToHaveCountAsync(3, new() { Timeout = 30000 });
            var load = await loads.Last.Locator(".load-name").InnerTextAsync();
            await Press(".tray-loads li:last-child button");
            await Expect(page.Locator(".finding")).ToContainTextAsync(load, new() { IgnoreCase = true });
            await Press("#look-for-cures");
            await Expect(page.Locator("#cure-finding")).ToContainTextAsync("Cure 1 does most", new() { Timeout = 60000 });
            await Press(".cure");
            await Expect(page.Locator(".cure").First).ToHaveAttributeAsync("aria-pressed", "true");
            await Expect(page.Locator(".finding")).ToContainTextAsync("where it was");

            // Kept, and put on paper.
            await Type("#variant-name", "softened");
            await Press("#keep");
            await Expect(page).ToHaveURLAsync(new Regex("car=lark-estate-softened"));
            Assert.True(File.Exists(Path.Combine(folder, "lark-estate-softened.yaml")));
            await Expect(page.Locator(".masthead nav a:text-is('The report')")).ToHaveAttributeAsync("href", new Regex("car=lark-estate-softened"));
            await Press(".masthead nav a:text-is('The report')");
            await Expect(page.Locator(".report-page[data-live=yes]")).ToBeAttachedAsync(new() { Timeout = 20000 });
            await Expect(page.Locator("#load")).ToHaveValueAsync(load);
            await Expect(page.Locator("#road")).ToHaveValueAsync("village-hump");
            await Press("#make");
            var report = page.FrameLocator("iframe.preview");
            await Expect(report.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToBeVisibleAsync(new() { Timeout = 120_000 });
            await Expect(report.Locator("body")).ToContainTextAsync("Lark estate, softened");
            await Expect(report.Locator("body")).ToContainTextAsync(load);
            Assert.True(presses <= 10, $"{presses} presses");

            async Task Press(string what)
            {
                presses++;
                if (!keyboard)
                {
                    await page.Locator(what).First.ClickAsync();
                    return;
                }

                await Keys.TabTo(page, what, most: 400);
                await page.Keyboard.PressAsync("Enter");
            }

            async Task Type(string what, string words)
            {
                if (!keyboard)
                {
                    await page.Locator(what).FillAsync(words);
                    return;
                }

                await Keys.TabTo(page, what, most: 400);
                await page.Keyboard.TypeAsync(words);
            }
        }
        finally
        {
            program.Kill(entireProcessTree: true);
            await program.WaitForExitAsync(TestContext.Current.CancellationToken);
            program.Dispose();
            Directory.Delete(folder, recursive: true);
        }
    }
}
