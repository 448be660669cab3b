using Heaveline.Quantities;
using Heaveline.Worksheets;

namespace Heaveline.Tests.Cars;

public class DecaySheetTests
{
    // By hand: 62, −23 and 9 mm of rest. ln(62/9)/2 = 0.9649; 0.9649/√(π² + 0.9649²) = 0.2936.
    [Fact]
    public void The_decrement_of_two_half_swings_is_the_share_of_critical_damping()
    {
        var sheet = DecaySheet.Of(M(0.652), [M(0.590), M(0.675), M(0.643)]);
        Assert.Equal(2, sheet.HalfSwings);
        Assert.Equal(0.2936, sheet.Swing.Si, 5e-5);
        Assert.Equal(1.17 * 0.2936, sheet.AtWheel.Si, 1e-4);
        Assert.Contains(sheet.Notes, note => note.Id == "tyre-unknown");
        Assert.DoesNotContain(sheet.Notes, note => note.Id is "one-way" or "small");
        // A millimetre of the last turn, ½/9, of rest, ½·(1/9 − 1/62), of the first, ½/62: 0.0735 in λ, times π²/(π² + λ²)^1.5 = 0.278.
        Assert.Equal(0.0204, sheet.Swing.Doubt.HalfWidth, 3e-4);
    }

    // A mass on spring and damper over a tyre without a wheel's mass: (c·m/k_t)·s³ + m·(1 + k/k_t)·s² + c·s + k = 0, its real root taken out.
    [Theory]
    [InlineData(0.2, 6.0)]
    [InlineData(0.3, 9.0)]
    [InlineData(0.4, 15.0)]
    public void What_is_planted_at_the_wheel_is_found_through_the_tyre(double planted, double tyre)
    {
        var (a, b, c, d) = (2.0 * planted / tyre, 1.0 + (1.0 / tyre), 2.0 * planted, 1.0);
        var real = -b / a;
        for (var k = 0; k < 50; k++)
        {
            real -= ((((((a * real) + b) * real) + c) * real) + d) / ((((3.0 * a * real) + (2.0 * b)) * real) + c);
        }

        // s² + (b/a + real)·s − d/(a·real).
        var (rate, square) = ((b / a) + real, -d / (a * real));
        var swing = rate / (2.0 * Math.Sqrt(square));
        var halves = Math.Exp(-Math.PI * swing / Math.Sqrt(1.0 - (swing * swing)));
        var sheet = DecaySheet.Of(
            M(0.6), [.. Enumerable.Range(0, 3).Select(k => M(0.6 - (0.08 * Math.Pow(-halves, k))))], new(1000.0), new(1000.0 * tyre));
        Assert.Equal(swing, sheet.Swing.Si, 1e-9);
        Assert.Equal(planted, sheet.AtWheel.Si, 0.05 * planted);
    }

    // x'' + 2·ζ·ω·x' + ω²·(x + d·sign x') = 0: each half swing goes about d on the side that it comes from.
    private static Amount<Length>[] Dying(double ratio, double friction, double first, int turns)
    {
        var left = Math.Exp(-Math.PI * ratio / Math.Sqrt(1.0 - (ratio * ratio)));
        var (away, all) = (first, new List<Amount<Length>>());
        for (var k = 0; k < turns; k++)
        {
            all.Add(M(0.65 + (k % 2 == 0 ? -away : away)));
            away = (left * (away - friction)) - friction;
        }

        return [.. all];
    }

    // 0.21 and 4 mm: what the sheet said of a car of 0.27 at the wheel was 0.34.
    [Theory]
    [InlineData(0.21, 0.004)]
    [InlineData(0.15, 0.008)]
    [InlineData(0.30, 0.001)]
    public void Friction_that_is_known_is_taken_out_and_what_is_not_known_is_said(double ratio, double friction)
    {
        var turns = Dying(ratio, friction, 0.08, 3);
        var without = DecaySheet.Of(M(0.65), turns);
        Assert.True(without.Swing.Si > ratio + 0.01);
        Assert.Null(without.Friction);
        Assert.Contains("the ± does not hold it", without.Notes.Single(note => note.Id == "friction").Text, StringComparison.Ordinal);
        var with = DecaySheet.Of(M(0.65), turns, friction: new(friction, new Doubt(0.001)));
        Assert.Equal(ratio, with.Swing.Si, 1e-9);
        Assert.True(with.Swing.Doubt.HalfWidth > DecaySheet.Of(M(0.65), turns, friction: new(friction, new Doubt(1e-6))).Swing.Doubt.HalfWidth);
    }

    [Fact]
    public void Four_turns_tell_damping_and_friction_apart_unless_bump_and_rebound_are_damped_unlike()
    {
        var sheet = DecaySheet.Of(M(0.65), Dying(0.15, 0.003, 0.10, 4));
        Assert.Equal(0.15, sheet.Swing.Si, 1e-9);
        Assert.Equal(0.003, sheet.Friction!.Value.Si, 1e-9);
        Assert.Contains(
            "The swings themselves tell friction's half-width, 3 ± ", sheet.Notes.Single(n => n.Id == "friction").Text, StringComparison.Ordinal);
        // r = 0.62 and 0.205 in turn, first with the softer side, and no friction at all.
        var unlike = DecaySheet.Of(M(0.65), [M(0.71), M(0.6128), M(0.6576), M(0.6453)]);
        Assert.Null(unlike.Friction);
        Assert.Equal(Math.Log(60.0 / 4.7) / 3.0 / Math.Sqrt((Math.PI * Math.PI) + Math.Pow(Math.Log(60.0 / 4.7) / 3.0, 2.0)), unlike.Swing.Si, 1e-9);
        var much = Assert.Throws<RefusedValueException>(() => DecaySheet.Of(M(0.65), Dying(0.2, 0.001, 0.08, 3), friction: M(0.02)));
        Assert.StartsWith("friction's half-width is 0.02 m; it must be at least 0 and below", much.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Turns_that_do_not_die_about_the_height_of_rest_are_refused()
    {
        Assert.Throws<RefusedValueException>(() => DecaySheet.Of(M(0.65), [M(0.59)]));
        Assert.Throws<RefusedValueException>(() => DecaySheet.Of(M(0.65), [M(0.59), M(0.60)]));
        var refused = Assert.Throws<RefusedValueException>(() => DecaySheet.Of(M(0.65), [M(0.63), M(0.68)]));
        Assert.StartsWith("turn 2 is 0.68 m; it must be on the other side", refused.Message, StringComparison.Ordinal);
        var still = Assert.Throws<RefusedValueException>(
            () => DecaySheet.Of(M(0.65), [M(0.59), M(0.67), M(0.653)], friction: new(0.004, new Doubt(0.001))));
        Assert.Contains("friction's half-width, 4 mm", still.Message, StringComparison.Ordinal);
        Assert.Contains("leave this one out", still.Message, StringComparison.Ordinal);
        Assert.Contains(DecaySheet.Of(M(0.65), [M(0.59), M(0.67)]).Notes, note => note.Id == "one-way");
        Assert.Contains(DecaySheet.Of(M(0.65), [M(0.59), M(0.67), M(0.648)]).Notes, note => note.Id == "small");
    }

    [Fact]
    public void A_turn_that_is_not_told_from_rest_is_refused_and_its_doubt_never_shrinks()
    {
        string Refused(Amount<Length> rest, params Amount<Length>[] turns) =>
            Assert.Throws<RefusedValueException>(() => DecaySheet.Of(rest, turns)).Message;
        var (first, second) = (M(0.590), M(0.675));
        Assert.StartsWith("turn 3 is 643 ± 9 mm", Refused(M(0.652), first, second, new(0.643, new Doubt(0.009))), StringComparison.Ordinal);
        Assert.StartsWith("height of rest is 652 ± 900 mm", Refused(new(0.652, new Doubt(0.9)), first, second), StringComparison.Ordinal);
        Assert.StartsWith("turn 1 is 590 m", Refused(M(0.652), M(590.0), second), StringComparison.Ordinal);
        double Doubt(double last) => DecaySheet.Of(M(0.652), [first, second, new(0.643, new Doubt(last))]).Swing.Doubt.HalfWidth;
        double[] doubts = [.. new[] { 0.001, 0.003, 0.005, 0.007, 0.0085 }.Select(Doubt)];
        Assert.Equal(doubts.Order(), doubts);
        // Nearly undamped: the decrement may be below nothing by what the readings may be off.
        double Undamped(double doubt) => DecaySheet.Of(M(0.6), [new(0.54, new Doubt(doubt)), M(0.6595)]).Swing.Doubt.HalfWidth;
        Assert.Equal(5.0, Undamped(0.02) / Undamped(0.004), 0.5);
    }

    [Fact]
    public void Rates_that_are_swapped_are_refused_and_the_missing_one_is_named()
    {
        Amount<Length>[] turns = [M(0.590), M(0.675), M(0.643)];
        var swapped = Assert.Throws<RefusedValueException>(() => DecaySheet.Of(M(0.652), turns, new(200e3), new(21e3)));
        Assert.Contains("Are the two swapped?", swapped.Advice, StringComparison.Ordinal);
        string Note(Amount<Stiffness>? spring, Amount<Stiffness>? tyre) =>
            DecaySheet.Of(M(0.652), turns, spring, tyre).Notes.Single(note => note.Id == "tyre-unknown").Text;
        Assert.StartsWith("The rate of the tyre is missing", Note(new(21e3), null), StringComparison.Ordinal);
        Assert.StartsWith("The rate of the spring at its wheel is missing", Note(null, new(200e3)), StringComparison.Ordinal);
    }

    private static Amount<Length> M(double metres) => new(metres);
}
