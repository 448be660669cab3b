using CsCheck;
using Heaveline.Search;

namespace Heaveline.Tests.Search;

public class SetupFrontTests
{
    private static readonly Gen<double[]> Setups =
        from count in Gen.Int[1, 60]
        from values in Gen.Int[1, 9].Array[3 * count]
        select values.Select(v => (double)v).ToArray();

    [Fact]
    public void The_front_is_whoever_nobody_beats() => Setups.Sample(wishes =>
    {
        var n = wishes.Length / 3;
        int[] plain = [.. Enumerable.Range(0, n).Where(i => !Enumerable.Range(0, n).Any(j => SetupFront.Beats(wishes, 3, j, i)))];
        Assert.Equal(plain, SetupFront.Of(wishes, 3).Order());
    });

    [Fact]
    public void A_setup_without_a_number_is_never_compared()
    {
        double[] wishes = [1.0, 2.0, double.NaN, 0.5];
        Assert.Throws<ArgumentException>(() => SetupFront.Of(wishes, 2));
        Assert.Equal([0], SetupFront.Of(wishes, 2, [0]));
    }

    [Fact]
    public void The_shell_holds_the_front_and_whoever_is_beaten_by_less_than_the_margin() => Setups.Sample(wishes =>
    {
        const double Margin = 0.3;
        var n = wishes.Length / 3;
        var front = SetupFront.Of(wishes, 3);
        var inside = SetupShell.Of(wishes, 3, 2, front, Margin, 2, CancellationToken.None);
        for (var i = 0; i < n; i++)
        {
            var beaten = front.Any(f => f != i && wishes[3 * f] * (1.0 + Margin) <= wishes[3 * i]
                && wishes[(3 * f) + 1] * (1.0 + Margin) <= wishes[(3 * i) + 1] && wishes[(3 * f) + 2] <= wishes[(3 * i) + 2]);
            Assert.Equal(!beaten, inside[i]);
        }

        Assert.All(front, f => Assert.True(inside[f]));
    });
}
