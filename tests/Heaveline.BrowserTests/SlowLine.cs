using Microsoft.Playwright;

namespace Heaveline.BrowserTests;

/// <summary>A machine so slow, or a program so far away, that what the browser says to it arrives late: each word in its order.</summary>
internal static class SlowLine
{
    /// <summary>Has everything that a page says to the program arrive late from now on, in every page that it opens.</summary>
    /// <param name="page">The page.</param>
    /// <param name="late">By how much.</param>
    public static Task Delay(this IPage page, TimeSpan late) => page.RouteWebSocketAsync("**/_blazor*", browser =>
    {
        var program = browser.ConnectToServer();
        var said = Task.CompletedTask;
        browser.OnMessage(word => said = Later(said, Task.Delay(late), () =>
        {
            if (word.Binary is { } bytes)
            {
                program.Send(bytes);
            }
            else
            {
                program.Send(word.Text!);
            }
        }));
    });

    private static async Task Later(Task former, Task pause, Action send)
    {
        await former;
        await pause;
        send();
    }
}
