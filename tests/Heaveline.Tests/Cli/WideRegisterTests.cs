using System.Diagnostics;
using System.Text.Json.Nodes;

namespace Heaveline.Tests.Cli;

/// <summary>A machine without wide registers answers the same to rounding: docs/answers.md says how much that is.</summary>
public class WideRegisterTests
{
    // What docs/answers.md says, with room for another map: sums of a few thousand terms in another order.
    private const double Rounding = 1e-11;

    [Theory]
    [InlineData("DOTNET_EnableAVX2")]
    [InlineData("DOTNET_EnableHWIntrinsic")]
    public void A_map_without_wide_registers_has_the_same_words_and_numbers_but_for_rounding(string without)
    {
        string[] line =
        [
            "rule", Path.Combine(House.Checkout.Root, "examples", "garage", "fern-saloon.yaml"), "--load", "driver", "--from", "40 km/h", "--to",
            "100 km/h", "--speeds", "2", "--json",
        ];
        var start = new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "Heaveline.Cli"), line) { RedirectStandardOutput = true };
        start.Environment[without] = "0";
        using var program = Process.Start(start)!;
        var narrow = JsonNode.Parse(program.StandardOutput.ReadToEnd())!;
        program.WaitForExit();
        Assert.Equal(0, program.ExitCode);

        var wide = new AnswerJson(Spoken.Of(line)).Root;
        var (one, other) = (Leaves(wide).ToList(), Leaves(narrow).ToList());
        Assert.Equal(one.Count, other.Count);
        Assert.All(one.Zip(other), pair =>
        {
            if (pair.First is double expected && pair.Second is double found)
            {
                Assert.True(Math.Abs(found - expected) <= Rounding * Math.Abs(expected), $"{expected:R} and {found:R}");
            }
            else if (!Equals(pair.First, pair.Second))
            {
                // The path of the file differs between the two, nothing else.
                Assert.EndsWith("fern-saloon.yaml", $"{pair.First}", StringComparison.Ordinal);
                Assert.EndsWith("fern-saloon.yaml", $"{pair.Second}", StringComparison.Ordinal);
            }
        });
    }

    private static IEnumerable<object?> Leaves(JsonNode? node) => node switch
    {
        JsonObject group => group.SelectMany(entry => Leaves(entry.Value).Prepend(entry.Key)),
        JsonArray list => list.SelectMany(Leaves),
        JsonValue value => [value.TryGetValue<double>(out var number) ? number : value.ToString()],
        _ => [null],
    };
}
