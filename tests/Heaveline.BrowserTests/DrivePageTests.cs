using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Heaveline.Files.Garages;
using Heaveline.Tests.Drives.Lanes;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>The page of the drive, with a drive of nine minutes of which everything is known.</summary>
[Collection(OneProgram.Name)]
public class DrivePageTests(Served served)
{
    private static readonly string Before = LaneWriter.Whole(LarchLane.Before.Log);

    private Garage Garage => new(served.Garage);

    [Fact]
    public async Task A_log_that_is_dropped_is_kept_as_it_is_and_its_page_says_what_it_is_good_for()
    {
        var page = await served.Open("/drive?log=nowhere");
        await page.Awake();
        await page.Locator("#upload-name").FillAsync("Dropped lane");
        await page.Locator("#upload").SetInputFilesAsync([.. LaneWriter.Apart(LarchLane.Before.Log).Select(file => new FilePayload
        {
            Name = file.Name, MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(file.Text),
        })]);
        await Expect(page).ToHaveURLAsync(new Regex("/drive[?]log=dropped-lane$"));
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Dropped lane");
        await Expect(page.Locator(".verdicts li")).ToHaveCountAsync(3);
        await Expect(page.Locator(".verdicts li").First).ToContainTextAsync("Single bumps: good.");
        await Expect(page.Locator(".chart .picture").First).ToBeVisibleAsync();
        Assert.Equal(
            LaneWriter.Apart(LarchLane.Before.Log).Select(f => f.Name).Order(StringComparer.Ordinal), Garage.Drives.LogFiles("dropped-lane"));
        foreach (var (name, text) in LaneWriter.Apart(LarchLane.Before.Log))
        {
            Assert.Equal(text, await File.ReadAllTextAsync(
                Path.Combine(served.Garage, "drives", "dropped-lane", name), TestContext.Current.CancellationToken));
        }

        await page.GetByText("How the files were read").ClickAsync();
        await Expect(page.Locator("#story").Locator("xpath=..").GetByText("Accelerometer.csv").First).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData("picture.png", 100, "the name must end in .csv")]
    [InlineData("CON.csv", 100, "device")]
    [InlineData("none.csv", 0, "The file is empty.")]
    public async Task A_file_that_is_no_log_stays_out_and_the_page_says_why(string name, int size, string words)
    {
        var before = Garage.Drives.Names;
        var page = await served.Open("/drive");
        await page.Awake();
        await page.Locator("#upload").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "text/csv", Buffer = new byte[size] });
        await Expect(page.Locator("#upload-remark .refused")).ToContainTextAsync(words);
        Assert.Equal(before, Garage.Drives.Names);
    }

    [Fact]
    public async Task A_log_that_cannot_be_read_is_said_on_its_page_and_stays_where_it_is()
    {
        var drive = Garage.Drives.Begin("Poem", "poem.csv", Encoding.UTF8.GetBytes("Roses are red.\n")).Drive!;
        var page = await served.Open($"/drive?log={drive}");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("poem.csv:");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Give the text (.csv) that a logger wrote");
        await Accessible.Check(page);
    }

    [Fact]
    public async Task What_is_written_down_goes_into_the_file_and_what_cannot_be_is_refused_beside_its_field()
    {
        var drive = Drive("Noted lane");
        var page = await served.Open($"/drive?log={drive}");
        await page.Awake();
        await page.GetByLabel("Phone behind the front axle").FillAsync("1.45 m ± 5 cm");
        await page.GetByLabel("Phone behind the front axle").BlurAsync();
        await Expect(page.Locator("#note-phone-behind-front-axle-refused")).ToHaveCountAsync(0);
        await page.GetByLabel("Front tyres").FillAsync("2.3");
        await page.GetByLabel("Front tyres").BlurAsync();
        await Expect(page.Locator("#note-pressures-front-refused")).ToContainTextAsync("unit");
        await page.GetByLabel("Car", new() { Exact = true }).SelectOptionAsync("fern-saloon");
        await page.GetByLabel("Load", new() { Exact = true }).SelectOptionAsync(LarchLane.Load);
        await Expect(page.GetByLabel("Load", new() { Exact = true })).ToHaveValueAsync(LarchLane.Load);
        await Expect(page.GetByLabel("Wheelbase")).ToHaveCountAsync(0);
        // A list shows what was chosen before the program has heard of it.
        await Until(() => Garage.Drive(DriveFolders.FileOf(drive)).Value!.Load is not null);
        var sheet = Garage.Drive(DriveFolders.FileOf(drive)).Value!;
        Assert.Equal((1.45, 0.05), (sheet.Phone!.BehindFrontAxle.Si, sheet.Phone.BehindFrontAxle.Doubt.HalfWidth));
        Assert.Equal(("../../fern-saloon.yaml", LarchLane.Load, null), (sheet.Car, sheet.Load, sheet.FrontPressure));
        await page.GetByLabel("Phone behind the front axle").FillAsync("");
        await page.GetByLabel("Phone behind the front axle").BlurAsync();
        await Expect(page.GetByLabel("Phone behind the front axle")).ToHaveValueAsync("");
        await page.GetByLabel("Car", new() { Exact = true }).SelectOptionAsync("");
        await Expect(page.GetByLabel("Wheelbase")).ToBeVisibleAsync();
        sheet = Garage.Drive(DriveFolders.FileOf(drive)).Value!;
        Assert.Equal((null, null, null), (sheet.Phone, sheet.Car, sheet.Load));
    }

    [Fact]
    public async Task A_press_leaves_a_bump_out_and_another_counts_it_again()
    {
        var drive = Drive("Pressed lane");
        var page = await served.Open($"/drive?log={drive}");
        var bump = page.Locator(".site .bump").First;
        await Expect(bump).ToContainTextAsync("counts; press to leave it out");
        await bump.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(bump).ToContainTextAsync("left out by hand");
        var rejected = Assert.Single(Garage.Drive(DriveFolders.FileOf(drive)).Value!.Rejected);
        Assert.InRange(rejected, 1.0, 600.0);
        using (var client = new HttpClient { BaseAddress = served.Address })
        {
            var csv = await client.GetStringAsync($"/download/drive.csv?log={drive}", TestContext.Current.CancellationToken);
            Assert.Contains("Rejected by hand", csv, StringComparison.Ordinal);
        }

        await bump.ClickAsync();
        await Expect(bump).ToContainTextAsync("counts; press to leave it out");
        Assert.Empty(Garage.Drive(DriveFolders.FileOf(drive)).Value!.Rejected);
    }

    [Fact]
    public async Task The_car_is_drawn_and_the_page_says_where_on_it_to_say_what_the_log_does_not()
    {
        var drive = Drive("Carded lane");
        var page = await served.Open($"/drive?log={drive}");
        await page.Awake();
        await Expect(page.Locator(".doubts").First).ToContainTextAsync("Write it down below, under \"Wheelbase\"");
        await Expect(page.Locator("h1")).ToContainTextAsync("the car itself wants its wheelbase");
        await page.GetByLabel("Wheelbase").FillAsync("2.70 m");
        await page.GetByLabel("Wheelbase").BlurAsync();
        // Until the car is fitted the page says so, and the wheelbase alone does not say which car it was.
        await Expect(page.Locator("#fitting, .drawn img").First).ToBeVisibleAsync();
        await Expect(page.Locator("#which-car")).ToContainTextAsync("Of this garage have it: Fern saloon");
        await Expect(page.Locator(".drawn img")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        Assert.True(await page.Locator(".drawn img").EvaluateAsync<int>("drawn => drawn.decode().then(() => drawn.naturalWidth)") > 300);
        await Expect(page.Locator("#fitting")).ToHaveCountAsync(0);
        await Accessible.Check(page);
        Assert.DoesNotContain("--", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_decision_of_the_reading_is_taken_otherwise_and_taken_back()
    {
        var drive = Drive("Overruled lane");
        var page = await served.Open($"/drive?log={drive}");
        await page.GetByText("How the files were read").ClickAsync();
        await page.GetByLabel("Take a decision otherwise").FillAsync("luck: good");
        await page.GetByLabel("Take a decision otherwise").BlurAsync();
        await Expect(page.Locator("#take-refused")).ToContainTextAsync("is nothing that can be taken otherwise");
        await page.GetByLabel("Take a decision otherwise").FillAsync("speed: none");
        await page.GetByLabel("Take a decision otherwise").BlurAsync();
        await Expect(page.GetByText("Taken otherwise: speed: none")).ToBeVisibleAsync();
        await Until(() => Garage.Drive(DriveFolders.FileOf(drive)).Value!.Taken.Length == 1);
        await page.GetByRole(AriaRole.Button, new() { Name = "As it was read" }).ClickAsync();
        await Expect(page.GetByText("Taken otherwise")).ToHaveCountAsync(0);
        Assert.Empty(Garage.Drive(DriveFolders.FileOf(drive)).Value!.Taken);
    }

    [Fact]
    public async Task A_site_is_named_and_a_bump_that_was_not_found_is_added()
    {
        var drive = Drive("Named lane");
        var page = await served.Open($"/drive?log={drive}");
        var name = page.GetByLabel("A name for this site").First;
        await Expect(name).ToBeVisibleAsync();
        await name.FillAsync("chapel hump");
        await name.BlurAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Chapel hump" })).ToBeVisibleAsync();
        Assert.All(Garage.Drive(DriveFolders.FileOf(drive)).Value!.Sites, site => Assert.Equal("chapel hump", site.Site));
        await page.GetByLabel("A bump that was not found").FillAsync("soon");
        await page.GetByLabel("A bump that was not found").BlurAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("is no instant of the log");
        await page.GetByLabel("A bump that was not found").FillAsync("75.5");
        await page.GetByLabel("A bump that was not found").BlurAsync();
        await Until(() => Garage.Drive(DriveFolders.FileOf(drive)).Value!.Added is [75.5]);
        Assert.Equal([75.5], Garage.Drive(DriveFolders.FileOf(drive)).Value!.Added);
    }

    [Fact]
    public async Task Two_drives_are_held_against_each_other_once_the_one_before_is_named()
    {
        var before = Drive("Cured lane, before");
        var after = Garage.Drives.Begin("Cured lane, after", "after.csv", Encoding.UTF8.GetBytes(LaneWriter.Whole(LarchLane.After.Log))).Drive!;
        var page = await served.Open($"/drive?log={after}");
        await page.Awake();
        await page.GetByLabel("The drive before the change").SelectOptionAsync(before);
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Held against the drive before" })).ToBeVisibleAsync();
        await Expect(page.Locator(".finding")).ToContainTextAsync("passes before");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Cured lane, after: the change worked");
        // Its sites stand in the order of the drive before, each with the name that it has there.
        var sites = await page.Locator(".site h3").AllInnerTextsAsync();
        int[] places = [.. sites.Where(name => !name.Contains("(not ", StringComparison.Ordinal))
            .Select(name => Regex.Match(name, "[(]site ([0-9]+) of the drive before|^Site ([0-9]+)"))
            .Select(match => int.Parse(match.Groups.Values.Last(group => group.Success).Value, CultureInfo.InvariantCulture))];
        Assert.True(places.Length > 2);
        Assert.Equal(places.Order(), places);
        await Accessible.Check(page);
        await Expect(page.Locator("#proof").Locator("xpath=..")).ToContainTextAsync("tick below what was the same");
        await page.GetByLabel("Temperature").CheckAsync();
        await Until(() => Garage.Drive(DriveFolders.FileOf(after)).Value!.Same is ["temperature"]);
        Assert.Equal(["temperature"], Garage.Drive(DriveFolders.FileOf(after)).Value!.Same);
        await Expect(page.Locator("#proof").Locator("xpath=..")).ToContainTextAsync("load, pressures, fuel, tyres, phone. Each can do");
        await page.GetByLabel("Temperature").UncheckAsync();
        await Until(() => Garage.Drive(DriveFolders.FileOf(after)).Value!.Same is []);
        Assert.Empty(Garage.Drive(DriveFolders.FileOf(after)).Value!.Same);
        using var client = new HttpClient { BaseAddress = served.Address };
        var csv = await client.GetStringAsync($"/download/drive-dots.csv?log={after}", TestContext.Current.CancellationToken);
        Assert.StartsWith("site,state,event", csv, StringComparison.Ordinal);
        using var alone = await client.GetAsync($"/download/drive-dots.csv?log={before}", TestContext.Current.CancellationToken);
        Assert.Equal(System.Net.HttpStatusCode.UnprocessableEntity, alone.StatusCode);
    }

    [Theory]
    [InlineData(390, false)]
    [InlineData(1280, true)]
    [InlineData(1920, false)]
    public async Task The_page_fits_and_is_for_everybody(int width, bool dark)
    {
        var page = await served.Open($"/drive?log={Drive("Wide lane")}", width, dark: dark);
        await Expect(page.Locator(".verdicts li")).ToHaveCountAsync(3);
        await Expect(page.Locator(".chart .picture").First).ToBeVisibleAsync();
        Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"));
        await Accessible.Check(page);
    }

    [Theory]
    [InlineData("svg", "image/svg+xml")]
    [InlineData("pdf", "application/pdf")]
    [InlineData("csv", "text/csv")]
    [InlineData("json", "application/json")]
    public async Task What_the_page_shows_can_be_taken_away(string ending, string type)
    {
        using var client = new HttpClient { BaseAddress = served.Address };
        using var answer = await client.GetAsync($"/download/drive.{ending}?log={Drive("Wide lane")}", TestContext.Current.CancellationToken);
        Assert.Equal(type, answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal($"wide-lane-drive.{ending}", answer.Content.Headers.ContentDisposition!.FileName);
        using var missing = await client.GetAsync($"/download/drive.{ending}?log=nowhere", TestContext.Current.CancellationToken);
        Assert.Equal(System.Net.HttpStatusCode.NotFound, missing.StatusCode);
        Assert.Contains(
            "There is no drive named nowhere",
            await missing.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    private static async Task Until(Func<bool> holds)
    {
        for (var until = Environment.TickCount64 + 30_000; !holds() && Environment.TickCount64 < until;)
        {
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }
    }

    // The same file under the same name is the same drive: made once for all that only look at it.
    private string Drive(string name) => Garage.Drives.Begin(name, "larch-lane-before.csv", Encoding.UTF8.GetBytes(Before)).Drive!;
}
