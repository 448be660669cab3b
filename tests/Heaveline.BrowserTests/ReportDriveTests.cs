using System.Text;
using System.Text.RegularExpressions;
using Heaveline.Files.Drives;
using Heaveline.Files.Garages;
using Heaveline.Tests.Drives.Lanes;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>Drives of the garage on the page of the report.</summary>
[Collection(AnotherProgram.Name)]
public class ReportDriveTests(Served served)
{
    [Fact]
    public async Task A_drive_and_the_one_before_the_change_are_chosen_from_lists_and_their_parts_come_with_them()
    {
        var drives = new Garage(served.Garage).Drives;
        var before = drives.Begin("Reported before", "log.csv", Encoding.UTF8.GetBytes(LaneWriter.Whole(LarchLane.Before.Log))).Drive!;
        var after = drives.Begin("Reported after", "log.csv", Encoding.UTF8.GetBytes(LaneWriter.Whole(LarchLane.After.Log))).Drive!;
        var page = await ReportPageTests.Ready(served, "/report?car=fern-saloon&parts=cost&date=");
        await Expect(page.Locator("#part-drive")).ToBeDisabledAsync();
        await page.Locator("#drive-1").SelectOptionAsync(before);
        await Expect(page.Locator("#part-drive")).ToBeCheckedAsync();
        await Expect(page.Locator("#part-prove")).ToBeDisabledAsync();
        await page.Locator("#drive-2").SelectOptionAsync(after);
        await Expect(page.Locator("#part-prove")).ToBeCheckedAsync();
        await Expect(page).ToHaveURLAsync(new Regex($"drive={before}&drive={after}&parts=cost%2Cdrive%2Cprove"));
        await page.Locator("#part-drive").UncheckAsync();
        await page.Locator("#part-cost").UncheckAsync();
        await Accessible.Check(page);
        await ReportPageTests.Make(page);
        await Expect(page.FrameLocator("iframe.preview").GetByRole(AriaRole.Heading, new() { Level = 2 }).First)
            .ToHaveTextAsync("Before and after: Reported before, then Reported after");
        await Expect(page.Locator("#line-html")).ToContainTextAsync($"--drive drives/{before} --drive drives/{after} --parts prove");

        // What is written down says the same with one choice.
        await File.AppendAllTextAsync(
            Path.Combine(served.Garage, DriveFolders.Folder, after, DriveFile.FileName),
            $"\nafter: {before}\n",
            TestContext.Current.CancellationToken);
        page = await ReportPageTests.Ready(served, $"/report?car=fern-saloon&drive={after}&parts=prove&date=");
        await Expect(page.GetByText("It follows on Reported before")).ToBeVisibleAsync();
        await Expect(page.Locator("#make")).ToBeEnabledAsync();
    }
}
