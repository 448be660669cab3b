using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>The pages' own face and their grid where there is room.</summary>
[Collection(OneProgram.Name)]
public class WideScreenTests(Served served)
{
    [Fact]
    public async Task The_pages_are_set_in_their_own_compressed_face_and_fetch_none_from_elsewhere()
    {
        var asked = new List<string>();
        var page = await served.Open("/");
        page.Request += (_, request) => asked.Add(request.Url);
        await page.GotoAsync("/rule?car=fern-saloon");
        var faces = await page.EvaluateAsync<string[]>(
            "async () => {"
            + " for (const face of ['700', 'italic']) await document.fonts.load(`${face} 16px 'Heaveline Sans'`);"
            + " await document.fonts.ready; return [...document.fonts].map(face => face.status); }");
        Assert.Equal(["loaded", "loaded", "loaded"], faces);
        Assert.Contains(asked, url => url.EndsWith(".woff2", StringComparison.Ordinal));
        Assert.All(asked.Where(url => !url.StartsWith("data:", StringComparison.Ordinal)), url => Assert.StartsWith(new Uri(page.Url).GetLeftPart(UriPartial.Authority), url));
    }

    [Theory]
    [InlineData(1920)]
    [InlineData(2560)]
    public async Task Picture_words_and_sliders_stand_beside_each_other_on_a_wide_screen(int width)
    {
        var page = await served.Open("/pass?car=fern-saloon", width, 1080);
        await Expect(page.Locator("#verdict")).ToBeVisibleAsync();
        await Expect(page.Locator("[data-scene]")).ToBeVisibleAsync();
        await Expect(page.Locator(".film button").First).ToBeVisibleAsync();
        var (picture, words, sliders) = (await Box("[data-scene]"), await Box(".pass-article"), await Box(".sliders"));
        Assert.True(picture.X + picture.Width <= words.X, $"{picture.X + picture.Width} {words.X}");
        Assert.True(words.X + words.Width <= sliders.X, $"{words.X + words.Width} {sliders.X}");
        Assert.True(Math.Max(picture.Y, words.Y) < 540.0, $"{picture.Y} {words.Y}");
        Assert.Equal(width, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));

        // No row of the first column is stretched by what stands in the second.
        var (film, strips) = (await Box(".film"), await Box(".strips"));
        Assert.True(film.Y - (picture.Y + picture.Height) < 30.0, $"{film.Y} {picture.Y + picture.Height}");
        Assert.True(strips.Y - (film.Y + film.Height) < 120.0, $"{strips.Y} {film.Y + film.Height}");

        async Task<LocatorBoundingBoxResult> Box(string what)
        {
            await Expect(page.Locator(what).First).ToBeVisibleAsync();
            return (await page.Locator(what).First.BoundingBoxAsync())!;
        }
    }
}
