namespace Heaveline.BrowserTests;

/// <summary>The film of a pass as a browser plays it.</summary>
[Collection(OneProgram.Name)]
public class PassFilmTests(Served served)
{
    // How many pictures there are, how wide and high, how long each is shown, and three of them as they look.
    private const string Work = """
        async text => {
            const bytes = Uint8Array.from(atob(text), c => c.charCodeAt(0));
            const film = new ImageDecoder({ data: bytes, type: "image/webp" });
            await film.tracks.ready;
            await film.completed;
            const { frameCount, repetitionCount } = film.tracks.selectedTrack, canvas = document.createElement("canvas"), seen = [];
            for (const at of [0, 0.2, 0.5]) {
                const { image } = await film.decode({ frameIndex: Math.round(at * (frameCount - 1)) });
                [canvas.width, canvas.height] = [image.displayWidth, image.displayHeight];
                canvas.getContext("2d").drawImage(image, 0, 0);
                seen.push(canvas.toDataURL());
            }
            return { frameCount, endless: repetitionCount === Infinity, width: canvas.width, height: canvas.height, seen };
        }
        """;

    [Theory]
    [InlineData("car=fern-saloon&load=four%20up%20with%20luggage&road=village-hump")]
    [InlineData("car=plover-motorcycle&road=kerb-down")]
    public async Task A_browser_plays_it_over_and_over_and_its_pictures_move(string query)
    {
        using var client = new HttpClient { BaseAddress = served.Address };
        var address = new Uri($"download/pass-film.webp?{query}", UriKind.Relative);
        var bytes = await client.GetByteArrayAsync(address, TestContext.Current.CancellationToken);
        TestContext.Current.SendDiagnosticMessage($"{query}: {bytes.Length} B");
        var page = await served.Open("/");
        var film = (await page.EvaluateAsync(Work, Convert.ToBase64String(bytes)))!.Value;
        Assert.InRange(film.GetProperty("frameCount").GetInt32(), 60, 560);
        Assert.True(film.GetProperty("endless").GetBoolean());
        Assert.Equal(754, film.GetProperty("width").GetInt32());
        string[] seen = [.. film.GetProperty("seen").EnumerateArray().Select(one => one.GetString()!)];
        Assert.Equal(3, seen.Distinct().Count());
        // To be looked at by eye.
        if (Environment.GetEnvironmentVariable("HEAVELINE_PICTURES") is { Length: > 0 } folder)
        {
            foreach (var (one, i) in seen.Select((one, i) => (one, i)))
            {
                var picture = Convert.FromBase64String(one.Split(',')[1]);
                await File.WriteAllBytesAsync(Path.Combine(folder, $"film-{query[4..9]}-{i}.png"), picture, TestContext.Current.CancellationToken);
            }
        }
    }
}
