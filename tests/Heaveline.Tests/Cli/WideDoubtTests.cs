using System.Net;
using Heaveline.Tests.House;
using Heaveline.Web.Host;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Cli;

/// <summary>A doubt so wide that no car can be drawn is refused by its name, wherever it is drawn.</summary>
public sealed class WideDoubtTests : IDisposable
{
    private const string Words = "the front spring motion ratio is so wide (±";
    private readonly Scratch scratch = new();

    public WideDoubtTests()
    {
        Write("fern-saloon", "moves: 47.5 mm ± 0.5 mm", "moves: 47.5 mm ± 2 m");
        Write("pebble-fluid-car", "damping-ratio: 0.28 ± 20 %", "damping-ratio: 0.28 ± 100000 %");
    }

    [Theory]
    [InlineData("describe", "--doubt")]
    [InlineData("doubt")]
    [InlineData("why")]
    [InlineData("compare", "--doubt")]
    [InlineData("cost")]
    [InlineData("report", "--parts", "car,doubt", "--out", "report.html")]
    public void It_is_refused_by_every_command(string command, params string[] more)
    {
        string[] before = command is "compare" or "cost" ? ["examples/garage/fern-saloon.yaml"] : [];
        var said = Spoken.Of([command, .. before, scratch["fern-saloon.yaml"], .. more.Select(w => w == "report.html" ? scratch[w] : w)]);
        Assert.DoesNotContain("fault of the program", said.Remarks);
        Assert.Contains(Words, said.Remarks.Replace("ratio of Fern saloon", "ratio", StringComparison.Ordinal));
        Assert.Equal(1, said.Code);
    }

    [Fact]
    public void It_is_refused_of_a_ride_too()
    {
        var said = Spoken.Of("ride", scratch["pebble-fluid-car.yaml"], "--doubt");
        Assert.Equal(1, said.Code);
        Assert.Contains("damping ratio is so wide (± 100000 %)", said.Remarks);
    }

    [Fact]
    public async Task It_is_refused_by_the_pages()
    {
        await using var app = PageHost.Of(new ServeOptions { Garage = scratch["."], Port = 0 });
        await app.StartAsync(TestContext.Current.CancellationToken);
        using var client = new HttpClient { BaseAddress = PageHost.AddressOf(app) };
        using var answer = await client.GetAsync("/download/report.html?car=fern-saloon&parts=car,doubt", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(Words, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    public void Dispose() => scratch.Dispose();

    private void Write(string car, string stated, string doubted)
    {
        var text = File.ReadAllText(Path.Combine(Checkout.Root, "examples", "garage", car + ".yaml"));
        var at = text.IndexOf(stated, StringComparison.Ordinal);
        Assert.True(at >= 0);
        File.WriteAllText(scratch[car + ".yaml"], text[..at] + doubted + text[(at + stated.Length)..]);
    }
}
