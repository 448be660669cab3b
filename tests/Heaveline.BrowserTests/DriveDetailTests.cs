using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using Heaveline.Files.Garages;
using Heaveline.Tests.Drives.Lanes;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>What else the car of a drive tells, folded away on the page of the drive until it is asked for.</summary>
[Collection(AnotherProgram.Name)]
public class DriveDetailTests(Served served)
{
    private static readonly string Log = LaneWriter.Whole(LarchLane.Before.Log);

    [Fact]
    public async Task Each_part_stays_folded_and_opened_has_the_words_and_numbers_that_the_command_prints()
    {
        var (drive, folder) = Drive("Detailed lane");
        var printed = (await Printed("drive", folder, "--all")).Split('\n').Select(Plain).ToArray();
        var page = await Opened(drive);
        await Expect(page.Locator(".detail")).ToHaveCountAsync(3, new() { Timeout = 120_000 });
        Assert.Equal(0, await page.Locator(".detail > :not(summary)").CountAsync());
        foreach (var (kind, title) in new[]
        {
            ("Halves", "Gentler and harder half apart (90 %)"), ("Speeds", "Speeds over the sites, of the linear car of this drive"),
            ("Roughness", "Roughness along the drive between bumps, G(0.1) (90 %)"),
        })
        {
            var part = page.Locator($".detail[data-kind={kind}]");
            await part.Locator("summary").ClickAsync();
            await Expect(part.Locator("caption")).ToHaveTextAsync(title, new() { Timeout = 120_000 });
            var rows = await part.Locator("tr").EvaluateAllAsync<string[]>(
                "rows => rows.map(row => [...row.cells].map(cell => cell.textContent.trim()).join(' '))");
            // The page names the columns of measures and of units, where the command has the title.
            string[] shown = [Plain(rows[0].Replace("measure unit ", $"{title} ", StringComparison.Ordinal)), .. rows[1..].Select(Plain)];
            var first = Assert.Single(Enumerable.Range(0, printed.Length), i => printed[i] == shown[0]);
            Assert.True(shown.Length > 1);
            Assert.Equal<IEnumerable<string>>(printed.Skip(first).Take(shown.Length + 1), shown.Append(""));
            var said = await part.Locator("p:not(.downloads)").AllInnerTextsAsync();
            Assert.NotEmpty(said);
            Assert.All(said, sentence => Assert.Contains(Plain(sentence), string.Join(' ', printed), StringComparison.Ordinal));
        }

        await Expect(page.Locator(".detail .chart .picture").First).ToBeVisibleAsync();
        // The limits of the classes are named where they stand: the axis is no longer than the road and its classes, ISO 8608's A to H, ask for.
        var ends = await page.Locator(".detail .chart .panel").EvaluateAsync<double[]>(
            "panel => [Number(panel.dataset.yFrom), Number(panel.dataset.yTo)]");
        Assert.InRange(ends[1], 1.0, 1e6);
        await Accessible.Check(page);
        using var client = new HttpClient { BaseAddress = served.Address, Timeout = TimeSpan.FromMinutes(2) };
        var drawn = await client.GetStringAsync($"/download/drive-roughness.svg?log={drive}", TestContext.Current.CancellationToken);
        Assert.Contains("Roughness along the drive", drawn, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(390, false)]
    [InlineData(390, true)]
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    public async Task Opened_it_fits_and_is_for_everybody_and_what_is_written_down_beside_it_leaves_it_open(int width, bool dark)
    {
        var page = await Opened(Drive("Wide detailed lane").Name, width, dark);
        foreach (var kind in new[] { "Halves", "Speeds", "Roughness" })
        {
            await page.Locator($".detail[data-kind={kind}] summary").ClickAsync(new() { Timeout = 120_000 });
        }

        await Expect(page.Locator(".detail caption")).ToHaveCountAsync(3, new() { Timeout = 120_000 });
        await Expect(page.Locator(".detail .chart .picture").First).ToBeVisibleAsync();
        Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"));
        await Accessible.Check(page);
        await page.GetByLabel("Rear tyres").FillAsync(FormattableString.Invariant($"2.{(width + (dark ? 1 : 0)) % 10} bar"));
        await page.GetByLabel("Rear tyres").BlurAsync();
        await Expect(page.Locator(".detail caption")).ToHaveCountAsync(3);
        await Expect(page.Locator(".detail .underway")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_is_being_worked_out_is_stopped_and_goes_on_when_it_is_asked_for_again()
    {
        var page = await Opened(Drive("Stopped lane").Name);
        var part = page.Locator(".detail[data-kind=Halves]");
        await Expect(part).ToHaveCountAsync(1, new() { Timeout = 120_000 });
        // The button is pressed as soon as it is there.
        await part.EvaluateAsync("""
            part => new MutationObserver((_, watch) => {
                const button = part.querySelector('.underway button');
                if (button) { watch.disconnect(); button.click(); }
            }).observe(part, { childList: true, subtree: true })
            """);
        await part.Locator("summary").ClickAsync();
        await Expect(part).ToContainTextAsync("Stopped before its end.");
        Assert.Equal(0, await part.Locator("table").CountAsync());
        await part.GetByRole(AriaRole.Button, new() { Name = "Go on" }).ClickAsync();
        await Expect(part.Locator("caption")).ToHaveCountAsync(1, new() { Timeout = 120_000 });
        await Expect(part.Locator(".underway")).ToHaveCountAsync(0);
    }

    private async Task<IPage> Opened(string drive, int width = 1280, bool dark = false)
    {
        var page = await served.Open($"/drive?log={drive}", width, dark: dark);
        await page.Awake();
        return page;
    }

    private static string Plain(string text) => Regex.Replace(text, "\\s+", " ").Trim();

    private (string Name, string Folder) Drive(string name)
    {
        var drive = new Garage(served.Garage).Drives.Begin(name, "larch-lane-before.csv", Encoding.UTF8.GetBytes(Log)).Drive!;
        var folder = Path.Combine(served.Garage, DriveFolders.Folder, drive);
        File.WriteAllText(Path.Combine(served.Garage, DriveFolders.FileOf(drive)), $"drive: {name}\nwheelbase: 2.70 m\n");
        return (drive, folder);
    }

    private static async Task<string> Printed(params string[] words)
    {
        using var program = Process.Start(new ProcessStartInfo(Served.ProgramPath, words)
        {
            RedirectStandardOutput = true, StandardOutputEncoding = Encoding.UTF8,
        })!;
        var said = await program.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, program.ExitCode);
        return said;
    }
}
