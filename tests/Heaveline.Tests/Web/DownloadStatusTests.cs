using System.Net;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Tests.House;
using Heaveline.Web.Host;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Heaveline.Tests.Web;

/// <summary>One refusal has one status, whatever page it is a download of.</summary>
public sealed class DownloadStatusTests : IAsyncLifetime
{
    private readonly WebApplication app = PageHost.Of(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage"), Port = 0 });
    private HttpClient client = null!;

    public async ValueTask InitializeAsync()
    {
        await app.StartAsync(TestContext.Current.CancellationToken);
        client = new HttpClient { BaseAddress = PageHost.AddressOf(app) };
    }

    [Theory]
    [InlineData("car-loads.svg")]
    [InlineData("car-numbers.csv")]
    [InlineData("pass.csv")]
    [InlineData("rule.csv")]
    [InlineData("ride.csv")]
    [InlineData("report.html")]
    public async Task A_car_that_is_not_there_is_not_found_by_any_page(string file)
    {
        using var answer = await client.GetAsync($"/download/{file}?car=ghost", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains(
            "There is no car named ghost in this garage.",
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("pass.csv", "load=elephants")]
    [InlineData("pass.csv", "speed=900")]
    [InlineData("rule.csv", "load=elephants")]
    [InlineData("rule.csv", "from=fast")]
    [InlineData("ride.csv", "load=elephants")]
    [InlineData("ride.csv", "at=never")]
    [InlineData("rule.outlines", "load=elephants")]
    [InlineData("ride.outlines", "load=elephants")]
    [InlineData("ride-spectra.outlines", "load=elephants")]
    [InlineData("report.html", "load=elephants")]
    [InlineData("report.html", "speed=900%20km/h")]
    public async Task What_the_car_has_not_or_cannot_is_refused_by_every_page(string file, string query)
    {
        using var answer = await client.GetAsync($"/download/{file}?car=fern-saloon&{query}", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal("text/plain", answer.Content.Headers.ContentType?.MediaType);
    }

    [Theory]
    [InlineData("pass")]
    [InlineData("pass-before-after")]
    [InlineData("car-loads")]
    [InlineData("road")]
    public async Task A_figure_is_handed_out_with_its_letters_as_outlines_too(string what)
    {
        using var answer = await client.GetAsync(
            $"/download/{what}.outlines?car=fern-saloon-cured&beside=fern-saloon", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.EndsWith(".outlines.svg", answer.Content.Headers.ContentDisposition?.FileName?.Trim('"'), StringComparison.Ordinal);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("<svg", text, StringComparison.Ordinal);
        Assert.DoesNotContain("<text", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_finds_the_queue_full_is_told_when_to_come_back_and_what_fails_is_refused()
    {
        Assert.Equal(429, await Status(new QueueFullException()));
        Assert.Equal(422, await Status(new RefusedValueException("speed", "900 km/h", "below 432 km/h", "Drive slower.")));
        Assert.Equal(422, await Status(new RunFailedException("It left the range.", "Drive slower.")));
        var context = new DefaultHttpContext { RequestServices = app.Services };
        await (await Download.Answer(() => throw new QueueFullException())).ExecuteAsync(context);
        Assert.Equal((429, "30"), (context.Response.StatusCode, context.Response.Headers.RetryAfter.ToString()));

        static async Task<int?> Status(Exception thrown) => ((IStatusCodeHttpResult)await Download.Answer(() => throw thrown)).StatusCode;
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await app.DisposeAsync();
    }

    [Theory]
    [InlineData("pass.csv?car=fern-salon", "There is no car named fern-salon in this garage. Did you mean fern-saloon? There are ")]
    [InlineData("pass.csv?car=%20", "No car is named. There are ")]
    [InlineData("pass.csv?car=fern-saloon&road=village-hum", "There is no road named village-hum. Did you mean village-hump? There are ")]
    public async Task A_name_that_is_not_there_is_answered_with_those_that_are(string file, string sentence)
    {
        using var answer = await client.GetAsync($"/download/{file}", TestContext.Current.CancellationToken);
        Assert.Contains(sentence, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }
}
