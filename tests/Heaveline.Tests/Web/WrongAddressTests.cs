using Bunit;
using Heaveline.Tests.House;
using Heaveline.Web.Host;
using Heaveline.Web.Pages;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Heaveline.Tests.Web;

/// <summary>Pages opened at an address that says something wrong; no browser is needed to see what they answer.</summary>
public sealed class WrongAddressTests : BunitContext
{
    public WrongAddressTests()
    {
        PageHost.AddPages(Services, new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    [Theory]
    [InlineData("car=fern-saloon&load=elephants", "#load-refused", "'elephants' is no load state of Fern saloon")]
    [InlineData("car=fern-saloon&road=sine-pitch", "#road-refused", "has no single bump")]
    [InlineData("car=fern-saloon&road=nowhere", "#road-refused", "There is no road named nowhere")]
    [InlineData("car=fern-saloon&rule=luck", "#rule-refused", "is no rule")]
    [InlineData("car=fern-saloon&measure=luck", "#measure-refused", "is no measure")]
    [InlineData("car=fern-saloon&from=fast", "#from-refused", "is not a number")]
    [InlineData("car=fern-saloon&from=90&to=40", "#to-refused", "must be slower than the fastest")]
    public void The_page_of_the_rule_says_it_beside_its_control(string query, string place, string words) =>
        IsSaid<RulePage>("/rule?" + query, place, words, ".map");

    [Theory]
    [InlineData("car=fern-saloon&beside=ghost", "#beside-refused", "There is no car named ghost")]
    [InlineData("car=fern-saloon&seat=roof", "#seat-refused", "'roof' is no seat of Fern saloon")]
    [InlineData("car=fern-saloon&road=class-Z", "#road-refused", "is no road class")]
    [InlineData("car=fern-saloon&road=nowhere", "#road-refused", "There is no road named nowhere")]
    [InlineData("car=fern-saloon&waviness=9", "#waviness-refused", "is no waviness between 0.5 and 5")]
    [InlineData("car=fern-saloon&road=density&density=-1", "#density-refused", "is no density")]
    [InlineData("car=fern-saloon&at=never", "#at-refused", "is not a number")]
    public void The_page_of_the_road_says_it_beside_its_control(string query, string place, string words) =>
        IsSaid<RidePage>("/ride?" + query, place, words, ".pickable");

    [Theory]
    [InlineData("/pass?car=fern-saloon&road=nowhere", "There is no road named nowhere")]
    [InlineData("/pass?car=fern-saloon&load=nobody", "'nobody' is no load state of Fern saloon")]
    [InlineData("/pass?car=fern-saloon&speed=900", "between 1.8 and 432 km/h")]
    [InlineData("/pass?car=fern-saloon&speed=banana", "speed 'banana': \"banana\" is not a number.")]
    [InlineData("/pass?car=fern-saloon&rear-spring=soft", "rear-spring 'soft': \"soft\" is not a number.")]
    public void The_page_of_the_pass_answers_in_words(string path, string words)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo(path);
        Assert.Contains(words, Render<PassPage>().Find("section.refused").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_of_the_drive_says_it_beside_its_control() =>
        IsSaid<DrivePage>("/drive?log=nowhere", "#log-refused", "There is no drive in this garage yet.", ".verdicts");

    private void IsSaid<TPage>(string path, string place, string words, string result)
        where TPage : IComponent
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo(path);
        var page = Render<TPage>();
        Assert.Contains(words, page.Find(place).TextContent, StringComparison.Ordinal);
        Assert.Equal("true", page.Find(place.Replace("-refused", "", StringComparison.Ordinal)).GetAttribute("aria-invalid"));
        Assert.Empty(page.FindAll(result));
    }
}
