using Heaveline.BrowserTests;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(OneBrowser))]

namespace Heaveline.BrowserTests;

/// <summary>One real browser for all tests.</summary>
public sealed class OneBrowser : IAsyncLifetime
{
    private IPlaywright? playwright;
    private IBrowser? browser;

    /// <summary>The browser.</summary>
    public IBrowser Browser => browser!;

    public async ValueTask InitializeAsync()
    {
        // A machine of two cores that builds beside the tests needs more than the usual five seconds now and then; no test measures time.
        Assertions.SetDefaultExpectTimeout(30_000.0f);
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Environment.GetEnvironmentVariable("HEAVELINE_CHROMIUM") ?? "/usr/bin/chromium",
            Args =
            [
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
            ],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
    }
}
