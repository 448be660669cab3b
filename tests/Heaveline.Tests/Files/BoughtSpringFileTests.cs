using Heaveline.Cars;
using Heaveline.Models;

namespace Heaveline.Tests.Files;

public class BoughtSpringFileTests
{
    private const string Lengths = "    spring-per-wheel: 0.90\n    free-length: 400 mm\n";
    private const string Bought = "  bought-spring: {rate: 25 N/mm ± 3 %, free-length: 380 mm ± 2 mm, block-length: 150 mm, seat: 6 mm}\n";

    [Fact]
    public void A_bought_spring_takes_the_place_of_the_one_that_was_weighed()
    {
        var reading = TextCar.Read(Text(Bought));
        Assert.Empty(reading.Refusals);
        var spring = reading.Value!.Front.Spring;
        Assert.Equal(25e3, ((LinearSpring)spring.Law).Rate.Si);
        Assert.Equal(0.90, spring.MotionRatio.AtReference.Si);
        Assert.Equal((0.380, 0.002, 0.150), (spring.FreeLength!.Value.Si, spring.FreeLength.Value.Doubt.HalfWidth, spring.BlockLength!.Value.Si));
        Assert.Equal(0.006, spring.Swap!.Seat.Si);
        Assert.Equal((22e3, 0.400), (((LinearSpring)spring.Swap.Before.Law).Rate.Si, spring.Swap.Before.FreeLength!.Value.Si));

        // 265 kg on a wheel over 0.9 press 22 N/mm by 131.25 mm and 25 N/mm by 115.50 mm: 268.75 mm of seats, 6 mm packed, less 264.50 mm of spring.
        var height = ((0.380 - (265.0 * 9.80665 / 0.9 / 25e3)) - (0.400 - (265.0 * 9.80665 / 0.9 / 22e3) - 0.006)) / 0.9;
        Assert.Equal(height, RideModel.Of(reading.Value).Trim.FrontHeight, 2e-5);
    }

    [Fact]
    public void A_file_without_lengths_says_nothing_of_them()
    {
        var spring = TextCar.Read(TextCar.Sound).Value!.Front.Spring;
        Assert.False(spring.HasLengths);
        Assert.Null(RideModel.Of(TextCar.Read(TextCar.Sound).Value!).Numbers.Elements.Springs[0].Touch);
    }

    [Theory]
    [InlineData(
        "  bought-spring: {rate: 25 N/mm, free-length: 380 mm, seat: 6 mm, preload: 10 mm}\n",
        12,
        "front bought spring seat is given beside preload, which says where the spring stands already.",
        "Keep the one")]
    [InlineData(
        "  bought-spring: {rate: 25 N/mm, preload: 10 mm}\n",
        12,
        "front bought spring gives preload, which counts from full droop, but the axle has no rebound-stop.",
        "Describe the rebound-stop")]
    [InlineData(
        "  bought-spring: {rate: 25 N/mm, seat: 6 mm}\n",
        12,
        "front bought spring gives seat, but not from where it counts: the lengths are missing.",
        "Add free-length here")]
    [InlineData(
        "  bought-spring: {rate: 25 N/mm, free-length: 380 mm, block-length: 390 mm}\n",
        12,
        "front bought spring block length is 390 mm; it must be below free-length, 380 mm.",
        "Measure both out of the car")]
    [InlineData(
        "  bought-spring: {rate: -25 N/mm, free-length: 380 mm}\n",
        12,
        "front bought spring rate is -25 N/mm; it must be above 0 N/mm.",
        "positive number")]
    [InlineData(
        "  bought-spring: {rate: 25 N/mm, free-length: -380 mm}\n",
        12,
        "front bought spring free length is -380 mm; it must be above 0 mm.",
        "Measure it out of the car")]
    [InlineData(
        "  bought-spring: {table: [[0 mm, 100 N], [50 mm, 1500 N], [150 mm, 4500 N]], free-length: 380 mm}\n",
        12,
        "front bought spring free length is given beside a table that does not begin where the spring is free: its first row must have 0 N, its "
            + "second one more.",
        "Begin the table")]
    [InlineData(
        "  bought-spring: {free-length: 380 mm}\n",
        12,
        "front bought spring has none of rate, table, coil; it must have one.",
        "")]
    [InlineData(
        "  bought-spring: {rate: 9 N/mm, free-length: 360 mm, block-length: 200 mm}\n",
        12,
        "load state is 'empty' with 85 mm of travel at the front left wheel; it must be below the 76 mm at which the coils of its spring touch.",
        "stiffer or longer")]
    public void What_cannot_be_is_refused_in_its_place(string bought, int line, string message, string advice)
    {
        var refusal = Assert.Single(TextCar.Read(Text(bought)).Refusals);
        Assert.Equal(message, refusal.Message);
        Assert.Equal(line, refusal.Line);
        Assert.Contains(advice, refusal.Advice, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(
        "free-length: 400 mm", "free-length: 400 mm\n    installed-length: 410 mm", 12,
        "front spring installed length is 410 mm; it must be below free-length, 400 mm.")]
    [InlineData(
        "free-length: 400 mm", "installed-length: 260 mm\n    block-length: 270 mm", 12,
        "front spring block length is 270 mm; it must be below installed-length, 260 mm.")]
    [InlineData("free-length: 400 mm", "free-length: 0 mm", 11, "front spring free length is 0 mm; it must be above 0 mm.")]
    public void Lengths_of_the_spring_that_was_weighed_must_go_together(string old, string spoiled, int line, string message)
    {
        var refusal = Assert.Single(TextCar.Read(Text("").Replace(old, spoiled, StringComparison.Ordinal)).Refusals);
        Assert.Equal((line, message), (refusal.Line, refusal.Message));
    }

    [Fact]
    public void A_rate_at_the_wheel_says_nothing_of_seats()
    {
        var length = Assert.Single(TextCar.Read(TextCar.With("{wheel-rate: 17 N/mm}", "{wheel-rate: 17 N/mm, free-length: 400 mm}")).Refusals);
        Assert.StartsWith("rear spring free length is given beside wheel-rate", length.Message, StringComparison.Ordinal);
        var bought = Assert.Single(TextCar.Read(TextCar.With(
            "  spring: {wheel-rate: 17 N/mm}\n", "  spring: {wheel-rate: 17 N/mm}\n  bought-spring: {rate: 20 N/mm}\n")).Refusals);
        Assert.StartsWith("rear bought spring stands beside a spring that is given by wheel-rate", bought.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "{rate: 25 N/mm}", "front bought spring does not say where it stands between its seats")]
    [InlineData(
        "    free-length: 400 mm\n",
        "{rate: 25 N/mm, free-length: 380 mm, block-length: 180 mm}",
        "is reached at 99 mm of bump travel, 1 mm before")]
    [InlineData("    free-length: 400 mm\n    installed-length: 280 mm\n", null, "is 280 mm, but 269 mm by free-length")]
    public void What_is_doubtful_is_told(string lengths, string? bought, string words)
    {
        var text = TextCar.With(
            "    spring-per-wheel: 0.90\n", "    spring-per-wheel: 0.90\n" + lengths + (bought is null ? "" : $"  bought-spring: {bought}\n"));
        var reading = TextCar.Read(text);
        Assert.Empty(reading.Refusals);
        Assert.Contains(reading.Warnings, w => w.Message.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void A_spring_that_falls_loose_is_told_with_its_cure()
    {
        const string Tyre = "  tyre: {rate: 190 N/mm}\nrear:";
        var reading = TextCar.Read(Text("  bought-spring: {rate: 50 N/mm, free-length: 330 mm}\n")
            .Replace(Tyre, "  rebound-stop: {clearance: 80 mm, rate: 60 N/mm}\n" + Tyre, StringComparison.Ordinal));
        var warning = Assert.Single(reading.Warnings, w => w.Message.Contains("falls out of its seat", StringComparison.Ordinal));
        Assert.Equal(12, warning.Line);
        Assert.Contains("helper spring, or a strap", warning.Advice, StringComparison.Ordinal);
    }

    private static string Text(string bought) => TextCar.With("    spring-per-wheel: 0.90\n", Lengths + bought);
}
