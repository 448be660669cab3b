using Heaveline.Cars;

namespace Heaveline.Tests.Files;

public class TableDoubtTests
{
    private const string Damper = "damper-per-wheel: 0.9";
    private const string Rate = "rate: 22 N/mm";
    private const string Table = "table: [[0 mm, 0 N], [100 mm, 2200 N], [200 mm, 4600 N]]";
    private const string Stop = "{clearance: 60 mm, rate: 50 N/mm, solid-after: 40 mm}";

    [Theory]
    [InlineData("± 5 %", 0.05)]
    [InlineData("5 %", 0.05)]
    [InlineData("+/- 2.5%", 0.025)]
    [InlineData("+-10 %", 0.1)]
    [InlineData("± 0 %", 0.0)]
    public void A_damper_has_one_doubt_for_both_tables(string words, double halfWidth)
    {
        var car = Sound(TextCar.With(Damper, $"{Damper}\n    table-doubt: {words}"));
        var law = Assert.IsType<TableDamper>(car.Rear.Damper.Law);
        Assert.Equal((1.0, halfWidth), (law.Factor.Si, Math.Round(law.Factor.Doubt.HalfWidth, 12)));
        Assert.Equal(law.Factor, law.Bump.Factor);
        Assert.Equal(law.Factor, law.Rebound.Factor);
        Assert.Equal(600.0, law.Rebound.Force[^1]);
    }

    [Fact]
    public void Dampers_of_one_rig_and_springs_of_one_tester_share_their_error()
    {
        var car = Sound(TextCar.With(Damper, $"{Damper}\n    table-doubt: ± 5 %\n    rig: club damper rig"));
        Assert.Equal("club damper rig", Assert.IsType<TableDamper>(car.Rear.Damper.Law).Factor.Doubt.Shared);
        car = Sound(TextCar.With(Rate, $"{Table}\n    table-doubt: ± 3 %\n    tester: club press"));
        var spring = Assert.IsType<TableSpring>(car.Front.Spring.Law).Table.Factor;
        Assert.Equal((0.03, "club press", false), (Math.Round(spring.Doubt.HalfWidth, 12), spring.Doubt.Shared, spring.Doubt.OfOneCar));
    }

    [Fact]
    public void A_stops_table_has_a_doubt_too() =>
        Assert.Equal(
            0.1,
            Sound(TextCar.With(
                Stop,
                "{clearance: 60 mm, table: [[10 mm, 300 N], [25 mm, 1500 N]], table-doubt: 10 %}")).Front.BumpStop!.Table!.Factor.Doubt.HalfWidth,
            1e-12);

    [Theory]
    [InlineData("± 5", "per cent")]
    [InlineData("0.05", "per cent")]
    [InlineData("± 20 N", "force")]
    [InlineData("5 % ± 1", "per cent")]
    [InlineData("-5 %", "0 % or above")]
    [InlineData("150 %", "below 100 %")]
    public void What_is_no_per_cent_is_refused_at_its_place(string words, string why)
    {
        var refusal = Assert.Single(TextCar.Read(TextCar.With(Damper, $"{Damper}\n    table-doubt: {words}")).Refusals);
        Assert.Contains(why, refusal.Message, StringComparison.Ordinal);
        Assert.Equal(22, refusal.Line);
        Assert.True(refusal.Column > 16, $"{refusal.Line}:{refusal.Column}");
    }

    [Theory]
    [InlineData(Rate, Rate + "\n    table-doubt: ± 5 %", "front spring table doubt is given without a table")]
    [InlineData("{damping-ratio: 0.3}", "{damping-ratio: 0.3, table-doubt: ± 5 %}", "front damper table doubt is given without a table")]
    [InlineData("{damping-ratio: 0.3}", "{damping-ratio: 0.3, rig: club rig}", "no rig measured")]
    [InlineData(Stop, "{clearance: 60 mm, rate: 50 N/mm, table-doubt: ± 5 %}", "front bump stop table doubt is given without a table")]
    public void A_doubt_without_its_table_is_refused(string old, string spoiled, string why) =>
        Assert.Contains(why, Assert.Single(TextCar.Read(TextCar.With(old, spoiled)).Refusals).Message, StringComparison.Ordinal);

    // It would look as if it counted.
    [Theory]
    [InlineData("bump: [[0.1 m/s, 120 N], [0.3 m/s, 300 N]]", "bump: [[0.1 m/s, 120 N], [0.3 m/s, 300 N ± 3 %]]")]
    [InlineData(Rate, "table: [[0 mm, 0 N], [100 mm ± 1 mm, 2200 N]]")]
    public void A_row_with_a_doubt_of_its_own_is_refused_with_the_key_to_write(string old, string spoiled)
    {
        var refusal = Assert.Single(TextCar.Read(TextCar.With(old, spoiled)).Refusals);
        Assert.Contains("doubt of its own", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("table-doubt", refusal.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sweep_whose_rows_have_doubts_is_warned_of()
    {
        var reading = TextCar.Read(TextCar.With("spring-per-wheel: 0.90", "sweep: [[-40 mm, -36 mm ± 1 mm], [20 mm, 18 mm], [40 mm, 36 mm]]"));
        Assert.Empty(reading.Refusals);
        Assert.Contains(reading.Warnings, w => w.Message.Contains("which is not followed", StringComparison.Ordinal));
    }

    [Fact]
    public void Exponents_and_rebound_per_bump_keep_their_doubts()
    {
        var car = Sound(TextCar.With("{damping-ratio: 0.3}", "{damping-ratio: 0.3, rebound-per-bump: 2 ± 10 %}"));
        Assert.Equal(0.2, Assert.IsType<RatioDamper>(car.Front.Damper.Law).ReboundPerBump.Doubt.HalfWidth, 1e-12);
        car = Sound(TextCar.With(Stop, "{clearance: 60 mm, rate: 50 N/mm, exponent: 2 ± 0.3}"));
        Assert.Equal(0.3, car.Front.BumpStop!.Exponent.Doubt.HalfWidth, 1e-12);
    }

    private static Car Sound(string text)
    {
        var reading = TextCar.Read(text);
        Assert.Empty(reading.Refusals);
        return reading.Value!;
    }
}
