using System.Text;
using Bunit;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Web.Charts;
using Heaveline.Web.Host;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

/// <summary>Figures shown in a page as pictures.</summary>
public sealed class DrawnTests : BunitContext
{
    public DrawnTests() => PageHost.AddPages(Services, new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });

    [Fact]
    public void Letters_of_a_picture_are_outlines_since_it_has_none_of_the_pages_faces()
    {
        var answer = RoadStudy.Run(new RoadAsked { Road = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) }) });
        var figure = answer.Figure(answer.FigureIds[0]);
        var shown = Render<Drawn>(parameters => parameters.Add(drawn => drawn.Figure, figure));
        string[] pictures = [shown.Find("img").GetAttribute("src")!, shown.Find("source").GetAttribute("srcset")!];
        Assert.All(pictures, address =>
        {
            var svg = Encoding.UTF8.GetString(Convert.FromBase64String(address.Split(',')[1]));
            Assert.StartsWith("data:image/svg+xml", address, StringComparison.Ordinal);
            Assert.DoesNotContain("<text", svg, StringComparison.Ordinal);
            Assert.Contains("<path", svg, StringComparison.Ordinal);
        });
    }
}
