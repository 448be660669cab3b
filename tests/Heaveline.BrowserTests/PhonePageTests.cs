using System.Text;
using Heaveline.Drives;
using Heaveline.Files.Drives;
using Heaveline.Files.Garages;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>The page that records a drive, with the sensors that the browser lets a test move.</summary>
[Collection(AnotherProgram.Name)]
public class PhonePageTests(Served served)
{
    private static readonly string[] Sensors = ["accelerometer", "linear-acceleration", "gyroscope"];

    [Fact]
    public async Task A_drive_is_recorded_with_its_own_instants_and_arrives_in_the_garage()
    {
        var phone = await Phone.Of(served);
        await phone.Page.GetByLabel("What the drive is called").FillAsync("Chapel lane, before");
        await phone.Start();
        await phone.Move(20);
        await phone.At(8.25);
        await phone.Move(100);
        await Expect(phone.Page.Locator("#phone-turn")).ToHaveTextAsync("yes");
        await Expect(phone.Page.Locator("#phone-rate")).ToContainTextAsync("a second, steps even to");
        await Expect(phone.Page.Locator("#phone-speed")).ToHaveTextAsync("30 km/h");
        await Expect(phone.Page.Locator("#phone-remarks [data-about=turn]")).ToHaveCountAsync(0);
        await Accessible.Check(phone.Page);
        await phone.Stop();
        var link = phone.Page.GetByRole(AriaRole.Link, new() { Name = "Chapel lane, before: read it" });
        await Expect(link).ToBeVisibleAsync();
        await Expect(phone.Page.Locator("#phone-kept")).ToBeHiddenAsync();
        var drive = (await link.GetAttributeAsync("href"))!.Split('=')[^1];
        var drives = new Garage(served.Garage).Drives;
        Assert.Contains(drive, drives.Names);
        var file = Path.Combine(served.Garage, "drives", drive, Assert.Single(drives.LogFiles(drive)));
        var lines = await File.ReadAllLinesAsync(file, TestContext.Current.CancellationToken);
        Assert.Equal(
            "time (s),acceleration x (m/s²),acceleration y (m/s²),acceleration z (m/s²),"
            + "rotation rate x (°/s),rotation rate y (°/s),rotation rate z (°/s),"
            + "speed (m/s),latitude (°),longitude (°),accuracy (m)",
            lines[1]);
        // Turned by 0.01, 0.02 and 0.03 rad/s about x, y and z; this browser rounds to 0.1 °/s.
        var row = lines.Select(l => l.Split(',')).First(c => c.Length == 11 && c[4] == "0.6");
        Assert.Equal(("0.6", "1.1", "1.7", "", ""), (row[4], row[5], row[6], row[7], row[8]));
        Assert.Contains(lines, l => l.EndsWith(",,,,,,,8.25,10,20,5", StringComparison.Ordinal));
        // The fix from before the start is an old one.
        Assert.DoesNotContain(lines, l => l.Contains(",7,10,20", StringComparison.Ordinal));
        Assert.Equal("Chapel lane, before", new Garage(served.Garage).Drive(DriveFolders.FileOf(drive)).Value!.Name);
    }

    [Fact]
    public async Task Without_the_tick_no_file_shows_where_it_was_driven()
    {
        var phone = await Phone.Of(served);
        await phone.Page.GetByLabel("What the drive is called").FillAsync("Nowhere lane");
        await phone.Page.GetByLabel("Keep where I drive").UncheckAsync();
        await phone.Start();
        await phone.Move(20);
        await phone.At(8.25);
        await phone.Move(20);
        await Expect(phone.Page.Locator("#phone-speed")).ToHaveTextAsync("30 km/h");
        await phone.Stop();
        var link = phone.Page.GetByRole(AriaRole.Link, new() { Name = "Nowhere lane: read it" });
        await Expect(link).ToBeVisibleAsync();
        var drive = (await link.GetAttributeAsync("href"))!.Split('=')[^1];
        var file = Path.Combine(served.Garage, "drives", drive, Assert.Single(new Garage(served.Garage).Drives.LogFiles(drive)));
        var text = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        Assert.Contains(",8.25\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("itude", text, StringComparison.Ordinal);
        Assert.DoesNotContain(",10,20", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_recorded_out_of_reach_is_kept_over_a_reload_and_sent_when_the_program_is_back()
    {
        var phone = await Phone.Of(served);
        await phone.Page.GetByLabel("What the drive is called").FillAsync("Far lane");
        await phone.Page.Context.SetOfflineAsync(true);
        await phone.Start();
        await phone.Move(40);
        await phone.Stop();
        await Expect(phone.Page.Locator("#phone-drives")).ToContainTextAsync("The program cannot be reached. It is kept here");
        Assert.DoesNotContain("far-lane", new Garage(served.Garage).Drives.Names);
        var saved = await phone.Page.RunAndWaitForDownloadAsync(
            () => phone.Page.GetByRole(AriaRole.Button, new() { Name = "Save it as a file" }).ClickAsync());
        Assert.Matches(@"^phone-\d{8}-\d{6}\.csv$", saved.SuggestedFilename);
        // Another page of the same browser, once the program answers again: it sends what it finds.
        var later = await phone.Page.Context.NewPageAsync();
        await phone.Page.CloseAsync();
        // Closed first: a page that is still open sends by itself.
        await later.Context.SetOfflineAsync(false);
        await later.GotoAsync("/phone");
        await Expect(later.GetByRole(AriaRole.Link, new() { Name = "Far lane: read it" })).ToBeVisibleAsync();
        await Expect(later.Locator("#phone-kept")).ToBeHiddenAsync();
        Assert.Contains("far-lane", new Garage(served.Garage).Drives.Names);
        Assert.Equal(
            await File.ReadAllBytesAsync(await saved.PathAsync(), TestContext.Current.CancellationToken),
            await File.ReadAllBytesAsync(
                Path.Combine(served.Garage, "drives", "far-lane", saved.SuggestedFilename), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task What_the_phone_does_not_give_is_said()
    {
        var phone = await Phone.Of(served, ["accelerometer", "linear-acceleration"], geolocation: false);
        await phone.Start();
        await phone.Move(60, turns: false);
        await Expect(phone.Page.Locator("#phone-turn")).ToHaveTextAsync("none");
        await Expect(phone.Page.Locator("[data-about=turn]")).ToContainTextAsync("No turn rate: heave alone is seen");
        await Expect(phone.Page.Locator("[data-about=speed]")).ToContainTextAsync("The position was not allowed, so there is no speed");
        await phone.Stop();
    }

    [Fact]
    public async Task A_phone_that_is_not_allowed_to_give_its_motion_records_nothing_and_says_so()
    {
        var phone = await Phone.Of(served, permitted: false);
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Start recording" }).ClickAsync();
        await Expect(phone.Page.Locator("#phone-state")).ToContainTextAsync("was not allowed to give its motion");
        await Expect(phone.Page.GetByRole(AriaRole.Button, new() { Name = "Start recording" })).ToBeEnabledAsync();
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    [InlineData(1920)]
    public async Task The_page_fits_and_is_for_everybody(int width)
    {
        foreach (var dark in new[] { false, true })
        {
            var page = await served.Open("/phone", width, dark: dark);
            await Expect(page.Locator("#phone-state")).ToHaveTextAsync("Ready. Nothing is recorded yet.");
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"));
            await Accessible.Check(page);
        }
    }

    [Fact]
    public async Task The_text_that_the_page_writes_is_read_as_the_drive_that_it_is()
    {
        var page = await served.Open("/phone");
        // A minute of a level phone at 60 samples a second: gravity, a swing of pitch at 1.3 Hz, speed once a
        // second; instants of the page's own clock.
        var text = await page.EvaluateAsync<string>(
            """
            async () => {
                const log = await import("/_content/Heaveline.Web/phonelog.js");
                const rows = [], fixes = [];
                for (let k = 0; k < 3600; k++) {
                    const t = 1234.5 + k / 60 + 0.0004 * Math.sin(k);
                    const at = t - 1234.5;
                    rows.push(t, 0.5 * Math.sin(0.6 * at), 0.1, 9.80665 + Math.sin(2 * Math.PI * 1.3 * at), NaN, NaN, NaN,
                        0.1 * Math.sin(at), 5 * Math.cos(2 * Math.PI * 1.3 * at), -0.2);
                    if (k % 60 === 30) fixes.push([t - 0.25, 8 + Math.sin(0.6 * at), 0.5 + 1e-5 * k, -30, 4.5]);
                }
                const parts = [{ part: 0, motion: Float64Array.from(rows.slice(0, 12000)), fixes: fixes.slice(0, 20) },
                    { part: 1, motion: Float64Array.from(rows.slice(12000)), fixes: fixes.slice(20) }];
                return log.text({ begun: Date.UTC(2031, 4, 7) }, parts);
            }
            """);
        var reading = LogFile.Read([("phone.csv", Encoding.UTF8.GetBytes(text))], TestContext.Current.CancellationToken);
        Assert.Empty(reading.Refusals);
        var log = reading.Log!;
        Assert.DoesNotContain(log.Story, line => line.IsDoubtful);
        Assert.Equal(3600, log.Of(SensorKind.Acceleration)!.Times.Length);
        Assert.Equal("°/s", log.Of(SensorKind.TurnRate)!.UnitTaken);
        Assert.Equal(60, log.Of(SensorKind.Speed)!.Times.Length);
        Assert.Equal((60, 4.5), (log.Of(SensorKind.Position)!.Times.Length, log.Of(SensorKind.Position)!.Values[2][7]));
        Assert.Equal(log.Of(SensorKind.Speed)!.Times, log.Of(SensorKind.Position)!.Times);
        var (force, speed) = (log.Of(SensorKind.Acceleration)!, log.Of(SensorKind.Speed)!);
        // Every sensor keeps its own instants: the first fix came 0.25 s before the 31st sample.
        Assert.Equal(force.Times[30] - 0.25, speed.Times[0], 4);
        Assert.Equal(9.80665 + Math.Sin(2.0 * Math.PI * 1.3 * (0.5 + (0.0004 * Math.Sin(30.0)))), force.Values[2][30], 4);
        Assert.Equal(60.0, Drive.Of(log, TestContext.Current.CancellationToken).Clock.Rate, 0.2);
    }

    /// <summary>A browser whose sensors a test moves.</summary>
    private sealed class Phone(IPage page, ICDPSession session)
    {
        public IPage Page => page;

        public static async Task<Phone> Of(Served served, string[]? sensors = null, bool geolocation = true, bool permitted = true)
        {
            var page = await served.Open("/phone", 390, 844);
            if (permitted)
            {
                await page.Context.GrantPermissionsAsync(["accelerometer", "gyroscope", .. geolocation ? ["geolocation"] : Array.Empty<string>()]);
            }
            else
            {
                // What a browser answers where the person says no; its own default differs from one to the next.
                await page.EvaluateAsync("() => { DeviceMotionEvent.requestPermission = async () => 'denied'; }");
            }

            var session = await page.Context.NewCDPSessionAsync(page);
            foreach (var type in Sensors)
            {
                await session.SendAsync("Emulation.setSensorOverrideEnabled", new()
                {
                    ["enabled"] = true,
                    ["type"] = type,
                    ["metadata"] = new Dictionary<string, object>
                    {
                        ["available"] = (sensors ?? Sensors).Contains(type), ["minimumFrequency"] = 1, ["maximumFrequency"] = 60,
                    },
                });
            }

            var phone = new Phone(page, session);
            await phone.At(7.0);
            await Expect(page.Locator("#phone-state")).ToHaveTextAsync("Ready. Nothing is recorded yet.");
            return phone;
        }

        public async Task Start()
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Start recording" }).ClickAsync();
            await Expect(page.Locator("#phone-state")).ToContainTextAsync("Recording.");
        }

        /// <summary>A fix of the satellites with a speed, m/s.</summary>
        public Task At(double speed) => session.SendAsync("Emulation.setGeolocationOverride", new()
        {
            ["latitude"] = 10, ["longitude"] = 20, ["accuracy"] = 5, ["speed"] = speed,
        });

        public async Task Stop() => await page.GetByRole(AriaRole.Button, new() { Name = "Stop and send" }).ClickAsync();

        public async Task Move(int times, bool turns = true)
        {
            for (var n = 0; n < times; n++)
            {
                await Read("accelerometer", 0.1, 0.2, 9.7 + Math.Sin(n));
                await Read("linear-acceleration", 0.1, 0.2, Math.Sin(n));
                if (turns)
                {
                    await Read("gyroscope", 0.01, 0.02, 0.03);
                }

                await page.WaitForTimeoutAsync(20.0f);
            }
        }

        private Task Read(string type, double x, double y, double z) => session.SendAsync("Emulation.setSensorOverrideReadings", new()
        {
            ["type"] = type,
            ["reading"] = new Dictionary<string, object> { ["xyz"] = new Dictionary<string, object> { ["x"] = x, ["y"] = y, ["z"] = z } },
        });
    }
}
