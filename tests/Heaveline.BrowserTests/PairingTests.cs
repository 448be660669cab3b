using System.Diagnostics;
using System.Net;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Heaveline.BrowserTests;

/// <summary>The program opened to other machines: nothing is shown before the code has been typed.</summary>
[Collection(AnotherProgram.Name)]
public class PairingTests(Served served)
{
    [Fact]
    public async Task Nothing_is_served_before_the_code_is_typed_and_everything_after()
    {
        await using var open = await OpenHouse.Of(served);
        using var client = open.Client();
        foreach (var door in new[]
        {
            "/",
            "/pass",
            "/_framework/blazor.web.js",
            "/_blazor/negotiate?negotiateVersion=1",
            "/_content/Heaveline.Web/heaveline.css",
            $"/?code={open.Code}",
            $"/pair?code={open.Code}",
        })
        {
            var answer = await client.GetAsync(door, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
            Assert.DoesNotContain(open.Code, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }

        await using var context = await served.Browser.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = open.Address.ToString(), IgnoreHTTPSErrors = true,
        });
        var page = await context.NewPageAsync();
        await page.GotoAsync("/pass");
        await page.GetByLabel("Pairing code").FillAsync("WRON-GONE");
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the garage" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToHaveTextAsync("That is not the code in the terminal.");
        // Typed in small letters and without the dash, as one does on a phone.
        await page.GetByLabel("Pairing code").FillAsync(open.Code.Replace("-", "", StringComparison.Ordinal).ToLowerInvariant());
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the garage" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "What stands in the garage" })).ToBeVisibleAsync();
        Assert.DoesNotContain(open.Code, page.Url, StringComparison.OrdinalIgnoreCase);
        var cookie = Assert.Single(await context.CookiesAsync(), cookie => cookie.Name == "heaveline-pairing");
        Assert.True(cookie.HttpOnly);
        Assert.True(cookie.Secure);
        Assert.Equal(SameSiteAttribute.Strict, cookie.SameSite);
        Assert.DoesNotContain(open.Code, cookie.Value, StringComparison.Ordinal);
    }

    [Fact]
    public async Task After_five_wrong_codes_not_even_the_right_one_is_looked_at_for_a_while()
    {
        await using var open = await OpenHouse.Of(served);
        using var client = open.Client();
        var form = await (await client.GetAsync("/", TestContext.Current.CancellationToken)).Content.ReadAsStringAsync(
            TestContext.Current.CancellationToken);
        for (var n = 0; n < 5; n++)
        {
            Assert.Contains("That is not the code in the terminal.", await Type("AAAA-AAA" + (char)('A' + n)), StringComparison.Ordinal);
        }

        Assert.Contains(
            "Too many wrong codes from your address", await Type(open.Code, HttpStatusCode.TooManyRequests), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync("/", TestContext.Current.CancellationToken)).StatusCode);
        await Task.Delay(TimeSpan.FromSeconds(1.1), TestContext.Current.CancellationToken);
        await Type(open.Code, HttpStatusCode.Redirect);

        async Task<string> Type(string code, HttpStatusCode status = HttpStatusCode.Unauthorized)
        {
            var token = Regex.Match(form, "name=\"(?<name>[^\"]+)\" value=\"(?<value>[^\"]+)\"");
            using var sent = new FormUrlEncodedContent([new(token.Groups["name"].Value, token.Groups["value"].Value), new("code", code)]);
            var answer = await client.PostAsync("/pair", sent, TestContext.Current.CancellationToken);
            Assert.Equal(status, answer.StatusCode);
            return form = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        }
    }

    [Theory]
    [InlineData("127.0.0.1", "http", "and nothing is encrypted")]
    [InlineData("::1", "http", "and nothing is encrypted")]
    [InlineData("127.0.0.1", "https", "no other can open them, and so no code is asked.", "--tls")]
    public async Task An_address_that_no_other_machine_reaches_is_called_what_it_is(string address, string scheme, string words, params string[] more)
    {
        var (program, at, said) = await served.Start([served.Garage, "--port", "0", "--open-to", address, .. more]);
        using (program)
        {
            var until = Stopwatch.StartNew();
            while (!said().Contains("Stop with", StringComparison.Ordinal) && until.Elapsed.TotalSeconds < 10.0)
            {
                await Task.Delay(50, TestContext.Current.CancellationToken);
            }

            program.Kill(entireProcessTree: true);
            await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        Assert.Equal(scheme, at.Scheme);
        Assert.Contains($"{address} is reached from this machine alone", said(), StringComparison.Ordinal);
        Assert.Contains(words, said(), StringComparison.Ordinal);
        Assert.DoesNotContain("typing this code", said(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_code_sent_without_the_forms_own_token_is_not_looked_at()
    {
        await using var open = await OpenHouse.Of(served);
        using var client = open.Client();
        var answer = await client.PostAsync("/pair", new FormUrlEncodedContent([new("code", open.Code)]), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.False(answer.Headers.TryGetValues("Set-Cookie", out var cookies)
            && cookies.Any(cookie => cookie.StartsWith("heaveline-pairing", StringComparison.Ordinal)));
    }

    /// <summary>A second program, open to every address of this machine.</summary>
    private sealed class OpenHouse(Process program, Uri address, string code, string fingerprint) : IAsyncDisposable
    {
        public Uri Address { get; } = address;

        public string Code { get; } = code;

        /// <summary>A client that trusts the certificate of the printed fingerprint and no other.</summary>
        public HttpClient Client() => new(new HttpClientHandler
        {
            AllowAutoRedirect = false,
            ServerCertificateCustomValidationCallback = (_, shown, _, _) =>
                shown!.GetCertHashString(HashAlgorithmName.SHA256) == fingerprint.Replace(":", "", StringComparison.Ordinal),
        })
        { BaseAddress = Address };

        public static async Task<OpenHouse> Of(Served served)
        {
            var (program, address, said) = await served.Start([served.Garage, "--port", "0", "--open-to", "0.0.0.0"]);
            var until = Stopwatch.StartNew();
            Match code;
            while (!((code = Regex.Match(said(), @"typing this code: ([A-Z0-9]{4}-[A-Z0-9]{4})")).Success
                && Fingerprint().Success) && until.Elapsed.TotalSeconds < 10.0)
            {
                await Task.Delay(50);
            }

            var fingerprint = Fingerprint();
            Assert.True(code.Success && fingerprint.Success, "No pairing code or no fingerprint was printed.");
            Assert.Equal("https", address.Scheme);
            return new OpenHouse(program, new Uri($"https://127.0.0.1:{address.Port}/"), code.Groups[1].Value, fingerprint.Value);

            Match Fingerprint() => Regex.Match(said(), "(?:[0-9A-F]{2}:){31}[0-9A-F]{2}");
        }

        public async ValueTask DisposeAsync()
        {
            program.Kill(entireProcessTree: true);
            await program.WaitForExitAsync();
            program.Dispose();
        }
    }
}
