using System.Text.RegularExpressions;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Models;

namespace Heaveline.Tests.Files;

/// <summary>Variants over a car on bought springs.</summary>
public sealed class BoughtVariantTests : IDisposable
{
    private const string Bought = "    spring-per-wheel: 0.90\n    free-length: 400 mm\n  bought-spring: {rate: 25 N/mm, free-length: 380 mm}\n";
    private readonly TemporaryFolder folder = new();

    public BoughtVariantTests() =>
        folder.Write("base.yaml", TextCar.With("    spring-per-wheel: 0.90\n", Bought));

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("spring: {rate: 24 N/mm}", 1)]
    [InlineData("bought-spring: {rate: 24 N/mm}", 0)]
    [InlineData("spring: {free-length: 401 mm}", 0)]
    public void Who_turns_the_spring_that_was_weighed_under_a_bought_one_is_told_so(string change, int told)
    {
        var path = folder.Write("turned.yaml", $"variant: turned\nof: base.yaml\nchange:\n  front: {{{change}}}\n");
        var reading = CarFile.Load(path);
        Assert.Empty(reading.Refusals);
        var warnings = reading.Warnings.Where(w => w.Message.Contains("changes the spring that was weighed", StringComparison.Ordinal)).ToList();
        Assert.Equal(told, warnings.Count);
        Assert.All(warnings, w => Assert.Equal((path, 4), (w.File, w.Line)));
        Assert.All(warnings, w => Assert.StartsWith("front spring rate changes", w.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void A_base_keeps_its_spring_without_a_word() =>
        Assert.DoesNotContain(
            CarFile.Load(Path.Combine(folder.Root, "base.yaml")).Warnings,
            w => w.Message.Contains("changes the spring", StringComparison.Ordinal));

    // The coils are made to touch a twentieth of a millimetre above where the driver lets the front left wheel.
    [Fact]
    public void A_load_that_a_bought_spring_cannot_carry_is_refused_at_that_spring_with_digits_that_differ()
    {
        var roomy = CarFile.Load(Soft(150.0)).Value!;
        var model = RideModel.Of(roomy, Assert.Single(roomy.LoadStates));
        var travel = 1000.0 * model.Trim.Travel[0];
        var length = 150.0 + (0.9 * 1000.0 * CoilStanding.Of(model, AxleEnd.Front)!.Block!.Value);
        Assert.Equal(Math.Round(travel), Math.Round(travel - 0.05));
        var path = Soft(length - (0.9 * (travel - 0.05)));
        var refusal = Assert.Single(CarFile.Load(path).Refusals);
        Assert.Equal((path, 4), (refusal.File, refusal.Line));
        Assert.StartsWith("load state is 'driver' with ", refusal.Message, StringComparison.Ordinal);
        string[] told = [.. Regex.Matches(refusal.Message, "([0-9.]+) mm").Select(m => m.Groups[1].Value)];
        Assert.Equal(2, told.Distinct().Count());
        Assert.StartsWith(told[1].Split('.')[0] + ".", told[1], StringComparison.Ordinal);
    }

    // A base's own load beside a spring that only the variant softens.
    [Fact]
    public void A_load_that_a_variant_s_spring_cannot_carry_is_refused_at_the_spring_of_the_variant()
    {
        folder.Write("plain.yaml", TextCar.With("mass: 75 kg", "mass: 1400 kg"));
        var path = folder.Write("softer.yaml", "variant: softer\nof: plain.yaml\nchange:\n  front:\n    spring:\n      rate: 10 N/mm\n");
        var refusal = Assert.Single(CarFile.Load(path).Refusals);
        Assert.Contains("load state is 'driver' with ", refusal.Message, StringComparison.Ordinal);
        Assert.Equal((path, 6), (refusal.File, refusal.Line));
    }

    private string Soft(double block) => folder.Write("soft.yaml", FormattableString.Invariant(
        $"variant: soft\nof: base.yaml\nchange:\n  front: {{bought-spring: {{rate: 25 N/mm, block-length: {block:R} mm}}}}\n"));
}
