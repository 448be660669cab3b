using System.Collections.Concurrent;

namespace Heaveline.BrowserTests;

/// <summary>The pages' own face and their grid where there is room.</summary>
[Collection(OneProgram.Name)]
public class WideScreenTests(Served served)
{
    [Fact]
    public async Task The_pages_are_set_in_their_own_compressed_face_and_fetch_none_from_elsewhere()
    {
        var asked = new ConcurrentQueue<string>();
        var page = await served.Open("/");
        page.Request += (_, request) => asked.Enqueue(request.Url);
        await page.GotoAsync("/rule?car=fern-saloon");
        var faces = await page.EvaluateAsync<string[]>(
            """
            async () => {
                for (const face of ["700", "italic"]) await document.fonts.load(`${face} 16px "Heaveline Sans"`);
                await document.fonts.ready;
                return [...document.fonts].map(face => face.status);
            }
            """);
        Assert.Equal(["loaded", "loaded", "loaded"], faces);
        Assert.Contains(asked, url => url.EndsWith(".woff2", StringComparison.Ordinal));
        var here = new Uri(page.Url).GetLeftPart(UriPartial.Authority);
        Assert.All(asked.Where(url => !url.StartsWith("data:", StringComparison.Ordinal)), url => Assert.StartsWith(here, url));
    }

    [Theory]
    [InlineData(1920)]
    [InlineData(2560)]
    public async Task Picture_words_and_sliders_stand_beside_each_other_on_a_wide_screen(int width)
    {
        var page = await served.Open("/pass?car=fern-saloon", width, 1080);

        // Read at once, when all of it is there: a page that comes to life draws itself anew.
        var seen = await page.WaitForFunctionAsync(
            "() => { const boxes = ['.scene-box', '.pass-article', '.sliders', '.film', '.strips'].map(one => {"
            + " const box = document.querySelector(one).getBoundingClientRect(); return [box.left, box.top, box.right, box.bottom]; });"
            + " return document.querySelector('.film [aria-current]') && boxes.every(box => box[2] > box[0]) && boxes; }");
        var boxes = (await seen.JsonValueAsync<double[][]>())!;
        var (picture, words, sliders, film, strips) = (boxes[0], boxes[1], boxes[2], boxes[3], boxes[4]);
        Assert.True(picture[2] <= words[0], $"{picture[2]} {words[0]}");
        Assert.True(words[2] <= sliders[0], $"{words[2]} {sliders[0]}");
        Assert.True(Math.Max(picture[1], words[1]) < 540.0, $"{picture[1]} {words[1]}");
        Assert.Equal(width, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));

        // No row of the first column is stretched by what stands in the second.
        Assert.InRange(film[1] - picture[3], 0.0, 30.0);
        Assert.InRange(strips[1] - film[3], 0.0, 120.0);
    }
}
