using System.Diagnostics;
using Microsoft.Playwright;

namespace Heaveline.PageBench;

/// <summary>The real program on a copy of the demo garage, and its pass page in a real browser.</summary>
internal sealed class ServedPage : IAsyncDisposable
{
    private readonly string garage = Directory.CreateTempSubdirectory("heaveline-bench-").FullName;
    private readonly List<string> said = [];
    private IPlaywright? playwright;
    private IBrowser? browser;
    private Func<Task<IPage>> another = null!;

    /// <summary>The garage's folder.</summary>
    public string Garage => garage;

    /// <summary>The program.</summary>
    public Process Program { get; private set; } = null!;

    /// <summary>The page.</summary>
    public IPage Page { get; private set; } = null!;

    /// <summary>What the browser is.</summary>
    public string BrowserVersion => browser!.Version;

    /// <summary>What program and page have said of errors.</summary>
    public IReadOnlyList<string> Complaints
    {
        get
        {
            lock (said)
            {
                return [.. said];
            }
        }
    }

    /// <summary>Starts both and waits until the first picture stands.</summary>
    /// <param name="query">Query of the pass page's address.</param>
    public static async Task<ServedPage> Open(string query)
    {
        var served = new ServedPage();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage")))
        {
            File.Copy(file, Path.Combine(served.garage, Path.GetFileName(file)));
        }

        var address = await served.Start();
        served.playwright = await Playwright.CreateAsync();
        served.browser = await served.playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
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
                "--enable-precise-memory-info",
                "--js-flags=--expose-gc",
            ],
        });
        var context = await served.browser.NewContextAsync(
            new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 1280, Height = 900 }, ReducedMotion = ReducedMotion.Reduce });
        served.another = () => served.Tab(context, new Uri(address, "pass" + query));
        served.Page = await served.Another();
        return served;
    }

    /// <summary>The same page in another tab.</summary>
    public Task<IPage> Another() => another();

    private async Task<IPage> Tab(IBrowserContext context, Uri address)
    {
        var page = await context.NewPageAsync();
        page.Console += (_, message) => Hear(message.Type is "error" ? $"page: {message.Text}" : null);
        page.PageError += (_, error) => Hear($"page: {error}");
        await page.GotoAsync(address.ToString());
        // The page's policy forbids what would wait in the page: it is asked from here.
        for (var tries = 0;
            !await page.EvaluateAsync<bool>("() => (document.querySelector('[data-time]')?.textContent.length ?? 0) > 0");
            tries++)
        {
            await Task.Delay(50);
            if (tries > 600)
            {
                throw new TimeoutException("No picture stood after half a minute: " + string.Join('\n', Complaints));
            }
        }

        await page.EvaluateAsync(
            "() => { globalThis.frames_ = []; document.addEventListener('heaveline-frame', event => frames_.push(event.detail)); }");
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
        Program.Kill(entireProcessTree: true);
        await Program.WaitForExitAsync();
        Program.Dispose();
        Directory.Delete(garage, recursive: true);
    }

    private async Task<Uri> Start()
    {
        var path = Path.Combine(Checkout.Root, "src", "Heaveline.Cli", "bin", "Release", "net10.0", "Heaveline.Cli");
        Program = Process.Start(
            new ProcessStartInfo(path, ["serve", garage, "--port", "0"]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Program.ErrorDataReceived += (_, e) => Hear(e.Data);
        Program.BeginErrorReadLine();
        const string Mark = "The pages are at ";
        while (await Program.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.StartsWith(Mark, StringComparison.Ordinal))
            {
                return new Uri(line[Mark.Length..]);
            }
        }

        throw new InvalidOperationException("The program did not serve: " + string.Join('\n', Complaints));
    }

    private void Hear(string? line)
    {
        if (!string.IsNullOrWhiteSpace(line))
        {
            lock (said)
            {
                said.Add(line);
            }
        }
    }
}
