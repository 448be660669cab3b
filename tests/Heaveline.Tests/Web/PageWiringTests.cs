using System.Reflection;
using Bunit;
using Heaveline.Tests.House;
using Heaveline.Web.Frame;
using Heaveline.Web.Host;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Template;
using Microsoft.Extensions.DependencyInjection;

namespace Heaveline.Tests.Web;

/// <summary>What a new page is easily forgotten in: its services, its place among the others, the routes of what can be taken away from it.</summary>
public sealed class PageWiringTests : BunitContext
{
    private const string Asked = "?car=fern-saloon&load=driver";

    // Garage, phone, story, the sheet of a new car and the road being made have nothing of their own to take away; a report must be made first, a
    // drive brought in.
    private static readonly string[] WithoutDownloads = ["/", "/report", "/phone", "/drive", "/sheet", "/story", "/road", "/choose", "/film"];

    private static readonly ServeOptions Options = new() { Garage = Path.Combine(Checkout.Root, "examples", "garage") };

    public PageWiringTests()
    {
        PageHost.AddPages(Services, Options);
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    public static TheoryData<Type> Pages =>
        [.. typeof(Sheet).Assembly.GetTypes().Where(t => t.GetCustomAttribute<RouteAttribute>() is { Template: not "/no-such-page" })];

    [Theory, MemberData(nameof(Pages))]
    public void A_page_stands_among_the_others(Type page) =>
        Assert.Contains(PathOf(page)[1..], Render<Sheet>().FindAll("header a").Select(a => a.GetAttribute("href")!.Split('?')[0]));

    [Theory, MemberData(nameof(Pages))]
    public void What_a_page_offers_to_take_away_is_served(Type page)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo(PathOf(page) + Asked + Besides(page));
        var shown = Render(builder =>
        {
            builder.OpenComponent(0, page);
            builder.CloseComponent();
        });
        if (!WithoutDownloads.Contains(PathOf(page)))
        {
            shown.WaitForState(() => Downloads().Length > 0, TimeSpan.FromSeconds(120));
        }

        Assert.All(Downloads(), path => Assert.True(Routes.Any(route => Meets(route, path)), $"Nothing serves {path}."));

        string[] Downloads() => [.. shown.FindAll("a[download]").Select(a => "/" + a.GetAttribute("href")!.Split('?')[0])];
    }

    private static IReadOnlyList<string> Routes { get; } =
    [
        .. ((IEndpointRouteBuilder)PageHost.Of(Options)).DataSources.SelectMany(s => s.Endpoints).OfType<RouteEndpoint>()
            .Select(e => e.RoutePattern.RawText!).Where(text => !text.Contains("{*", StringComparison.Ordinal)),
    ];

    // The saloon's front and rear are not joined: the bench has something to show once a spring is put on it.
    private static string Besides(Type page) => PathOf(page) == "/link" ? "&link=6" : "";

    private static string PathOf(Type page) => page.GetCustomAttribute<RouteAttribute>()!.Template;

    private static bool Meets(string route, string path) => new TemplateMatcher(TemplateParser.Parse(route), []).TryMatch(path, []);
}
