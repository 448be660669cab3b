using Bunit;
using Heaveline.Files.Films;
using Heaveline.Films;
using Heaveline.Quantities;
using Heaveline.Tests.House;
using Heaveline.Web.Host;
using Heaveline.Web.Pages;
using Heaveline.Web.Pages.Films;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Heaveline.Tests.Web;

/// <summary>A car marked and followed on the page of the film, by a camera part that gives a track that is known.</summary>
public sealed class FilmMarkingTests : BunitContext
{
    private static readonly TimeSpan Long = TimeSpan.FromSeconds(120);
    private static readonly double[] Marked = [1050.6, 579.1, 873.2, 577.9, 870.0, 520.0, 1055.0, 572.0];
    private readonly string folder = Directory.CreateTempSubdirectory("heaveline-films-").FullName;

    public FilmMarkingTests()
    {
        File.WriteAllBytes(Path.Combine(folder, "lane.mp4"), [1]);
        File.WriteAllText(Path.Combine(folder, "lane.yaml"), "film: lane\nvideo: lane.mp4\nwheelbase: 2.70 m\n");
    }

    [Fact]
    public void Without_the_camera_part_the_page_says_how_to_get_it()
    {
        var page = Page(null);
        Assert.Equal("Put the camera part beside it.", page.Find("#no-camera").TextContent);
        Assert.Empty(page.FindAll("#follow"));
    }

    [Fact]
    public void A_film_that_cannot_be_read_is_refused_in_the_words_of_the_camera_part()
    {
        var page = Page(new KnownCamera { Refuses = "lane.mp4 has no video track." });
        page.WaitForAssertion(
            () => Assert.Contains("has no video track", page.Find("#no-look.refused").TextContent, StringComparison.Ordinal), Long);
    }

    [Fact]
    public async Task A_car_is_followed_once_everything_is_marked_and_marks_and_track_are_kept()
    {
        var page = Page(new KnownCamera());
        page.WaitForState(() => page.FindAll("#follow").Count > 0, Long);
        Assert.True(page.Find("#follow").HasAttribute("disabled"));
        var section = page.FindComponent<MarkSection>();
        await section.InvokeAsync(() => section.Instance.Marked(1.698, null));
        Assert.True(page.Find("#follow").HasAttribute("disabled"));
        await section.InvokeAsync(() => section.Instance.Marked(1.698, Marked));
        Assert.False(page.Find("#follow").HasAttribute("disabled"));
        await page.Find("#follow").ClickAsync(new());
        page.WaitForAssertion(() => Assert.Contains("heaves", page.Find(".finding").TextContent, StringComparison.Ordinal), Long);
        Assert.NotNull(TrackFile.Load(Path.Combine(folder, "lane.csv")).Value);
        Assert.Equal(new PicturePoint(1050.6, 579.1), FilmFile.Load(Path.Combine(folder, "lane.yaml")).Value!.Marks!.Front);
    }

    [Fact]
    public async Task What_cannot_be_followed_says_why_and_leaves_no_track()
    {
        var page = Page(new KnownCamera { LosesIt = true });
        page.WaitForState(() => page.FindAll("#follow").Count > 0, Long);
        var section = page.FindComponent<MarkSection>();
        await section.InvokeAsync(() => section.Instance.Marked(1.698, Marked));
        await page.Find("#follow").ClickAsync(new());
        page.WaitForAssertion(() => Assert.Contains("never whole", page.Find("#not-followed").TextContent, StringComparison.Ordinal), Long);
        Assert.False(File.Exists(Path.Combine(folder, "lane.csv")));
    }

    [Fact]
    public async Task A_lamp_at_night_is_marked_followed_kept_and_tells_its_rhythm_and_what_it_does_not_tell()
    {
        File.WriteAllBytes(Path.Combine(folder, "night.mp4"), [1]);
        var page = Page(new KnownCamera(), "film=night.mp4&lamp=yes");
        page.WaitForState(() => page.FindAll("#follow").Count > 0, Long);
        Assert.True(page.Find("#follow").HasAttribute("disabled"));
        var section = page.FindComponent<LampSection>();
        await section.InvokeAsync(() => section.Instance.Marked(1.2, [812.0, 440.0]));
        await page.Find("#follow").ClickAsync(new());
        page.WaitForAssertion(() => Assert.StartsWith("The lamp flashes at", page.Find(".finding").TextContent, StringComparison.Ordinal), Long);
        Assert.Contains("whether it heaves are not told", page.Markup, StringComparison.Ordinal);
        Assert.NotNull(LampFile.Load(Path.Combine(folder, "night-lamp.csv")).Value);
        Assert.False(File.Exists(Path.Combine(folder, "night.yaml")));
        // Opened again it needs neither the camera part nor a word in the address.
        Services.GetRequiredService<NavigationManager>().NavigateTo("/film?film=night.mp4&left=0.5%20s");
        var again = Render<FilmPage>();
        again.WaitForAssertion(() => Assert.StartsWith("The lamp flashes at", again.Find(".finding").TextContent, StringComparison.Ordinal), Long);
        Services.GetRequiredService<NavigationManager>().NavigateTo("/film?film=night.mp4&left=soon");
        Assert.NotEmpty(Render<FilmPage>().Find("#left-refused").TextContent);
    }

    [Fact]
    public async Task A_lamp_is_not_kept_over_a_file_of_somebodys_own()
    {
        File.WriteAllBytes(Path.Combine(folder, "night.mp4"), [1]);
        File.WriteAllText(Path.Combine(folder, "night-lamp.csv"), "part,rate\n");
        var page = Page(new KnownCamera(), "film=night.mp4&lamp=yes");
        page.WaitForState(() => page.FindAll("#follow").Count > 0, Long);
        var section = page.FindComponent<LampSection>();
        await section.InvokeAsync(() => section.Instance.Marked(1.2, [812.0, 440.0]));
        await page.Find("#follow").ClickAsync(new());
        page.WaitForAssertion(
            () => Assert.Contains("is no lamp's brightness", page.Find("#not-followed").TextContent, StringComparison.Ordinal), Long);
        Assert.Equal("part,rate\n", File.ReadAllText(Path.Combine(folder, "night-lamp.csv")));
    }

    [Fact]
    public void A_film_that_cannot_be_read_is_refused_before_anything_is_written_down_about_it()
    {
        File.WriteAllBytes(Path.Combine(folder, "dull.mp4"), [1]);
        var page = Page(new KnownCamera { Refuses = "dull.mp4 has no video track." }, "film=dull.mp4");
        page.WaitForAssertion(
            () => Assert.Contains("has no video track", page.Find("#film-refused-look").TextContent, StringComparison.Ordinal), Long);
    }

    private IRenderedComponent<FilmPage> Page(IFilmCamera? camera, string query = "film=lane.yaml")
    {
        PageHost.AddPages(
            Services, new ServeOptions { Garage = folder, Camera = () => camera, CameraMissing = "Put the camera part beside it." });
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.GetRequiredService<NavigationManager>().NavigateTo($"/film?{query}");
        return Render<FilmPage>();
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private sealed class KnownCamera : IFilmCamera
    {
        public string? Refuses { get; init; }

        public bool LosesIt { get; init; }

        public FilmTrack Follow(string film, FilmMarks marks, IProgress<double>? progress = null, CancellationToken stop = default)
        {
            progress?.Report(0.5);
            return LosesIt
                ? throw new RefusedValueException("the film", "a car never whole in view", "one", "The car is never whole in the picture.")
                : TrackFile.Load(Path.Combine(Checkout.Root, "examples", "films", "red-saloon-25.csv")).Value!;
        }

        public FilmLook Look(string film) => Refuses is null ? new FilmLook(1920, 1080, 180, 3.0)
            : throw new RefusedValueException("the film", "refused", "a film", Refuses);

        public byte[] Frame(string film, double time, CancellationToken stop = default) => throw new NotSupportedException();

        public (PicturePoint Left, PicturePoint Right)? Hubs(string film, double time, CancellationToken stop = default) => null;

        public byte[] Still(string film, FilmMarks marks, CancellationToken stop = default) => throw new NotSupportedException();

        public LampTrack Brightness(
            string film, PicturePoint lamp, double time, IProgress<double>? progress = null, CancellationToken stop = default) =>
            LampFile.Load(Path.Combine(Checkout.Root, "examples", "films", "lamp.csv")).Value!;
    }
}
