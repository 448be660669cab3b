using System.Text;

namespace Heaveline.Tests.Cli;

/// <summary>Files of a pass that move, written by the command.</summary>
public class MovingFileTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";

    [Fact]
    public void The_film_is_an_animated_webp()
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("pass", Saloon, "--speed", "60 km/h", "--animation", scratch["pass.webp"]);
        Assert.Equal(0, said.Code);
        var bytes = File.ReadAllBytes(scratch["pass.webp"]);
        // RIFF, WEBP, an extended header with the mark of an animation (WebP Container Specification, Google).
        Assert.Equal("RIFF", Encoding.ASCII.GetString(bytes[..4]));
        Assert.Equal("WEBPVP8X", Encoding.ASCII.GetString(bytes[8..16]));
        Assert.Equal(2, bytes[20] & 2);
        Assert.InRange(bytes.Length, 100_000, 4_000_000);
    }

    [Fact]
    public void The_file_with_sliders_says_what_it_is_of_and_what_a_browser_may_do_with_it()
    {
        using var scratch = new Scratch();
        var said = Spoken.Of(
            "pass", Saloon, "--load", "four up with luggage", "--road", "examples/roads/bridge-dip.yaml", "--speed", "30 mph", "--units", "imperial",
            "--live", scratch["pass.html"]);
        Assert.Equal(0, said.Code);
        var html = File.ReadAllText(scratch["pass.html"]);
        Assert.StartsWith("<!doctype html>", html, StringComparison.Ordinal);
        foreach (var expected in new[]
        {
            "default-src 'none'; script-src 'sha256-", "30 mph", "four up with luggage", "fern-saloon", "data-setting=\"rear-damping\"",
            "no proof of safety",
        })
        {
            Assert.Contains(expected, html, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("src=\"http", html, StringComparison.Ordinal);
        Assert.DoesNotContain("import ", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--animation", "pass.gif", ".webp")]
    [InlineData("--live", "pass.txt", ".html")]
    public void Another_ending_is_refused_before_anything_is_computed(string option, string name, string ending)
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("pass", Saloon, option, scratch[name]);
        Assert.Equal(2, said.Code);
        Assert.Contains(ending, said.Remarks, StringComparison.Ordinal);
        Assert.False(File.Exists(scratch[name]));
    }
}
