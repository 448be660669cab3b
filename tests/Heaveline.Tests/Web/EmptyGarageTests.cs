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
        Assert.Equal("Look at an invented car", Render<GaragePage>().Find("#invented-heading").TextContent);
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

    [Fact]
    public void A_sheet_says_beside_its_line_what_cannot_be_and_overwrites_nothing()
    {
        Serve(null);
        File.WriteAllText(Path.Combine(folder, "garage.yaml"), "units: imperial\n");
        Services.GetRequiredService<NavigationManager>().NavigateTo("/sheet?wheelbase=many&rear=672%20kg&name=Lark");
        var page = Render<SheetPage>();
        Assert.Contains("\"many\" is not a number", page.Find("#sheet-wheelbase-said").TextContent, StringComparison.Ordinal);
        Assert.Equal("true", page.Find("#sheet-wheelbase").GetAttribute("aria-invalid"));
        Assert.All(page.FindAll(".garage-sheet > .choices button"), button => Assert.True(button.HasAttribute("disabled")));

        // A bare number is in the unit that the reader reads in, and a fraction is a decimal number.
        page.Find("#sheet-wheelbase").Change("107 7/8");
        page.Find("#sheet-front").Change("1693");
        Assert.Equal("107.875 in", page.Find("#sheet-wheelbase").GetAttribute("value"));
        Assert.Equal("1693 lb", page.Find("#sheet-front").GetAttribute("value"));
        Assert.Contains("3 measured, 8 estimated", page.Find("h1").TextContent, StringComparison.Ordinal);
        page.FindAll(".garage-sheet > .choices button")[1].Click();
        var text = File.ReadAllText(Path.Combine(folder, "lark.yaml"));
        Assert.Contains("wheelbase: 107.875 in\n", text, StringComparison.Ordinal);
        Assert.Contains("/car?car=lark", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal);
        page.Find("#sheet-front").Change("1700");
        page.FindAll(".garage-sheet > .choices button")[0].Click();
        Assert.Contains("lark.yaml already", page.Find(".garage-sheet .refused").TextContent, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(Path.Combine(folder, "lark.yaml")));
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        Directory.Delete(folder, recursive: true);
    }
}
