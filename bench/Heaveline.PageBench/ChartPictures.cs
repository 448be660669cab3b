using Microsoft.Playwright;

namespace Heaveline.PageBench;

/// <summary>Every chart and map of the pages as its readers see it, at three widths, in the light and in the dark: to be looked at by eye.</summary>
internal static class ChartPictures
{
    private static readonly (string Name, string Page, string[] Opens)[] Pages =
    [
        ("rule", "/rule?car=fern-saloon&load=driver", []),
        ("rule-laden", "/rule?car=fern-saloon&load=four%20up%20with%20luggage&measure=late", []),
        ("rule-damping", "/rule?car=drover-van&rule=damping", []),
        ("ride", "/ride?car=fern-saloon&load=driver&beside=drover-van", []),
        ("drive", "/drive?log=larch-lane-after", [".detail[data-kind=Roughness] summary"]),
    ];

    /// <summary>Takes them.</summary>
    /// <param name="folder">Where they go.</param>
    public static async Task<int> Take(string folder)
    {
        Directory.CreateDirectory(folder);
        await using var served = await ServedPage.Open("?car=fern-saloon");
        Pictures.BringDrives(served.Garage);
        foreach (var (name, address, opens) in Pages)
        {
            foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
            {
                await served.Page.EmulateMediaAsync(new() { ColorScheme = scheme });
                foreach (var width in new[] { 1280, 390, 1920 })
                {
                    await served.Page.SetViewportSizeAsync(width, 1000);
                    await Shown(served, address, opens);
                    var charts = await served.Page.Locator(".chart .plot").AllAsync();
                    for (var k = 0; k < charts.Count; k++)
                    {
                        await charts[k].ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{k}-{width}-{scheme}.png") });
                    }

                    Console.WriteLine($"{name}, {width}, {scheme}: {charts.Count} charts");
                }
            }
        }

        foreach (var complaint in served.Complaints)
        {
            Console.Error.WriteLine(complaint);
        }

        return served.Complaints.Count == 0 ? 0 : 1;
    }

    private static async Task Shown(ServedPage served, string address, string[] opens)
    {
        var page = served.Page;
        await page.GotoAsync(new Uri(new Uri(page.Url), address).ToString());
        await page.Locator(".chart .picture").First.WaitForAsync(new() { Timeout = 240_000 });
        foreach (var fold in opens)
        {
            await page.Locator(fold).ClickAsync(new() { Timeout = 240_000 });
        }

        await page.WaitForTimeoutAsync(1500);
        await Assertions.Expect(page.GetByText("Coarse map.")).ToHaveCountAsync(0, new() { Timeout = 240_000 });
        await Assertions.Expect(page.GetByRole(AriaRole.Progressbar)).ToHaveCountAsync(0, new() { Timeout = 240_000 });
        await page.WaitForTimeoutAsync(500);
    }
}
