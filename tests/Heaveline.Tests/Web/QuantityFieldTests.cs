using Bunit;
using Heaveline.Tests.House;
using Heaveline.Web.Host;
using Heaveline.Web.Pages;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Heaveline.Tests.Web;

/// <summary>Whole quantities typed into fields, as the program answers them; no browser is needed to see what it refuses.</summary>
public sealed class QuantityFieldTests : BunitContext
{
    private const string Rate = "#f-front--spring--rate";
    private readonly string garage = Directory.CreateTempSubdirectory("heaveline-fields-").FullName;

    public QuantityFieldTests()
    {
        File.Copy(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"), Path.Combine(garage, "fern-saloon.yaml"));
        PageHost.AddPages(Services, new ServeOptions { Garage = garage });
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    [Theory]
    [InlineData("160 furlongs", "furlongs is not a unit known here", "160 furlongs")]
    [InlineData("20 kg", "kg", "20 kg")]
    // A quantity of the right kind is taken apart into number and unit, refused or not.
    [InlineData("-20 N/mm", "above 0", "-20")]
    [InlineData("1e308 N/mm", "", "1e308 N/mm")]
    public async Task A_whole_quantity_is_refused_beside_its_field_and_what_was_typed_stays(string typed, string words, string shown)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo("/car?car=fern-saloon&open=front%20front/spring");
        var page = Render<CarPage>();
        // Found and typed into in one turn: the page is shown anew meanwhile, when its numbers are there.
        await page.InvokeAsync(() => page.Find(Rate).Input(typed));
        page.WaitForState(() => page.FindAll(Rate + "-said").Count > 0, TimeSpan.FromSeconds(120));
        await page.InvokeAsync(() => page.Find(Rate).Change(typed));
        Assert.Contains(words, page.Find(Rate + "-said").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", page.Find(Rate + "-said").TextContent, StringComparison.Ordinal);
        Assert.Equal("true", page.Find(Rate).GetAttribute("aria-invalid"));
        page.WaitForAssertion(() => Assert.Equal(shown, page.Find(Rate).GetAttribute("value")), TimeSpan.FromSeconds(120));
        Assert.Contains("rate: 20.7 N/mm", File.ReadAllText(Path.Combine(garage, "fern-saloon.yaml")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("wheelbase", "2.7 kg")]
    [InlineData("front", "1500 m")]
    public void The_sheet_refuses_it_at_its_number(string key, string typed)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo("/sheet");
        var page = Render<SheetPage>();
        page.Find($"#sheet-{key}").Change(typed);
        Assert.NotEmpty(page.Find($"#sheet-{key}-said .refused-words").TextContent);
        Assert.Equal("true", page.Find($"#sheet-{key}").GetAttribute("aria-invalid"));
        Assert.True(page.Find("button.leading").HasAttribute("disabled"));
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
        {
            Directory.Delete(garage, recursive: true);
        }
    }
}
