using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Net.WebSockets;
using System.Text;
using Microsoft.Playwright;

namespace Heaveline.BrowserTests;

/// <summary>What someone with bad intent would try against a program that listens on a reader's own machine.</summary>
[Collection(AnotherProgram.Name)]
public class AttackTests(Served served)
{
    private static readonly string[] Doors =
        ["/", "/pass", "/_framework/blazor.web.js", "/_blazor/negotiate", "/_content/Heaveline.Web/heaveline.css"];

    [Fact]
    public void Only_this_machine_is_listened_to()
    {
        // /proc/net/tcp: local address as reversed hexadecimal, state 0A is LISTEN (Linux, Documentation/networking/proc_net_tcp).
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Listening sockets are read from /proc.");
        var port = served.Address.Port.ToString("X4");
        var listening = File.ReadLines("/proc/net/tcp")
            .Concat(File.ReadLines("/proc/net/tcp6")).Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Where(cells => cells.Length > 3 && cells[1].EndsWith(":" + port, StringComparison.Ordinal) && cells[3] == "0A")
            .Select(cells => cells[1]).ToList();
        Assert.Equal(["0100007F:" + port], listening);
    }

    [Theory]
    [InlineData("garage.example")]
    [InlineData("localhost.garage.example")]
    [InlineData("127.0.0.1.garage.example")]
    [InlineData("192.0.2.7")]
    [InlineData("[2001:db8::1]")]
    [InlineData("2130706433")]
    public async Task A_foreign_name_pointed_at_this_machine_is_refused(string host)
    {
        foreach (var door in Doors)
        {
            Assert.Equal(HttpStatusCode.Forbidden, (await Ask(door, request => request.Headers.Host = $"{host}:{served.Address.Port}")).StatusCode);
        }
    }

    [Fact]
    public async Task Another_port_in_the_name_is_refused() =>
        Assert.Equal(HttpStatusCode.Forbidden, (await Ask("/", request => request.Headers.Host = "localhost:1")).StatusCode);

    [Theory]
    [InlineData("http://garage.example")]
    [InlineData("null")]
    [InlineData("http://localhost:1")]
    [InlineData("https://localhost")]
    public async Task A_page_from_elsewhere_is_refused(string origin)
    {
        foreach (var door in Doors)
        {
            Assert.Equal(HttpStatusCode.Forbidden, (await Ask(door, request => request.Headers.Add("Origin", origin))).StatusCode);
            Assert.Equal(HttpStatusCode.Forbidden, (await Ask(door, request => request.Headers.Add("Origin", origin), HttpMethod.Post)).StatusCode);
        }
    }

    [Fact]
    public async Task A_page_from_elsewhere_cannot_open_the_pages_socket()
    {
        using var socket = new ClientWebSocket();
        socket.Options.SetRequestHeader("Origin", "http://garage.example");
        var failure = await Assert.ThrowsAsync<WebSocketException>(() => socket.ConnectAsync(
            new Uri($"ws://localhost:{served.Address.Port}/_blazor"), TestContext.Current.CancellationToken));
        Assert.Contains("403", failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_another_site_loads_is_refused_but_its_link_may_be_followed()
    {
        static void From(HttpRequestMessage request, string mode, string destination)
        {
            request.Headers.Add("Sec-Fetch-Site", "cross-site");
            request.Headers.Add("Sec-Fetch-Mode", mode);
            request.Headers.Add("Sec-Fetch-Dest", destination);
        }

        Assert.Equal(HttpStatusCode.Forbidden, (await Ask("/pass", request => From(request, "no-cors", "image"))).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await Ask("/pass", request => From(request, "navigate", "iframe"))).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Ask("/pass", request => From(request, "navigate", "document"))).StatusCode);
    }

    [Fact]
    public async Task No_frame_no_script_in_the_page_nothing_from_elsewhere()
    {
        foreach (var door in Doors.Append("/nothing-here"))
        {
            var headers = (await Ask(door)).Headers;
            var policy = Assert.Single(headers.GetValues("Content-Security-Policy"));
            Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
            // Modules of arithmetic alone: decision 16.
            Assert.DoesNotContain("unsafe-", policy.Replace(" 'wasm-unsafe-eval'", "", StringComparison.Ordinal), StringComparison.Ordinal);
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", Assert.Single(headers.GetValues("X-Content-Type-Options")));
        }
    }

    [Fact]
    public async Task A_script_planted_in_the_address_does_not_run()
    {
        var page = await served.Open("/");
        foreach (var path in PagePaths.Asked)
        {
            foreach (var key in new[] { "car", "load", "road", "speed", "rule", "class" })
            {
                await page.GotoAsync(
                    $"{path}?{key}={Uri.EscapeDataString("\"><script>window.planted=1</script><img src=x onerror=window.planted=1>")}");
                Assert.Null(await page.EvaluateAsync<int?>("window.planted ?? null"));
            }
        }
    }

    [Fact]
    public async Task A_script_planted_in_a_car_file_does_not_run()
    {
        var text = await File.ReadAllTextAsync(Path.Combine(served.Garage, "fern-saloon.yaml"), TestContext.Current.CancellationToken);
        var path = Path.Combine(served.Garage, "planted.yaml");
        await File.WriteAllTextAsync(
            path,
            text.Replace(
                "car: Fern saloon", "car: '<script>window.planted=1</script><img src=x onerror=window.planted=1>'", StringComparison.Ordinal),
            TestContext.Current.CancellationToken);
        try
        {
            var page = await served.Open("/");
            foreach (var address in PagePaths.Asked.Select(path => path + "?car=planted").Prepend("/"))
            {
                await page.GotoAsync(address, new PageGotoOptions { WaitUntil = WaitUntilState.NetworkIdle });
                Assert.Null(await page.EvaluateAsync<int?>("window.planted ?? null"));
            }
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Theory]
    [InlineData("../fern-saloon")]
    [InlineData("../../etc/passwd")]
    [InlineData("/etc/passwd")]
    [InlineData("..\\fern-saloon")]
    [InlineData("fern-saloon.yaml\0")]
    [InlineData("%2e%2e/fern-saloon")]
    public async Task A_name_that_leads_out_of_the_garage_finds_nothing(string name)
    {
        foreach (var path in PagePaths.Asked)
        {
            var answer = await Ask($"{path}?car={Uri.EscapeDataString(name)}&road={Uri.EscapeDataString(name)}");
            var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.True((int)answer.StatusCode < 500, $"{path}: {(int)answer.StatusCode}");
            Assert.DoesNotContain("root:", text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("/../../../etc/passwd")]
    [InlineData("/_content/../../../../etc/passwd")]
    [InlineData("/lettering/..%2f..%2fetc%2fpasswd.woff2")]
    [InlineData("/_content/Heaveline.Web/..%5c..%5csecret")]
    public async Task A_path_that_leads_out_finds_nothing(string path)
    {
        using var raw = new TcpClient();
        await raw.ConnectAsync("127.0.0.1", served.Address.Port, TestContext.Current.CancellationToken);
        await using var stream = raw.GetStream();
        await stream.WriteAsync(
            Encoding.ASCII.GetBytes($"GET {path} HTTP/1.1\r\nHost: localhost:{served.Address.Port}\r\nConnection: close\r\n\r\n"),
            TestContext.Current.CancellationToken);
        using var reader = new StreamReader(stream);
        var answer = await reader.ReadToEndAsync(TestContext.Current.CancellationToken);
        Assert.Matches("^HTTP/1.1 4", answer);
        Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_body_without_end_is_cut_off()
    {
        using var content = new ByteArrayContent(new byte[3 << 20]);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/x-www-form-urlencoded");
        using var client = new HttpClient { BaseAddress = served.Address };
        HttpStatusCode? code;
        try
        {
            code = (await client.PostAsync("/", content, TestContext.Current.CancellationToken)).StatusCode;
        }
        catch (HttpRequestException)
        {
            // The program may close the connection while it is still being written to.
            code = null;
        }

        Assert.True(code is null || (int)code is >= 400 and < 500, $"answered {code}");
        Assert.Equal(HttpStatusCode.OK, (await Ask("/")).StatusCode);
    }

    private async Task<HttpResponseMessage> Ask(string path, Action<HttpRequestMessage>? change = null, HttpMethod? method = null)
    {
        using var client = new HttpClient { BaseAddress = served.Address };
        using var request = new HttpRequestMessage(method ?? HttpMethod.Get, path);
        change?.Invoke(request);
        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }
}
