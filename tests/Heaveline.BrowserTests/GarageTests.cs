using Microsoft.Playwright;

namespace Heaveline.BrowserTests;

[Collection(OneProgram.Name)]
public class GarageTests(Served served)
{
    [Fact]
    public async Task The_garage_lists_every_car_and_leads_to_its_page()
    {
        var page = await served.Open("/");
        foreach (var file in Directory.EnumerateFiles(served.Garage, "*.yaml"))
        {
            await Assertions.Expect(page.GetByText(Path.GetFileNameWithoutExtension(file), new() { Exact = true })).ToBeVisibleAsync();
        }

        await page.GetByRole(AriaRole.Link, new() { Name = "Fern saloon", Exact = true }).ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/car[?]car=fern-saloon(&|$)"));
    }

    [Fact]
    public async Task Nothing_is_fetched_from_elsewhere_and_the_policy_is_not_broken()
    {
        var page = await served.Open("/");
        var foreign = new List<string>();
        var complaints = new List<string>();
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(served.Address.ToString(), StringComparison.Ordinal)
                && !request.Url.StartsWith("data:", StringComparison.Ordinal) && !request.Url.StartsWith("blob:", StringComparison.Ordinal))
            {
                foreign.Add(request.Url);
            }
        };
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                complaints.Add(message.Text);
            }
        };
        foreach (var path in PagePaths.All)
        {
            await page.GotoAsync(path, new PageGotoOptions { WaitUntil = WaitUntilState.NetworkIdle });
        }

        Assert.Empty(foreign);
        Assert.Empty(complaints);
    }
}
