using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Heaveline.Tests.House;
using Heaveline.Web.Guard;
using Heaveline.Web.Host;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Heaveline.Tests.Web;

/// <summary>What every answer of the pages says about itself, asked over real connections.</summary>
public sealed class GuardTests : IAsyncLifetime
{
    private readonly X509Certificate2 certificate = OwnCertificate.Of(IPAddress.Any, TimeProvider.System.GetUtcNow());
    private WebApplication plain = null!;
    private WebApplication open = null!;

    public async ValueTask InitializeAsync()
    {
        var options = new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage"), Port = 0 };
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
    }

    [Theory]
    [InlineData("/", "localhost", 200)]
    [InlineData("/pass", "LOCALHOST", 200)]
    [InlineData("/preview/report.html", "localhost", 404)]
    [InlineData("/nowhere", "localhost", 404)]
    [InlineData("/lettering/nobody.woff2", "localhost", 404)]
    [InlineData("/download/rule.csv?car=nobody", "localhost", 404)]
    [InlineData("/_content/Heaveline.Web/heaveline.css", "localhost", 200)]
    [InlineData("/_blazor/negotiate", "localhost", 405)]
    [InlineData("/", "elsewhere.example", 403)]
    public async Task Every_answer_says_who_may_frame_and_keep_it(string path, string host, int status)
    {
        using var client = new HttpClient();
        using var asked = new HttpRequestMessage(HttpMethod.Get, new Uri(PageHost.AddressOf(plain), path));
        asked.Headers.Host = $"{host}:{asked.RequestUri!.Port}";
        using var answer = await client.SendAsync(asked, TestContext.Current.CancellationToken);
        Assert.Equal(status, (int)answer.StatusCode);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        var framing = Assert.Single(answer.Headers.GetValues("X-Frame-Options"));
        Assert.Equal(policy.Contains("frame-ancestors 'self'", StringComparison.Ordinal) ? "SAMEORIGIN" : "DENY", framing);
        Assert.Equal(path == PageHeaders.Framed ? "SAMEORIGIN" : "DENY", framing);
        Assert.NotNull(answer.Headers.CacheControl);
        Assert.Equal(
            path.StartsWith("/_content", StringComparison.Ordinal) ? "no-cache" : "no-store",
            answer.Headers.CacheControl.ToString().Split(',')[^1].Trim() is "max-age=0" ? "no-store" : answer.Headers.CacheControl.ToString());
    }

    [Fact]
    public async Task An_open_address_answers_encrypted_alone_and_by_the_certificate_that_was_shown()
    {
        var fingerprint = OwnCertificate.Fingerprint(certificate);
        Assert.Equal(Convert.ToHexString(SHA256.HashData(certificate.RawData)), fingerprint.Replace(":", "", StringComparison.Ordinal));
        var port = PageHost.AddressOf(open).Port;
        Assert.Equal("https", PageHost.AddressOf(open).Scheme);
        var shown = "";
        using var client = new HttpClient(new HttpClientHandler
        {
            ServerCertificateCustomValidationCallback = (_, one, _, _) =>
            {
                shown = OwnCertificate.Fingerprint(one!);
                return one!.MatchesHostname("127.0.0.1", allowWildcards: false, allowCommonName: false);
            },
        });
        using var answer = await client.GetAsync(new Uri($"https://127.0.0.1:{port}/"), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.Equal(fingerprint, shown);
        Assert.True(answer.Headers.CacheControl!.NoStore);
        Assert.All(answer.Headers.GetValues("Set-Cookie"), cookie => Assert.Contains("secure", cookie, StringComparison.OrdinalIgnoreCase));
        await Assert.ThrowsAsync<HttpRequestException>(
            () => client.GetAsync(new Uri($"http://127.0.0.1:{port}/"), TestContext.Current.CancellationToken));
    }

    [Fact]
    public void Nothing_is_opened_to_others_without_a_code_or_without_a_certificate()
    {
        var options = new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage"), Port = 0, Address = IPAddress.Any };
        Assert.Throws<ArgumentException>(() => PageHost.Of(options with { Certificate = certificate }));
        Assert.Throws<ArgumentException>(() => PageHost.Of(options with { PairingCode = "ABCD-EFGH" }));
    }

    [Fact]
    public async Task A_page_too_many_is_told_so_and_finds_room_when_one_closes()
    {
        using var client = new HttpClient { BaseAddress = PageHost.AddressOf(plain) };
        var sockets = new List<System.Net.WebSockets.ClientWebSocket>();
        try
        {
            for (var n = 0; n < Crowd.Most; n++)
            {
                sockets.Add(new System.Net.WebSockets.ClientWebSocket());
                await sockets[^1].ConnectAsync(
                    new Uri($"ws://localhost:{client.BaseAddress.Port}/_blazor"), TestContext.Current.CancellationToken);
            }

            Assert.Equal(HttpStatusCode.ServiceUnavailable, await Negotiated());
            Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/", TestContext.Current.CancellationToken)).StatusCode);
            sockets[0].Abort();
            var until = Environment.TickCount64 + 120_000;
            while (await Negotiated() != HttpStatusCode.OK && Environment.TickCount64 < until)
            {
                await Task.Delay(50, TestContext.Current.CancellationToken);
            }

            Assert.Equal(HttpStatusCode.OK, await Negotiated());
        }
        finally
        {
            sockets.ForEach(socket => socket.Dispose());
        }

        async Task<HttpStatusCode> Negotiated() =>
            (await client.PostAsync("/_blazor/negotiate?negotiateVersion=1", null, TestContext.Current.CancellationToken)).StatusCode;
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/pass")]
    [InlineData("/nowhere")]
    [InlineData("/lettering/nobody.woff2")]
    [InlineData("/download/road.csv")]
    [InlineData("/download/rule.csv?car=nobody")]
    [InlineData("/_content/Heaveline.Web/heaveline.css")]
    public async Task What_can_be_got_can_be_asked_about_without_its_body_and_nothing_can_be_sent_to_it(string path)
    {
        using var client = new HttpClient { BaseAddress = PageHost.AddressOf(plain) };
        using var got = await client.GetAsync(path, TestContext.Current.CancellationToken);
        using var head = await client.SendAsync(new HttpRequestMessage(HttpMethod.Head, path), TestContext.Current.CancellationToken);
        Assert.Equal(got.StatusCode, head.StatusCode);
        Assert.Equal(got.Content.Headers.ContentType, head.Content.Headers.ContentType);
        Assert.Empty(await head.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        foreach (var method in new[] { HttpMethod.Post, HttpMethod.Put, HttpMethod.Delete, HttpMethod.Options, new HttpMethod("BREW") })
        {
            using var sent = await client.SendAsync(new HttpRequestMessage(method, path), TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.MethodNotAllowed, sent.StatusCode);
            Assert.Equal(["GET", "HEAD"], sent.Content.Headers.Allow.Order(StringComparer.Ordinal));
            Assert.Contains("can be read", await sent.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("GET /%00 HTTP/1.1\r\nHost: localhost:{0}\r\n\r\n", 400)]
    [InlineData("GET / HTTP/1.1\r\n\r\n", 400)]
    [InlineData("GET / HTTP/1.1\r\nHost: localhost:{0}\r\nno colon here\r\n\r\n", 400)]
    [InlineData("GARBAGE\r\n\r\n", 400)]
    [InlineData("GET /pass%00 HTTP/1.1\r\nHost: localhost:{0}\r\n\r\n", 400)]
    [InlineData("GET /_blazor/negotiate HTTP/1.1\r\nHost: localhost:{0}\r\nConnection: close\r\n\r\n", 405)]
    public async Task A_request_that_cannot_be_read_is_answered_in_words_or_with_what_is_allowed(string request, int status)
    {
        var port = PageHost.AddressOf(plain).Port;
        using var raw = new System.Net.Sockets.TcpClient();
        await raw.ConnectAsync("127.0.0.1", port, TestContext.Current.CancellationToken);
        await using var stream = raw.GetStream();
        await stream.WriteAsync(
            System.Text.Encoding.ASCII.GetBytes(string.Format(System.Globalization.CultureInfo.InvariantCulture, request, port)),
            TestContext.Current.CancellationToken);
        using var reader = new StreamReader(stream);
        var parts = (await reader.ReadToEndAsync(TestContext.Current.CancellationToken)).Split("\r\n\r\n");
        Assert.StartsWith($"HTTP/1.1 {status} ", parts[0]);
        Assert.Contains("\r\nContent-Security-Policy: default-src 'none'", parts[0]);
        Assert.Contains("\r\nCache-Control: no-store", parts[0]);
        Assert.Contains(status == 405 ? "\r\nAllow: POST" : $"\r\nContent-Length: {parts[1].Length}\r\n", parts[0]);
        Assert.Equal(status == 405 ? "" : "This request cannot be read: its address or one of its headers is not in order.", parts[1]);
    }

    [Theory]
    [InlineData("GET /pass?car={1} HTTP/1.1\r\nHost: localhost:{0}\r\n\r\n", 414, "This address is too long: up to 8 kB of it are read.")]
    [InlineData(
        "GET /pass HTTP/1.1\r\nHost: localhost:{0}\r\nCookie: {1}\r\nX-A: {1}\r\nX-B: {1}\r\nX-C: {1}\r\n\r\n", 431,
        "The headers of this request are too long or too many")]
    public async Task What_is_too_long_is_told_with_how_long_it_may_be_and_what_to_do(string request, int status, string words)
    {
        var port = PageHost.AddressOf(plain).Port;
        using var raw = new System.Net.Sockets.TcpClient();
        await raw.ConnectAsync("127.0.0.1", port, TestContext.Current.CancellationToken);
        await using var stream = raw.GetStream();
        await stream.WriteAsync(
            System.Text.Encoding.ASCII.GetBytes(string.Format(
                System.Globalization.CultureInfo.InvariantCulture, request, port, new string('a', 9000))),
            TestContext.Current.CancellationToken);
        using var reader = new StreamReader(stream);
        var parts = (await reader.ReadToEndAsync(TestContext.Current.CancellationToken)).Split("\r\n\r\n");
        Assert.StartsWith($"HTTP/1.1 {status} ", parts[0]);
        Assert.Contains($"\r\nContent-Length: {parts[1].Length}\r\n", parts[0]);
        Assert.StartsWith(words, parts[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_address_that_is_shown_is_answered_at()
    {
        using var client = new HttpClient(new HttpClientHandler { ServerCertificateCustomValidationCallback = (_, _, _, _) => true });
        var shown = PageHost.AddressesOf(open);
        Assert.Equal("localhost", shown[^1].Host);
        Assert.Equal(MachineAddress.Reached(IPAddress.Any).Select(a => a.ToString()), shown.SkipLast(1).Select(at => at.Host));
        foreach (var at in shown)
        {
            using var answer = await client.GetAsync(at, TestContext.Current.CancellationToken);
            Assert.Equal((at, HttpStatusCode.Unauthorized), (at, answer.StatusCode));
        }

        Assert.Equal([PageHost.AddressOf(plain)], PageHost.AddressesOf(plain));
    }

    [Fact]
    public async Task What_no_browser_sends_in_place_of_a_code_is_answered_in_words_and_leaves_no_word_in_the_terminal()
    {
        // Asked first whether the form is wanted: sent at once, the refusal may close the line while the rest is still being written.
        using var client = new HttpClient(new SocketsHttpHandler
        {
            SslOptions = { RemoteCertificateValidationCallback = (_, shown, _, _) => shown is not null },
            Expect100ContinueTimeout = TimeSpan.FromMinutes(1),
        })
        {
            BaseAddress = new UriBuilder(PageHost.AddressOf(open)) { Host = "localhost" }.Uri,
            DefaultRequestHeaders = { ExpectContinue = true },
        };
        var broken = new ByteArrayContent("no part of any form"u8.ToArray());
        broken.Headers.TryAddWithoutValidation("Content-Type", "multipart/form-data; boundary=here");
        var tooLong = new ByteArrayContent(new byte[PageHost.LongestMessage + 1]);
        tooLong.Headers.TryAddWithoutValidation("Content-Type", "application/x-www-form-urlencoded");
        foreach (var (sent, status) in new[] { (broken, HttpStatusCode.BadRequest), (tooLong, HttpStatusCode.RequestEntityTooLarge) })
        {
            using var answer = await client.PostAsync("/pair", sent, TestContext.Current.CancellationToken);
            Assert.Equal(status, answer.StatusCode);
            Assert.Contains(
                "cannot be read as the form of this page", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        }

        var log = open.Services.GetRequiredService<ILoggerFactory>().CreateLogger("Microsoft.AspNetCore.Antiforgery.DefaultAntiforgery");
        Assert.False(log.IsEnabled(LogLevel.Critical));
    }

    [Fact]
    public void A_clock_at_either_end_of_the_calendar_makes_a_certificate()
    {
        foreach (var now in new[] { DateTimeOffset.MinValue.AddYears(1960), DateTimeOffset.MaxValue })
        {
            using var made = OwnCertificate.Of(IPAddress.Loopback, now);
            Assert.True(made.HasPrivateKey);
        }
    }
}
