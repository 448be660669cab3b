using System.Text.RegularExpressions;
using Heaveline.Tests.Drives.Lanes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>The cars that two drives along Larch Lane tell, by whatever is asked beside them.</summary>
public sealed class ProvedCarTests : IDisposable
{
    private const string Heading = "The cars that move like the drives";

    private readonly Scratch scratch = new();

    public ProvedCarTests()
    {
        foreach (var name in new[] { "fern-saloon.yaml", "fern-saloon-cured.yaml" })
        {
            File.Copy(Path.Combine(Checkout.Root, "examples", "garage", name), scratch[name]);
        }

        File.WriteAllText(scratch["before.csv"], LaneWriter.Whole(LarchLane.Before.Log));
        File.WriteAllText(scratch["after.csv"], LaneWriter.Whole(LarchLane.After.Log));
    }

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void A_report_with_a_forecast_and_without_and_the_command_tell_one_car_of_each_drive()
    {
        var (car, cured) = (scratch["fern-saloon.yaml"], scratch["fern-saloon-cured.yaml"]);
        var plain = Reported(car, cured);
        Assert.True(plain.Length > 10, string.Join(' ', plain));
        Assert.Equal(plain, Reported(car, cured, "--forecast"));
        Assert.Equal(plain, Proved("--change", cured));

        // With one file for both drives.
        Assert.Equal(Reported(car), Proved());
    }

    private string[] Reported(params string[] more)
    {
        var said = Spoken.Of(
        [
            "report", .. more, "--load", LarchLane.Load, "--drive", scratch["before.csv"], "--drive", scratch["after.csv"], "--parts", "prove",
            "--out", scratch["r.html"],
        ]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        var page = PageText.Plain(File.ReadAllText(scratch["r.html"]));
        return Numbers(page);
    }

    private string[] Proved(params string[] more)
    {
        var said = Spoken.Of(
        [
            "prove", "--before", scratch["before.csv"], "--after", scratch["after.csv"], "--car", scratch["fern-saloon.yaml"], "--load",
            LarchLane.Load, "--what-changed", .. more,
        ]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        return Numbers(said.Results);
    }

    // What is printed between the head of the table of cars and that of their changes.
    private static string[] Numbers(string text)
    {
        var from = text.IndexOf(Heading, StringComparison.Ordinal);
        Assert.True(from >= 0, text);
        return [.. Regex.Matches(text[from..text.IndexOf("What changed in the car", from, StringComparison.Ordinal)], @"(?<!\S)\d+\.\d+(?!\S)")
            .Select(m => m.Value)];
    }
}
