using Bunit;
using Heaveline.Tests.House;
using Heaveline.Web.Host;
using Heaveline.Web.Pages;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Heaveline.Tests.Web;

/// <summary>The page of the film in each of its states; no browser is needed to see them.</summary>
public sealed class FilmPageTests : BunitContext
{
    private static readonly TimeSpan Long = TimeSpan.FromSeconds(120);
    private static readonly string Examples = Path.Combine(Checkout.Root, "examples");
    private readonly string folder = Directory.CreateTempSubdirectory("heaveline-films-").FullName;

    public FilmPageTests()
    {
        PageHost.AddPages(Services, new ServeOptions { Garage = folder, CameraMissing = "Put the camera part beside it." });
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    [Fact]
    public void A_garage_without_films_says_what_a_film_would_tell()
    {
        var page = Render<FilmPage>();
        Assert.Contains("There is no film in this garage yet", page.Find(".lede").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("select"));
    }

    [Fact]
    public void A_kept_track_is_read_without_a_camera_part_and_the_finding_stands_first()
    {
        Put("grey-saloon-25", "red-saloon-25");
        var page = At("film=red-saloon-25.yaml");
        page.WaitForAssertion(
            () => Assert.StartsWith("It heaves more than it pitches", page.Find(".finding").TextContent, StringComparison.Ordinal), Long);
        Assert.Equal("red saloon at school hump", page.Find("h1").TextContent);
        page.WaitForAssertion(() => Assert.Contains("Least pitch after the bump", page.Markup, StringComparison.Ordinal), Long);
        Assert.Equal("Seen at school hump", page.Find("#place").TextContent);
    }

    [Fact]
    public void A_car_file_stands_beside_the_film_and_what_is_wrong_stands_at_its_control()
    {
        Put("red-saloon-25");
        File.Copy(Path.Combine(Examples, "garage", "fern-saloon.yaml"), Path.Combine(folder, "fern-saloon.yaml"));
        var page = At("film=red-saloon-25.yaml&against=fern-saloon&hump=village-hump");
        page.WaitForAssertion(() => Assert.Contains("Beside Fern saloon", page.Markup, StringComparison.Ordinal), Long);
        Said("film=red-saloon-25.yaml&against=ghost", "#against-refused", "There is no car named ghost");
        Said("film=red-saloon-25.yaml&against=fern-saloon&aboard=elephants", "#aboard-refused", "is no load state");
        Said("film=ghost.yaml", "#film-refused", "ghost.yaml");
    }

    [Fact]
    public void What_is_written_down_goes_into_the_file_and_what_cannot_be_is_refused_beside_its_field()
    {
        Put("red-saloon-25");
        var page = At("film=red-saloon-25.yaml");
        page.Find("#film-wheelbase").Change("2.60 m ± 2 cm");
        page.Find("#film-place").Change("mill lane");
        var text = File.ReadAllText(Path.Combine(folder, "red-saloon-25.yaml"));
        Assert.Contains("wheelbase: 2.60 m ± 2 cm", text, StringComparison.Ordinal);
        Assert.Contains("place: mill lane", text, StringComparison.Ordinal);
        page.Find("#film-wheelbase").Change("27 m");
        Assert.NotEmpty(page.Find("#film-wheelbase-refused").TextContent);
        Assert.Equal(text, File.ReadAllText(Path.Combine(folder, "red-saloon-25.yaml")));
    }

    [Fact]
    public void A_film_that_no_file_describes_is_begun_by_its_wheelbase()
    {
        File.WriteAllBytes(Path.Combine(folder, "lane.mp4"), [1, 2, 3]);
        var page = At("");
        Assert.Equal("lane.mp4", page.Find("h1").TextContent);
        page.Find("#begin-wheelbase").Change("27");
        page.Find("form").Submit();
        Assert.NotEmpty(page.Find("#begin-refused").TextContent);
        Assert.False(File.Exists(Path.Combine(folder, "lane.yaml")));
        page.Find("#begin-wheelbase").Change("2.70 m ± 1 cm");
        page.Find("#begin-seen").Change("grey: estate");
        page.Find("form").Submit();
        var text = File.ReadAllText(Path.Combine(folder, "lane.yaml"));
        Assert.Contains("video: lane.mp4", text, StringComparison.Ordinal);
        Assert.EndsWith("/film?film=lane.yaml", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("video: ../lane.mp4", "lies outside the garage")]
    [InlineData("video: gone.mp4", "is not there")]
    [InlineData("video: notes.txt", "does not end in")]
    public void A_film_that_is_not_in_the_garage_is_not_looked_for(string line, string words)
    {
        File.WriteAllText(Path.Combine(folder, "one.yaml"), $"film: one\n{line}\nwheelbase: 2.7 m\n");
        Assert.Contains(words, Heaveline.Files.Garages.GarageFilm.Of(new(folder), "one.yaml").Film!.VideoProblem, StringComparison.Ordinal);
        Assert.Null(Heaveline.Files.Garages.GarageFilm.Of(new(folder), "one.yaml").Film!.Video);
    }

    [Fact]
    public void A_track_outside_the_garage_is_neither_read_nor_written()
    {
        File.WriteAllText(Path.Combine(folder, "one.yaml"), "film: one\ntrack: ../other.csv\nwheelbase: 2.7 m\n");
        var film = Heaveline.Files.Garages.GarageFilm.Of(new(folder), "one.yaml").Film!;
        Assert.False(film.HasTrack);
        Put("red-saloon-25");
        var track = Heaveline.Files.Films.TrackFile.Load(Path.Combine(folder, "red-saloon-25.csv")).Value!;
        Assert.Contains("name a file of the garage", film.Keep(track), StringComparison.Ordinal);
        // A table of somebody's own is not written over.
        File.WriteAllText(Path.Combine(folder, "two.csv"), "part,rate\n");
        File.WriteAllText(Path.Combine(folder, "two.yaml"), "film: two\nwheelbase: 2.7 m\n");
        Assert.Contains("is no track", Heaveline.Files.Garages.GarageFilm.Of(new(folder), "two.yaml").Film!.Keep(track), StringComparison.Ordinal);
        Assert.Equal("part,rate\n", File.ReadAllText(Path.Combine(folder, "two.csv")));
    }

    private void Said(string query, string where, string words) =>
        Assert.Contains(words, At(query).Find(where).TextContent, StringComparison.Ordinal);

    private IRenderedComponent<FilmPage> At(string query)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo($"/film?{query}");
        return Render<FilmPage>();
    }

    private void Put(params string[] names)
    {
        foreach (var file in names.SelectMany(name => new[] { name + ".yaml", name + ".csv" }))
        {
            File.Copy(Path.Combine(Examples, "films", file), Path.Combine(folder, file));
        }
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
