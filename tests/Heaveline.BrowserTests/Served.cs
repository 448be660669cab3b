using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;

namespace Heaveline.BrowserTests;

/// <summary>The real program serving a fresh copy of the demo garage.</summary>
public sealed class Served(OneBrowser browsing) : IAsyncLifetime
{
    private Process? program;
    private Func<string> heard = () => "";
    private readonly List<(string? Test, IBrowserContext Context)> opened = [];

    /// <summary>The address that the program printed.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>The garage folder it serves; tests may write in it.</summary>
    public string Garage { get; } = Directory.CreateTempSubdirectory("heaveline-garage-").FullName;

    /// <summary>Puts the program to sleep, as a laptop's lid does, or wakes it.</summary>
    /// <param name="name">STOP or CONT.</param>
    public void Signal(string name)
    {
        using var kill = Process.Start("kill", [$"-{name}", program!.Id.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
        Assert.Equal(0, kill.ExitCode);
    }

    /// <summary>The browser.</summary>
    public IBrowser Browser => browsing.Browser;

    /// <summary>The program itself, for commands beside the pages: the one that was built together with these tests, wherever that was.</summary>
    public static string ProgramPath { get; } = Path.Combine(
        AppContext.BaseDirectory
            .Replace(Path.Combine("tests", "Heaveline.BrowserTests"), Path.Combine("src", "Heaveline.Cli"), StringComparison.Ordinal)
            .Replace("Heaveline.BrowserTests", "Heaveline.Cli", StringComparison.Ordinal),
        "Heaveline.Cli");

    /// <summary>Everything that the program wrote, both streams.</summary>
    public string Output => heard();

    public async ValueTask InitializeAsync()
    {
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage")))
        {
            File.Copy(file, Path.Combine(Garage, Path.GetFileName(file)));
        }

        (program, Address, heard) = await Start([Garage, "--port", "0"]);
    }

    /// <summary>Starts the program another time, with other arguments after 'serve'.</summary>
    public async Task<(Process Program, Uri Address, Func<string> Output)> Start(string[] arguments)
    {
        var said = new List<string>();
        string Output()
        {
            lock (said)
            {
                return string.Join('\n', said);
            }
        }

        var start = new ProcessStartInfo(ProgramPath, ["serve", .. arguments]) { RedirectStandardOutput = true, RedirectStandardError = true };
        var process = Process.Start(start)!;
        var address = new TaskCompletionSource<Uri>(TaskCreationOptions.RunContinuationsAsynchronously);
        void Hear(string? line)
        {
            if (line is null)
            {
                return;
            }

            lock (said)
            {
                said.Add(line);
            }

            if (line.StartsWith("The pages are at ", StringComparison.Ordinal))
            {
                address.TrySetResult(new Uri(line["The pages are at ".Length..]));
            }
        }

        process.OutputDataReceived += (_, e) => Hear(e.Data);
        process.ErrorDataReceived += (_, e) => Hear(e.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        var ended = process.WaitForExitAsync();
        if (await Task.WhenAny(address.Task, ended, Task.Delay(TimeSpan.FromSeconds(60))) != address.Task)
        {
            throw new InvalidOperationException($"The program did not serve. It said:\n{Output()}");
        }

        return (process, await address.Task, Output);
    }

    /// <summary>
    /// A page of its own, with nothing kept from others. It is closed when the next test opens one: a page left open goes on drawing.
    /// </summary>
    public async Task<IPage> Open(string path, int width = 1280, int height = 900, bool dark = false, bool still = true)
    {
        var test = TestContext.Current.Test?.UniqueID;
        await Close(former => former != test);
        var context = await Browser.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = Address.ToString(),
            ViewportSize = new ViewportSize { Width = width, Height = height },
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            ReducedMotion = still ? ReducedMotion.Reduce : ReducedMotion.NoPreference,
            AcceptDownloads = true,
        });
        opened.Add((test, context));
        var page = await context.NewPageAsync();
        await page.GotoAsync(path, new PageGotoOptions { WaitUntil = WaitUntilState.Load });
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        await Close(_ => true);
        if (program is not null)
        {
            program.Kill(entireProcessTree: true);
            await program.WaitForExitAsync();
            program.Dispose();
        }

        Directory.Delete(Garage, recursive: true);
    }

    private async Task Close(Predicate<string?> of)
    {
        foreach (var (_, context) in opened.Where(o => of(o.Test)))
        {
            await context.CloseAsync();
        }

        opened.RemoveAll(o => of(o.Test));
    }
}
