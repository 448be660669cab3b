using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography.X509Certificates;
using System.Text.Json;
using Heaveline.Files;
using Heaveline.Files.Garages;
using Heaveline.Tests.Files;
using Heaveline.Tests.Files.Drives;
using Heaveline.Web.Guard;
using Heaveline.Web.Host;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Builder;

namespace Heaveline.Tests.Web;

/// <summary>The door by which a log comes into the garage, attacked over real connections.</summary>
public sealed class LogDoorTests : IAsyncLifetime
{
    private static readonly byte[] Log = LogWriter.Bytes(new LogWriter().Whole);
    private readonly TemporaryFolder folder = new();
    private readonly X509Certificate2 certificate = OwnCertificate.Of(IPAddress.Any, TimeProvider.System.GetUtcNow());
    private WebApplication plain = null!;
    private WebApplication open = null!;

    public async ValueTask InitializeAsync()
    {
        var options = new ServeOptions { Garage = folder.Root, Port = 0 };
        plain = PageHost.Of(options);
        open = PageHost.Of(options with { Address = IPAddress.Any, PairingCode = "ABCD-EFGH", Certificate = certificate });
        await plain.StartAsync(TestContext.Current.CancellationToken);
        await open.StartAsync(TestContext.Current.CancellationToken);
    }

    public async ValueTask DisposeAsync()
    {
        await plain.DisposeAsync();
        await open.DisposeAsync();
        certificate.Dispose();
        folder.Dispose();
    }

    [Fact]
    public async Task A_log_comes_in_byte_for_byte_and_the_answer_names_its_drive()
    {
        using var answer = await Send("name=Chapel%20lane&file=trip.csv", Log);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var said = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal("chapel-lane", said.RootElement.GetProperty("drive").GetString());
        Assert.Equal(Log, await File.ReadAllBytesAsync(
            Path.Combine(folder.Root, "drives", "chapel-lane", "trip.csv"), TestContext.Current.CancellationToken));
        using var more = await Send("drive=chapel-lane&file=more.csv", Log);
        Assert.Equal(HttpStatusCode.Created, more.StatusCode);
        Assert.Equal(["more.csv", "trip.csv"], new Garage(folder.Root).Drives.LogFiles("chapel-lane"));
        // Sent again since its answer was lost: nothing is doubled.
        using var again = await Send("name=Chapel%20lane&file=trip.csv", Log);
        Assert.Equal(HttpStatusCode.Created, again.StatusCode);
        Assert.Equal(["chapel-lane"], new Garage(folder.Root).Drives.Names);
    }

    [Theory]
    [InlineData("name=Lane&file=..%2F..%2Fup.csv", "without a folder")]
    [InlineData("name=Lane&file=up.exe", "must end in .csv")]
    [InlineData("name=Lane&file=drive.yaml", "must end in .csv")]
    [InlineData("name=Lane", "must have 1 to")]
    [InlineData("drive=..&file=a.csv", "no drive of that name")]
    [InlineData("drive=%2Fetc&file=a.csv", "no drive of that name")]
    public async Task What_must_not_come_in_is_refused_in_words(string query, string words)
    {
        using var answer = await Send(query, Log);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(words, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Empty(Kept);
    }

    [Fact]
    public async Task A_log_that_is_called_otherwise_or_says_that_it_is_too_long_is_not_even_read()
    {
        using var form = await Send("name=Lane&file=a.csv", Log, type: "text/plain");
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, form.StatusCode);
        using var client = new HttpClient { BaseAddress = PageHost.AddressOf(plain) };
        using var unsaid = new HttpRequestMessage(HttpMethod.Post, LogDoor.Address + "?name=Lane&file=a.csv")
        {
            Content = new StreamContent(new MemoryStream(Log)), Headers = { TransferEncodingChunked = true },
        };
        unsaid.Content.Headers.ContentType = new MediaTypeHeaderValue(LogDoor.ContentType);
        using var without = await client.SendAsync(unsaid, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.LengthRequired, without.StatusCode);
        using var raw = new System.Net.Sockets.TcpClient();
        var port = PageHost.AddressOf(plain).Port;
        await raw.ConnectAsync("127.0.0.1", port, TestContext.Current.CancellationToken);
        await using var stream = raw.GetStream();
        await stream.WriteAsync(
            System.Text.Encoding.ASCII.GetBytes(
                $"POST /log?name=Lane&file=a.csv HTTP/1.1\r\nHost: localhost:{port}\r\nContent-Type: {LogDoor.ContentType}\r\n"
                + FormattableString.Invariant($"Content-Length: {FileFormat.DriveLog.MostBytes + 1L}\r\nConnection: close\r\n\r\n")),
            TestContext.Current.CancellationToken);
        using var reader = new StreamReader(stream);
        var said = await reader.ReadToEndAsync(TestContext.Current.CancellationToken);
        Assert.StartsWith("HTTP/1.1 413 ", said);
        Assert.Contains("it must have 67108864 or fewer", said);
        Assert.Empty(Kept);
    }

    [Fact]
    public async Task A_page_from_elsewhere_and_a_reader_without_the_code_bring_nothing_in()
    {
        using var foreign = await Send("name=Lane&file=a.csv", Log, origin: "https://elsewhere.example");
        Assert.Equal(HttpStatusCode.Forbidden, foreign.StatusCode);
        using var client = new HttpClient(new HttpClientHandler { ServerCertificateCustomValidationCallback = (_, _, _, _) => true });
        using var sent = new ByteArrayContent(Log);
        sent.Headers.ContentType = new MediaTypeHeaderValue(LogDoor.ContentType);
        using var unpaired = await client.PostAsync(
            new Uri($"https://127.0.0.1:{PageHost.AddressOf(open).Port}/log?name=Lane&file=a.csv"), sent, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Unauthorized, unpaired.StatusCode);
        Assert.Empty(Kept);
    }

    [Fact]
    public async Task The_door_takes_no_other_way_of_asking_and_says_so()
    {
        using var client = new HttpClient { BaseAddress = PageHost.AddressOf(plain) };
        foreach (var method in new[] { HttpMethod.Get, HttpMethod.Put, HttpMethod.Delete })
        {
            using var answer = await client.SendAsync(new HttpRequestMessage(method, LogDoor.Address), TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.MethodNotAllowed, answer.StatusCode);
            Assert.Equal("POST", Assert.Single(answer.Content.Headers.Allow));
        }
    }

    [Fact]
    public async Task Too_many_in_a_time_are_told_to_come_back()
    {
        HttpResponseMessage? last = null;
        for (var n = 0; n <= LogDoor.MostInWindow; n++)
        {
            last?.Dispose();
            last = await Send("name=Lane&file=a.exe", [1]);
        }

        using (last)
        {
            Assert.Equal(HttpStatusCode.TooManyRequests, last!.StatusCode);
            Assert.NotNull(last.Headers.RetryAfter);
            Assert.Contains("Too many logs", await last.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Only_the_page_that_records_may_ask_where_it_is()
    {
        using var client = new HttpClient { BaseAddress = PageHost.AddressOf(plain) };
        foreach (var (path, words) in new[] { ("/phone", "geolocation=(self)"), ("/", "geolocation=()"), ("/drive", "geolocation=()") })
        {
            using var answer = await client.GetAsync(path, TestContext.Current.CancellationToken);
            Assert.EndsWith(words, Assert.Single(answer.Headers.GetValues("Permissions-Policy")));
            Assert.Equal(PageHeaders.Policy, Assert.Single(answer.Headers.GetValues("Content-Security-Policy")));
        }
    }

    private IEnumerable<string> Kept => Directory.EnumerateFiles(folder.Root, "*", SearchOption.AllDirectories)
        .Where(file => Path.GetFileName(file)[0] != '.');

    private async Task<HttpResponseMessage> Send(string query, byte[] bytes, string type = LogDoor.ContentType, string? origin = null)
    {
        using var client = new HttpClient { BaseAddress = PageHost.AddressOf(plain) };
        using var request = new HttpRequestMessage(HttpMethod.Post, $"{LogDoor.Address}?{query}") { Content = new ByteArrayContent(bytes) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue(type);
        if (origin is not null)
        {
            request.Headers.Add("Origin", origin);
        }

        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }
}
