using Bunit;
using Heaveline.Files.Cars;
using Heaveline.Tests.House;
using Heaveline.Web.Host;
using Heaveline.Web.Pages;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Heaveline.Tests.Web;

/// <summary>A garage without a car is a beginning.</summary>
public sealed class EmptyGarageTests : BunitContext
{
    private static readonly string Demo = Path.Combine(Checkout.Root, "examples", "garage");
    private readonly string folder = Directory.CreateTempSubdirectory("heaveline-empty-").FullName;

    private void Serve(string? invented)
    {
        PageHost.AddPages(Services, new ServeOptions { Garage = folder, Invented = invented });
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    [Fact]
    public void A_car_is_begun_by_its_name_alone_and_its_form_opens()
    {
        Serve(null);
        var page = Render<GaragePage>();
        Assert.Empty(page.FindAll(".invented"));
        page.Find("#begin-name").Change("Lark estate");
        page.Find(".begin form").Submit();
        Assert.Equal(CarFile.Template("Lark estate"), File.ReadAllText(Path.Combine(folder, "lark-estate.yaml")));
        Assert.Contains("/car?car=lark-estate&open=car", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal);

        // Nothing is written over, and the reason is told.
        page.Find("#begin-name").Change("Lark: estate!");
        page.Find(".begin form").Submit();
        Assert.Contains("lark-estate.yaml already", page.Find(".begin .refused").TextContent, StringComparison.Ordinal);
        page.Find("#begin-name").Change("—");
        page.Find(".begin form").Submit();
        Assert.Contains("a letter or a digit", page.Find(".begin .refused").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_just_begun_is_a_form_of_empty_fields_with_units()
    {
        Serve(null);
        File.WriteAllText(Path.Combine(folder, "lark.yaml"), CarFile.Template("Lark"));
        Services.GetRequiredService<NavigationManager>().NavigateTo("/car?car=lark&open=car%20weighing%20body%20front%20rear");
        var page = Render<CarPage>();
        Assert.Equal("lark.yaml, which is no car yet", page.Find("h1").TextContent);
        Assert.Equal("", page.Find("#f-wheelbase").GetAttribute("value") ?? "");
        Assert.NotEmpty(page.FindAll("input.digits"));
        Assert.DoesNotContain(page.FindAll("input"), input => input.GetAttribute("value") == CarFile.Blank);
    }

    [Fact]
    public void Invented_cars_are_offered_as_what_they_are_and_one_is_put_into_the_garage()
    {
        Serve(Demo);
        var page = Render<GaragePage>();
        Assert.All(page.FindAll(".invented li"), line => Assert.Contains("invented", line.TextContent, StringComparison.Ordinal));
        Assert.Contains(page.FindAll(".invented li"), line => line.TextContent.Contains("Fern saloon", StringComparison.Ordinal));
        page.FindAll(".invented button").First(button => button.GetAttribute("aria-label") == "Put it into this garage: Fern saloon").Click();
        Assert.Equal(
            File.ReadAllText(Path.Combine(Demo, "fern-saloon.yaml")), File.ReadAllText(Path.Combine(folder, "fern-saloon.yaml")));
        Assert.Contains("/pass?car=fern-saloon", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal);
        Assert.Empty(Render<GaragePage>().FindAll(".invented"));
    }

    [Fact]
    public void Every_page_leads_from_nothing_to_the_beginning()
    {
        Serve(null);
        Assert.Equal("", Render<PassPage>().Find(".empty a").GetAttribute("href"));
        Assert.Equal("", Render<CarPage>().Find(".empty a").GetAttribute("href"));
        Assert.Equal("", Render<ReportPage>().Find(".empty a").GetAttribute("href"));
        Assert.Contains("Begin your own car", Render<RulePage>().Markup, StringComparison.Ordinal);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        Directory.Delete(folder, recursive: true);
    }
}
