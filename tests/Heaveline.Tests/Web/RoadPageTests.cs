using Bunit;
using Heaveline.Files.Roads;
using Heaveline.Files;
using Heaveline.Quantities;
using Heaveline.Tests.Files;
using Heaveline.Web.Host;
using Heaveline.Web.Pages;
using Heaveline.Web.Pages.Roads;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Heaveline.Tests.Web;

/// <summary>A road made of its sizes, saved and opened again.</summary>
public sealed class RoadPageTests : BunitContext
{
    private readonly TemporaryFolder folder = new();

    public RoadPageTests()
    {
        folder.Write("fern.yaml", TextCar.Sound);
        PageHost.AddPages(Services, new ServeOptions { Garage = folder.Root });
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    /// <summary>Every kind that a road file knows.</summary>
    public static TheoryData<string> Kinds => [.. RoadFile.Kinds.Select(kind => kind.Name)];

    private NavigationManager Addresses => Services.GetRequiredService<NavigationManager>();

    [Fact]
    public void All_kinds_of_the_file_can_be_made() => Assert.Equal(
        ["round-top-hump", "flat-top-hump", "plank", "pothole", "step", "ramp", "half-sine", "versine", "sine"], Kinds.Select(kind => kind.Data));

    [Fact]
    public void Where_the_name_alone_is_missing_it_is_asked_for()
    {
        var page = Render<RoadPage>();
        page.Find("#road-kind").Change("step");
        Assert.Empty(page.FindAll("#lacks-name"));
        foreach (var field in RoadFile.Kinds.Single(one => one.Name == "step").Fields.Where(field => field.IsRequired))
        {
            page.Find($"#road-{field.Name}").Input(field.Example);
        }

        Assert.Contains("Give it a name", page.Find("#lacks-name").TextContent, StringComparison.Ordinal);
        Assert.True(page.FindAll(".choices button")[0].HasAttribute("disabled"));
        page.Find("#road-called").Input("Our step");
        Assert.Empty(page.FindAll("#lacks-name"));
        Assert.False(page.FindAll(".choices button")[0].HasAttribute("disabled"));
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Each_kind_is_drawn_from_its_sizes_saved_and_opened_again_with_the_same_ones(string kind)
    {
        var page = Render<RoadPage>();
        page.Find("#road-kind").Change(kind);
        page.Find("#road-called").Input("Our lane");
        Assert.Empty(page.FindAll(".road-drawing img"));
        var fields = RoadFile.Kinds.Single(one => one.Name == kind).Fields.Where(field => field.IsRequired).ToList();
        foreach (var field in fields)
        {
            page.Find($"#road-{field.Name}").Input(field.Example);
        }

        Assert.NotEmpty(page.FindAll(".road-drawing img"));
        Assert.Empty(page.FindAll(".refused, .refused-words"));
        page.Find(".road-sizes").Submit();
        Assert.Contains("Saved as our-lane.yaml.", page.Find("#road-said").TextContent, StringComparison.Ordinal);
        var text = File.ReadAllText(Path.Combine(folder.Root, "our-lane.yaml"));
        Assert.Equal("Our lane", RoadFile.Read(new SourceText("road.yaml", text)).Value!.Name);

        Addresses.NavigateTo("/road?file=our-lane.yaml");
        var again = Render<RoadPage>();
        Assert.Equal("Our lane", again.Find("h1").TextContent);
        Assert.Equal(fields.Select(field => field.Example), fields.Select(field => again.Find($"#road-{field.Name}").GetAttribute("value")));
        Assert.Contains("/pass?", "/" + again.Find("#drive-over").GetAttribute("href"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_typed_stands_in_the_address_and_is_there_when_the_page_is_loaded_again()
    {
        var page = Render<RoadPage>();
        page.Find("#road-height").Input("3 in");
        page.Find("#road-length").Input("12 1/2 ft");
        Assert.Contains("its-height=3%20in", Addresses.Uri, StringComparison.Ordinal);
        var again = Render<RoadPage>();
        Assert.Equal("3 in", again.Find("#road-height").GetAttribute("value"));
        Assert.Contains("76.2 mm high and 3.81 m long", again.Find(".lede").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_size_that_cannot_be_is_refused_beside_its_field_and_sizes_that_do_not_fit_below_them()
    {
        var page = Render<RoadPage>();
        page.Find("#road-height").Input("75");
        Assert.Contains("Give length: then it is drawn.", page.Find("#road-said").TextContent, StringComparison.Ordinal);
        page.Find("#road-length").Input("3.7 kg");
        Assert.Equal("true", page.Find("#road-length").GetAttribute("aria-invalid"));
        Assert.NotEmpty(page.Find("#road-length-said .refused-words").TextContent);
        page.Find("#road-length").Input("100 mm");
        Assert.Contains("at most a quarter of its length", page.Find("#road-said .refused").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".road-drawing img"));
    }

    [Fact]
    public void A_file_that_is_changed_keeps_its_comments_and_its_name()
    {
        folder.Write("hump.yaml", "# by the mill\nroad: our hump # so called\nround-top-hump: {height: 75 mm, length: 3.7 m}\n");
        Addresses.NavigateTo("/road?file=hump.yaml");
        var page = Render<RoadPage>();
        page.Find("#road-height").Input("100 mm");
        page.Find("#road-tracks").Change("left");
        page.Find(".road-sizes").Submit();
        Assert.Equal(
            "# by the mill\nroad: our hump # so called\nround-top-hump: {height: 100 mm, length: 3.7 m}\ntracks: left\n",
            File.ReadAllText(Path.Combine(folder.Root, "hump.yaml")));

        // And another kind in its place takes over the sizes that it has too.
        page.Find("#road-kind").Change("half-sine");
        page.Find(".road-sizes").Submit();
        var road = RoadFile.Load(Path.Combine(folder.Root, "hump.yaml")).Value!;
        Assert.Equal("half-sine bump, 100 mm high and 3.7 m long, left track", road.Caption);
    }

    [Fact]
    public void A_file_that_somebody_else_has_changed_is_not_saved_over_unseen()
    {
        folder.Write("hump.yaml", "road: our hump\nround-top-hump: {height: 75 mm, length: 3.7 m}\n");
        Addresses.NavigateTo("/road?file=hump.yaml");
        var page = Render<RoadPage>();
        page.Find("#road-height").Input("100 mm");
        folder.Write("hump.yaml", "road: our hump\nround-top-hump: {height: 75 mm, length: 5 m}\n");
        page.Find(".road-sizes").Submit();
        Assert.Contains("was changed by somebody else meanwhile", page.Find("#road-said .refused").TextContent, StringComparison.Ordinal);
        Assert.Equal(("100 mm", "5 m"), (page.Find("#road-height").GetAttribute("value"), page.Find("#road-length").GetAttribute("value")));
        page.Find(".road-sizes").Submit();
        Assert.Contains("{height: 100 mm, length: 5 m}", File.ReadAllText(Path.Combine(folder.Root, "hump.yaml")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("garage", "the garage remembers")]
    [InlineData("—", "a letter or a digit")]
    public void A_name_that_no_file_can_have_is_refused_beside_it(string name, string words)
    {
        Addresses.NavigateTo("/road?from=village-hump");
        var page = Render<RoadPage>();
        Assert.Equal("", page.Find("#road-called").GetAttribute("value"));
        Assert.NotEmpty(page.FindAll(".road-drawing img"));
        page.Find("#road-called").Input(name);
        Assert.Contains(words, page.Find("#road-called-said").TextContent, StringComparison.Ordinal);
        page.Find(".road-sizes").Submit();
        Assert.DoesNotContain(Directory.GetFiles(folder.Root), file => !file.EndsWith("fern.yaml", StringComparison.Ordinal));
    }

    [Fact]
    public void A_new_road_is_saved_and_driven_over_in_one_step_and_never_over_another_file()
    {
        Addresses.NavigateTo("/road?from=village-hump");
        var page = Render<RoadPage>(parameters => parameters.AddCascadingValue(new Heaveline.Web.Tuning.CurrentCar { Car = "fern" }));
        page.Find("#road-called").Input("Fern");
        page.FindAll(".road-sizes button").First(button => button.TextContent == "Save it and drive over it").Click();
        Assert.Contains("There is a file fern.yaml already", page.Find("#road-said .refused").TextContent, StringComparison.Ordinal);
        page.Find("#road-called").Input("Mill Lane");
        page.FindAll(".road-sizes button").First(button => button.TextContent == "Save it and drive over it").Click();
        Assert.EndsWith("/pass?car=fern&road=mill-lane.yaml", Addresses.Uri, StringComparison.Ordinal);
    }

    [Fact]
    public void An_address_that_names_what_there_is_not_is_answered_in_words()
    {
        Addresses.NavigateTo("/road?file=fern.yaml&kind=wall&its-height=banana");
        var page = Render<RoadPage>();
        Assert.Contains("There is no road fern.yaml in this garage.", page.Find("#road-open-refused").TextContent, StringComparison.Ordinal);
        Assert.Contains("is not a number", page.Find("#road-height-said").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_made_reads_as_what_was_typed()
    {
        var said = new Dictionary<string, string>
        {
            [RoadDraft.Named] = "Table: long", [RoadDraft.Kinds] = "flat-top-hump", ["its-height"] = "100", ["its-plateau"] = "2,5 m",
            ["its-ramp-up"] = "1 m", ["its-tracks"] = "right",
        };
        var draft = RoadDraft.Of(null, said, ReaderUnits.Metric, isNew: true);
        Assert.Equal(("Table: long", ""), (draft.Road!.Name, draft.Missing + draft.Elsewhere));
        Assert.Equal(0.1, draft.Road.Right.Height(2.0), 12);
        Assert.Equal(0.0, draft.Road.Left.Height(2.0), 12);
        Assert.Equal(4.5, draft.Road.Event!.Value.End, 12);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        folder.Dispose();
    }
}
