namespace Heaveline.Tests.Files;

/// <summary>Lengths that no spring can have under the load of the weighing, or with which the car hangs in its stops.</summary>
public class ImpossibleLengthTests
{
    private const string Share = "    spring-per-wheel: 0.90\n";

    // 265 kg on a wheel over 0.9 press 22 N/mm by 131 mm.
    [Fact]
    public void A_free_length_that_the_weighing_presses_to_nothing_is_refused()
    {
        var refusal = Assert.Single(TextCar.Read(TextCar.With(Share, Share + "    free-length: 100 mm\n")).Refusals);
        Assert.Equal(
            "front spring free length is 100 mm; the weighing presses the spring together by 131 mm, so it must be longer than 131 mm.",
            refusal.Message);
        Assert.Equal(11, refusal.Line);
    }

    [Fact]
    public void A_car_that_hangs_in_its_rebound_stops_is_told_so_and_no_slip_of_a_rate_is_blamed()
    {
        var reading = TextCar.Read(TextCar.With(
            Share,
            Share + "    free-length: 400 mm\n  bought-spring: {rate: 25 N/mm, free-length: 460 mm}\n"
                + "  rebound-stop: {clearance: 50 mm, rate: 80 N/mm}\n"));
        Assert.Empty(reading.Refusals);
        var warning = Assert.Single(reading.Warnings, warning => warning.Message.Contains("rebound stops stretched by", StringComparison.Ordinal));
        Assert.StartsWith("under 'empty' the front stands with its rebound stops stretched by ", warning.Message);
        Assert.Equal(13, warning.Line);
        Assert.DoesNotContain(reading.Warnings, other => other.Advice.Contains("Likely slip", StringComparison.Ordinal));
    }
}
