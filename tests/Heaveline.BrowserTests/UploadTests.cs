using System.Text;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>Files brought in through the garage page, sound ones and those made to do harm.</summary>
[Collection(OneProgram.Name)]
public class UploadTests(Served served)
{
    [Fact]
    public async Task A_car_file_is_brought_in_and_its_page_opens()
    {
        var text = await File.ReadAllTextAsync(Path.Combine(served.Garage, "fern-saloon.yaml"), TestContext.Current.CancellationToken);
        var path = Path.Combine(served.Garage, "brought-in.yaml");
        try
        {
            var page = await Bring(
                "brought-in.yaml", Encoding.UTF8.GetBytes(text.Replace("car: Fern saloon", "car: Heath saloon", StringComparison.Ordinal)));
            await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/car[?]car=brought-in$"));
            await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Heath saloon");
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public async Task A_file_with_a_refused_value_is_brought_in_and_says_what_is_wrong()
    {
        var text = await File.ReadAllTextAsync(Path.Combine(served.Garage, "fern-saloon.yaml"), TestContext.Current.CancellationToken);
        var path = Path.Combine(served.Garage, "brought-in-wrong.yaml");
        try
        {
            var page = await Bring(
                "brought-in-wrong.yaml",
                Encoding.UTF8.GetBytes(text.Replace("wheelbase: 2.70 m ± 5 mm", "wheelbase: 27 m", StringComparison.Ordinal)));
            await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/car[?]car=brought-in-wrong$"));
            await Expect(page.Locator("#f-wheelbase-said")).ToContainTextAsync("Refused");
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public async Task A_file_that_has_no_page_of_its_own_is_said_to_be_there()
    {
        var path = Path.Combine(served.Garage, "brought-list.yaml");
        try
        {
            var page = await Bring("brought-list.yaml", await File.ReadAllBytesAsync(
                Path.Combine(Checkout.Root, "examples", "parts", "village-autumn.yaml"), TestContext.Current.CancellationToken));
            await Expect(page.Locator("#upload-remark")).ToHaveTextAsync("brought-list.yaml stands in the garage now.");
            await page.GotoAsync("/?brought=ghost.yaml");
            await page.Awake();
            await Expect(page.Locator("#upload-remark")).ToHaveTextAsync("");
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Theory]
    [InlineData("large.yaml", 300_000, "262144")]
    [InlineData("program.exe", 100, "must end in .yaml or .yml")]
    [InlineData("picture.yaml.png", 100, "must end in .yaml or .yml")]
    [InlineData("fern-saloon.yaml", 100, "already")]
    [InlineData("CON.yaml", 100, "device")]
    public async Task A_file_that_must_not_come_in_stays_out(string name, int size, string words)
    {
        var before = Names;
        var page = await Bring(name, Encoding.UTF8.GetBytes("car: New\n" + new string('#', size)));
        await Expect(page.Locator("#upload-remark")).ToContainTextAsync(words);
        Assert.Equal(before, Names);
    }

    [Fact]
    public async Task A_text_that_would_grow_without_end_stays_out()
    {
        var before = Names;
        var bomb = "car: &a0 x\n"
            + string.Concat(Enumerable.Range(1, 9).Select(n => $"k{n}: &a{n} [{string.Join(", ", Enumerable.Repeat($"*a{n - 1}", 10))}]\n"));
        var page = await Bring("bomb.yaml", Encoding.UTF8.GetBytes(bomb));
        await Expect(page.Locator("#upload-remark .refused")).ToContainTextAsync("Line 1");
        page = await Bring("bytes.yaml", [0x63, 0xC3, 0x28]);
        await Expect(page.Locator("#upload-remark .refused")).ToContainTextAsync("UTF-8");
        Assert.Equal(before, Names);
    }

    private string[] Names => [.. Directory.EnumerateFiles(served.Garage, "*", SearchOption.AllDirectories)
        .Where(f => Path.GetFileName(f) != ".heaveline-lock").Order(StringComparer.Ordinal)];

    private async Task<IPage> Bring(string name, byte[] bytes)
    {
        var page = await served.Open("/");
        await page.Awake();
        await page.Locator("#upload").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "text/plain", Buffer = bytes });
        return page;
    }
}
