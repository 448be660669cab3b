namespace Heaveline.Tests.Files;

public class DecimalCommaTests
{
    [Theory]
    [InlineData("height: 0.55 m}", "height: 0,55 m}", "body centre of gravity height: 0,55 is cut at its comma", "Write 0.55,")]
    [InlineData("[0.1 m/s, 120 N]", "[0,1 m/s, 120 N]", "rear damper bump item 1 item 1: 0,1 is cut at its comma", "Write 0.1,")]
    [InlineData("left: 0.35 m", "left: 0,35 m", "seats driver left: 0,35 is cut at its comma", "Write 0.35,")]
    public void In_braces_and_brackets_a_cut_number_is_refused_once_with_the_right_word(string old, string comma, string message, string advice)
    {
        var reading = TextCar.Read(TextCar.With(old, comma));
        var refusal = Assert.Single(reading.Refusals);
        Assert.StartsWith(message, refusal.Message, StringComparison.Ordinal);
        Assert.Contains(advice, refusal.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void Outside_of_them_it_is_understood()
    {
        var reading = TextCar.Read(TextCar.With("rate: 22 N/mm", "rate: 22,5 N/mm"));
        Assert.True(reading.Value is not null, reading.Format());
        Assert.Equal(22500.0, Assert.IsType<Heaveline.Cars.LinearSpring>(reading.Value.Front.Spring.Law).Rate.Si, 1e-9);
    }
}
