using System.Text;
using Heaveline.Files.Garages;
using Heaveline.Tests.Drives.Lanes;
using Microsoft.Playwright;

namespace Heaveline.PageBench;

/// <summary>The pictures of the pages that the README shows, taken anew.</summary>
internal static class Pictures
{
    private const string Laden = "car=fern-saloon&load=four%20up%20with%20luggage";

    private static readonly (string File, string Page, int Width, int Height, string Stands)[] All =
    [
        ("car.png", "/car?car=fern-saloon", 1280, 1100, ".numbers"),
        ("pass.png", $"/pass?{Laden}&road=village-hump&speed=40&front-spring=18.5&rear-spring=48", 1280, 1100, "[data-time]"),
        ("pass-on-a-phone.png", $"/pass?{Laden}&road=village-hump&speed=40", 390, 844, "[data-time]"),
        ("drive.png", "/drive?log=larch-lane-after", 1280, 1100, ".finding"),
        ("phone.png", "/phone", 390, 844, "#phone-start:enabled"),
        ("rule.png", "/rule?car=fern-saloon&load=driver", 1280, 1000, ".map .picture"),
        ("choose.png", "/choose?car=fern-saloon&budget=600", 1280, 1100, "#finding"),
    ];

    /// <summary>Takes them.</summary>
    /// <param name="folder">Where they go.</param>
    public static async Task<int> Take(string folder)
    {
        await using var served = await ServedPage.Open("?" + Laden);
        BringDrives(served.Garage);
        const string list = "village-autumn.yaml";
        File.Copy(Path.Combine(Checkout.Root, "examples", "parts", list), Path.Combine(served.Garage, list));
        foreach (var (file, address, width, height, stands) in All)
        {
            await served.Page.SetViewportSizeAsync(width, height);
            await served.Page.GotoAsync(new Uri(new Uri(served.Page.Url), address).ToString());
            await served.Page.Locator(stands).First.WaitForAsync(new() { Timeout = 120_000 });
            if (address.StartsWith("/drive", StringComparison.Ordinal))
            {
                await Assertions.Expect(served.Page.Locator("h1")).ToContainTextAsync(": the change", new() { Timeout = 240_000 });
                await Assertions.Expect(served.Page.Locator("section[aria-labelledby=car]")).ToBeVisibleAsync(new() { Timeout = 240_000 });
            }
            else
            {
                await Assertions.Expect(served.Page.GetByText("Coarse map.")).ToHaveCountAsync(0, new() { Timeout = 240_000 });
            }

            await served.Page.WaitForTimeoutAsync(3000);
            await served.Page.ScreenshotAsync(new() { Path = Path.Combine(folder, file) });
            Console.WriteLine($"{file}: {width} × {height}");
        }

        foreach (var complaint in served.Complaints)
        {
            Console.Error.WriteLine(complaint);
        }

        return served.Complaints.Count == 0 ? 0 : 1;
    }

    // Nine minutes over four bumps before a cure and after it, planted.
    internal static void BringDrives(string garage)
    {
        var drives = new Garage(garage).Drives;
        Note("Larch Lane, before", "larch-lane-before.csv", LarchLane.Before, "");
        Note("Larch Lane, after", "larch-lane-after.csv", LarchLane.After, "after: larch-lane-before\n");

        void Note(string name, string file, LarchLane lane, string more)
        {
            var drive = drives.Begin(name, file, Encoding.UTF8.GetBytes(LaneWriter.Whole(lane.Log))).Drive!;
            File.AppendAllText(
                Path.Combine(garage, DriveFolders.FileOf(drive)),
                $"car: ../../fern-saloon.yaml\nload: {LarchLane.Load}\nphone:\n  behind-front-axle: 1.45 m ± 5 cm\n{more}");
        }
    }
}
