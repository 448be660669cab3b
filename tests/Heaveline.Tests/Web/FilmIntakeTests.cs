using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using System.Text.Json;
using Heaveline.Files;
using Heaveline.Tests.Files;
using Heaveline.Web.Guard;
using Heaveline.Web.Host;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Heaveline.Tests.Web;

/// <summary>The door by which a film comes into the garage, attacked over real connections.</summary>
public sealed class FilmIntakeTests : IAsyncLifetime
{
    private static readonly byte[] Film = [0, 0, 0, 24, .. "ftypmp42"u8, .. new byte[300_000]];
    private readonly TemporaryFolder folder = new();
    private readonly X509Certificate2 certificate = OwnCertificate.Of(IPAddress.Any, TimeProvider.System.GetUtcNow());
    private WebApplication plain = null!;
    private WebApplication open = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        var options = new ServeOptions { Garage = folder.Root, Port = 0 };
        plain = PageHost.Of(options);
        open = PageHost.Of(options with { Address = IPAddress.Any, PairingCode = "ABCD-EFGH", Certificate = certificate });
        await plain.StartAsync(Stop);
        await open.StartAsync(Stop);
    }

    public async ValueTask DisposeAsync()
    {
        await plain.DisposeAsync();
        await open.DisposeAsync();
        certificate.Dispose();
        folder.Dispose();
    }

    [Fact]
    public async Task A_film_comes_in_byte_for_byte_and_a_second_one_of_its_name_does_not()
    {
        using var may = await Ask("file=lane.mp4", Film);
        Assert.Equal(HttpStatusCode.NoContent, may.StatusCode);
        using var answer = await Send("file=lane.mp4", Film);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        Assert.Equal(
            "films/lane.mp4", JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Stop)).RootElement.GetProperty("film").GetString());
        Assert.Equal(Film, await File.ReadAllBytesAsync(Path.Combine(folder.Root, "films", "lane.mp4"), Stop));
        using var again = await Send("file=lane.mp4", [.. Film, 1]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, again.StatusCode);
        using var asked = await Ask("file=lane.mp4", Film);
        Assert.Contains("already", await asked.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(Film, await File.ReadAllBytesAsync(Path.Combine(folder.Root, "films", "lane.mp4"), Stop));
    }

    [Theory]
    [InlineData("file=..%2F..%2Fup.mp4", "without a folder")]
    [InlineData("file=%2Fetc%2Fup.mp4", "without a folder")]
    [InlineData("file=up.exe", "must end in .mp4")]
    [InlineData("file=up.mp4%00.mp4", "control characters")]
    [InlineData("", "must end in .mp4")]
    public async Task What_must_not_come_in_is_refused_in_words(string query, string words)
    {
        using var answer = await Send(query, Film);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(words, await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        using var asked = await Ask(query, Film);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        Assert.Empty(Kept);
    }

    [Theory]
    [InlineData("file=lane.mp4&bytes=100", "is no film")]
    [InlineData("file=lane.mp4&bytes=100&begins=zz", "is no film")]
    [InlineData("file=lane.mp4&bytes=100&begins=0001", "is no film")]
    [InlineData("file=lane.mp4&bytes=99999999999&begins=000000006674797069736f6d", "at most 2")]
    [InlineData("file=lane.mp4&bytes=-1", "how long")]
    [InlineData("file=lane.mp4", "how long")]
    public async Task A_question_before_the_film_is_answered_in_words(string query, string words)
    {
        using var client = new HttpClient { BaseAddress = PageHost.AddressOf(plain) };
        using var answer = await client.GetAsync($"{FilmIntake.Address}?{query}", Stop);
        Assert.False(answer.IsSuccessStatusCode);
        Assert.Contains(words, await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_film_is_not_kept_and_what_is_called_otherwise_not_even_read()
    {
        using var list = await Send("file=lane.mp4", Encoding.ASCII.GetBytes("#EXTM3U\nhttp://127.0.0.1/\n"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, list.StatusCode);
        using var form = await Send("file=lane.mp4", Film, type: "text/plain");
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, form.StatusCode);
        Assert.Empty(Kept);
    }

    [Fact]
    public async Task A_film_that_says_that_it_is_too_long_or_breaks_off_leaves_nothing()
    {
        var most = string.Create(CultureInfo.InvariantCulture, $"{FileFormat.Film.MostBytes + 1L}");
        Assert.Contains("at most 2", await Raw(most), StringComparison.Ordinal);
        using (await Begun())
        {
            Assert.Equal(".partial", Path.GetExtension(Assert.Single(Kept)));
        }

        await Waited(() => !Kept.Any());
    }

    [Fact]
    public async Task One_film_comes_in_at_a_time_and_whoever_meets_it_is_not_counted()
    {
        using (await Begun())
        {
            for (var n = 0; n <= FilmIntake.MostInWindow; n++)
            {
                using var met = await Send("file=other.mp4", Film);
                Assert.Equal(HttpStatusCode.TooManyRequests, met.StatusCode);
                Assert.Equal(TimeSpan.FromSeconds(30.0), met.Headers.RetryAfter!.Delta);
                Assert.StartsWith("Another film is coming in.", await met.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
            }
        }

        await Waited(() => !Kept.Any());
        using var answer = await Send("file=other.mp4", Film);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
    }

    [Fact]
    public async Task A_film_that_stands_still_gives_its_place_to_the_next()
    {
        plain.Services.GetRequiredService<FilmIntake>().Grace = TimeSpan.FromMilliseconds(500.0);
        using var slow = await Begun(length: 1000);
        await using var stream = slow.GetStream();
        using var reader = new StreamReader(stream);
        var said = await reader.ReadToEndAsync(Stop);
        Assert.StartsWith("HTTP/1.1 408", said, StringComparison.Ordinal);
        Assert.Contains("so slowly", said, StringComparison.Ordinal);
        Assert.Empty(Kept);
    }

    [Fact]
    public async Task What_the_disk_refuses_is_said_without_where_the_garage_lies_on_it()
    {
        // A file where the folder of the films would be.
        await File.WriteAllTextAsync(Path.Combine(folder.Root, "films"), "", Stop);
        using var answer = await Send("file=lane.mp4", Film);
        var said = await answer.Content.ReadAsStringAsync(Stop);
        Assert.False(answer.IsSuccessStatusCode);
        Assert.Contains("films", said, StringComparison.Ordinal);
        Assert.DoesNotContain(folder.Root, said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_from_elsewhere_and_a_reader_without_the_code_bring_nothing_in()
    {
        using var foreign = await Send("file=lane.mp4", Film, origin: "https://elsewhere.example");
        Assert.Equal(HttpStatusCode.Forbidden, foreign.StatusCode);
        using var client = new HttpClient(new HttpClientHandler { ServerCertificateCustomValidationCallback = (_, _, _, _) => true });
        using var sent = new ByteArrayContent(Film);
        sent.Headers.ContentType = new MediaTypeHeaderValue(LogDoor.ContentType);
        var address = new Uri($"https://127.0.0.1:{PageHost.AddressOf(open).Port}{FilmIntake.Address}?file=lane.mp4");
        using var unpaired = await client.PostAsync(address, sent, Stop);
        Assert.Equal(HttpStatusCode.Unauthorized, unpaired.StatusCode);
        using var asked = await client.GetAsync(address, Stop);
        Assert.Equal(HttpStatusCode.Unauthorized, asked.StatusCode);
        Assert.Empty(Kept);
    }

    [Fact]
    public async Task The_door_takes_no_other_way_of_asking_and_says_so()
    {
        using var client = new HttpClient { BaseAddress = PageHost.AddressOf(plain) };
        foreach (var method in new[] { HttpMethod.Put, HttpMethod.Delete })
        {
            using var answer = await client.SendAsync(new HttpRequestMessage(method, FilmIntake.Address), Stop);
            Assert.Equal(HttpStatusCode.MethodNotAllowed, answer.StatusCode);
            Assert.Contains("POST", answer.Content.Headers.Allow);
        }
    }

    [Fact]
    public async Task Too_many_in_a_time_are_told_to_come_back()
    {
        HttpResponseMessage? last = null;
        for (var n = 0; n <= FilmIntake.MostInWindow; n++)
        {
            last?.Dispose();
            last = await Send("file=lane.mp4", new byte[100]);
        }

        using (last)
        {
            Assert.Equal(HttpStatusCode.TooManyRequests, last!.StatusCode);
            Assert.NotNull(last.Headers.RetryAfter);
        }
    }

    private IEnumerable<string> Kept => Directory.EnumerateFiles(folder.Root, "*", SearchOption.AllDirectories)
        .Where(file => FileFormat.Film.Has(file) || file.EndsWith(".partial", StringComparison.Ordinal));

    private static async Task Waited(Func<bool> until)
    {
        for (var n = 0; n < 200 && !until(); n++)
        {
            await Task.Delay(50, Stop);
        }

        Assert.True(until());
    }

    // A film of which the first bytes have come, and no more come.
    private async Task<TcpClient> Begun(int length = 300_000)
    {
        var raw = await Opened(length.ToString(CultureInfo.InvariantCulture), "\0\0\0\u0018ftypmp42 and no more");
        await Waited(() => Kept.Any(file => new FileInfo(file).Extension == ".partial"));
        return raw;
    }

    private async Task<string> Raw(string length)
    {
        using var raw = await Opened(length, "");
        await using var stream = raw.GetStream();
        using var reader = new StreamReader(stream);
        return await reader.ReadToEndAsync(Stop);
    }

    private async Task<TcpClient> Opened(string length, string body)
    {
        var raw = new TcpClient();
        var port = PageHost.AddressOf(plain).Port;
        await raw.ConnectAsync("127.0.0.1", port, Stop);
        await raw.GetStream().WriteAsync(
            Encoding.Latin1.GetBytes(
                $"POST {FilmIntake.Address}?file=lane.mp4 HTTP/1.1\r\nHost: localhost:{port}\r\nContent-Type: {LogDoor.ContentType}\r\n"
                + $"Content-Length: {length}\r\nConnection: close\r\n\r\n{body}"),
            Stop);
        return raw;
    }

    private async Task<HttpResponseMessage> Ask(string query, byte[] bytes)
    {
        using var client = new HttpClient { BaseAddress = PageHost.AddressOf(plain) };
        return await client.GetAsync(
            string.Create(
                CultureInfo.InvariantCulture, $"{FilmIntake.Address}?{query}&bytes={bytes.Length}&begins={Convert.ToHexString(bytes[..12])}"),
            Stop);
    }

    private async Task<HttpResponseMessage> Send(string query, byte[] bytes, string type = LogDoor.ContentType, string? origin = null)
    {
        using var client = new HttpClient { BaseAddress = PageHost.AddressOf(plain) };
        using var request = new HttpRequestMessage(HttpMethod.Post, $"{FilmIntake.Address}?{query}") { Content = new ByteArrayContent(bytes) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue(type);
        if (origin is not null)
        {
            request.Headers.Add("Origin", origin);
        }

        return await client.SendAsync(request, Stop);
    }
}
