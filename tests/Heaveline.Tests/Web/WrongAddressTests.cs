using Bunit;
using Heaveline.Tests.House;
using Heaveline.Web.Frame;
using Heaveline.Web.Host;
using Heaveline.Web.Pages;
using Heaveline.Web.Pages.Passes;
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
    [InlineData("car=pebble-fluid-car&load=elephants", "#load-refused", "'elephants' is no load state of Pebble")]
    [InlineData("car=pebble-fluid-car&road=sine-pitch", "#road-refused", "has no single bump")]
    [InlineData("car=pebble-fluid-car&speed=900", "#speed-refused", "432 km/h")]
    [InlineData("car=fern-saloon&link=soft", "#link-refused", "is not a number")]
    [InlineData("car=fern-saloon&link=-3", "#link-refused", "it must be 0 N/mm or above")]
    [InlineData("car=fern-saloon&link=900000000", "#link-refused", "it must be between 0 and 400 N/mm")]
    [InlineData("car=fern-saloon&speed=-4", "#speed-refused", "432 km/h")]
    [InlineData("car=fern-saloon&link=6&link-damping=8 kg", "#link-damping-refused", "8 kg")]
    [InlineData("car=ghost", "#car-refused", "There is no car named ghost")]
    public void The_page_of_the_link_says_it_beside_its_control(string query, string place, string words) =>
        IsSaid<LinkPage>("/link?" + query, place, words, "#bench");

    [Theory]
    [InlineData("car=fern-saloon&speed=-4", 1)]
    [InlineData("car=fern-saloon&link=soft", 0)]
    [InlineData("car=fern-saloon", 1)]
    public void What_is_refused_in_one_box_is_not_told_at_the_car_and_takes_no_button_away(string query, int buttons)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo("/link?" + query);
        var page = Render<LinkPage>();
        Assert.Empty(page.FindAll("#car-refused"));
        Assert.Equal(buttons, page.FindAll("#try-link").Count);
        Assert.DoesNotContain("--link", page.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/pass?car=fern-saloon&road=nowhere", "There is no road named nowhere")]
    [InlineData("/pass?car=fern-saloon&load=nobody", "'nobody' is no load state of Fern saloon")]
    [InlineData("/pass?car=fern-saloon&speed=900", "between 1.8 and 432 km/h")]
    [InlineData("/pass?car=fern-saloon&speed=banana", "speed 'banana': \"banana\" is not a number.")]
    [InlineData("/pass?car=fern-saloon&front-spring=1e308", "Front spring is 1E+308 N/mm; it must be at most 1000000000 N/mm.")]
    [InlineData("/pass?car=fern-saloon&rear-damping=1e308", "Rear damping is 1E+308 × described; it must be at most 1000000000 × described.")]
    [InlineData("/pass?car=fern-saloon&rear-spring=soft", "rear-spring 'soft': \"soft\" is not a number.")]
    public void The_page_of_the_pass_answers_in_words(string path, string words)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo(path);
        Assert.Contains(words, Render<PassPage>().Find("section.refused").TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("zz", "“zz” is no setting with its value; there are at most 3 trials")]
    [InlineData("roof_3", "“roof” is nothing that is set on a car; there are")]
    [InlineData("rear-spring_50~~rear-damping_soft", "rear-damping: \"soft\" is not a number; there are")]
    [InlineData("described~~", "no trial follows its last ~~; there are")]
    [InlineData("described~~rear-spring_50~~rear-spring_60~~rear-spring_70", "it names 4 trials; there are")]
    public void Pins_that_cannot_be_read_are_told_with_their_reason(string pins, string said) => Assert.Contains(
        $"pins '{pins}': {said}", PassState.Of($"?car=fern-saloon&pins={pins}", "none").Objections.Single().Sentence, StringComparison.Ordinal);

    [Fact]
    public void Of_a_key_that_stands_twice_every_page_reads_the_last()
    {
        Assert.Equal(60.0, PassState.Of("?speed=40&speed=60", "none").KilometresPerHour);
        Services.GetRequiredService<NavigationManager>().NavigateTo("/rule?car=fern-saloon&road=nowhere&road=also-nowhere");
        Assert.Contains("There is no road named also-nowhere", Render<RulePage>().Find("#road-refused").TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("car", "?car=fern-saloon&sprigns=stiff", "This page reads nothing of “sprigns” in its address.")]
    [InlineData("report", "?car=fern-saloon&parts=why&rear-spring=soft", "rear-spring 'soft': \"soft\" is not a number.")]
    [InlineData("pass", "?car=fern-saloon&speed=40&speed=60", "“speed” stands 2 times in this address: the last is read.")]
    [InlineData("rule", "?car=fern-saloon&road=speed-table&road=village-hump", "“road” stands 2 times in this address: the last is read.")]
    [InlineData("sheet", "?name=Lark&name=Wren", "“name” stands 2 times in this address: the last is read.")]
    [InlineData("pass", "?car=a&car=b&car=c", "“car” stands 3 times in this address: the first is read, and the second as the car beside it.")]
    [InlineData("pass", "?car=fern%00saloon", "“car” of this address holds a character that is not seen: fern\\u0000saloon. No name or value")]
    [InlineData("sheet", "?name=a%E2%80%AEb", "“name” of this address holds a character that is not seen: a\\u202Eb. No name or value")]
    [InlineData("pass", "?a=1&b=2&c=3&d=4&e=5", "This page reads nothing of “a”, “b”, “c”, “d” and 1 more in its address.")]
    public void Every_page_says_what_of_its_address_nobody_reads(string page, string query, string said) =>
        Assert.StartsWith(said, Assert.Single(AddressWords.Of(PageEntry.All.Single(one => one.Path == page), query)), StringComparison.Ordinal);

    [Theory]
    [InlineData("car", "?car=fern-saloon&open=front")]
    [InlineData("car", "?car=fern-saloon&load=driver&road=village-hump&over=x&height=40&beside=fern-saloon-cured&luggage=20&springs=frequencies")]
    [InlineData("report", "?car=fern-saloon&drive=a&drive=b&forecast=yes&date=today")]
    [InlineData("rule", "?car=fern-saloon&rule=damping&marks=one&from=20&log=lane")]
    [InlineData("link", "?car=fern-saloon&road=speed-table&speed=30&link=6&link-damping=200&pins=rear-spring_50")]
    [InlineData("ride", "?car=fern-saloon&road=density&density=4&waviness=2&at=50")]
    [InlineData("sheet", "?name=Lark&wheelbase=2.74 m")]
    [InlineData("pass", "?car=fern-saloon&rear-spring=soft&speed=40")]
    [InlineData("pass", "?car=fern-saloon&car=drover-van")]
    [InlineData("report", "?car=fern-saloon&car=drover-van&car=sprig-kit-car&drive=a&drive=b&drive=c")]
    [InlineData("ride", "?car=fern-saloon&pins=rear-spring_50")]
    [InlineData("road", "?from=speed-table&called=Mill&kind=step&its-height=40 mm&its-tracks=left")]
    public void What_a_page_reads_or_refuses_itself_is_not_called_unread(string page, string query) =>
        Assert.Empty(AddressWords.Of(PageEntry.All.Single(one => one.Path == page), query));

    [Fact]
    public void What_a_page_takes_out_of_its_address_by_name_is_not_called_unread()
    {
        var taken =
            from type in typeof(PassPage).Assembly.GetTypes()
            from route in type.GetCustomAttributes(typeof(RouteAttribute), false).Cast<RouteAttribute>()
            from property in type.GetProperties()
            where property.IsDefined(typeof(SupplyParameterFromQueryAttribute), false)
            select (Path: route.Template.TrimStart('/'), property.Name);
        Assert.NotEmpty(taken);
        Assert.All(taken, one => Assert.Empty(AddressWords.Of(PageEntry.All.Single(page => page.Path == one.Path), $"?{one.Name}=front")));
    }

    [Theory]
    [InlineData("/pass?car=fern-saloon&load=empty", true)]
    [InlineData("/pass?car=fern-saloon&load=driver", false)]
    public void A_number_at_a_seat_says_when_nobody_is_aboard(string path, bool isSaid)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo(path);
        Assert.Equal(isSaid ? 1 : 0, Render<PassPage>().FindAll("#nobody").Count);
        Services.GetRequiredService<NavigationManager>().NavigateTo(path.Replace("/pass", "/ride", StringComparison.Ordinal));
        Assert.Equal(isSaid ? 1 : 0, Render<RidePage>().FindAll("#nobody").Count);
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
