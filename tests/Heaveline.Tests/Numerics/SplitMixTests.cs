using Heaveline.Numerics;

namespace Heaveline.Tests.Numerics;

/// <summary>The random numbers by place.</summary>
public class SplitMixTests
{
    /// <summary>
    /// First numbers of SplitMix64 from seed 1234567, as public tests of the reference program carry them (Rosetta
    /// Code, "Pseudo-random numbers/Splitmix64").
    /// </summary>
    [Fact]
    public void The_numbers_are_those_of_the_reference()
    {
        ulong[] reference = [6457827717110365317UL, 3203168211198807973UL, 9817491932198370423UL, 4593380528125082431UL, 16408922859458223821UL];
        Assert.Equal(reference, Enumerable.Range(0, 5).Select(i => SplitMix.At(1234567UL, (ulong)i)));
        Assert.Equal(0xE220A8397B1DCDAFUL, SplitMix.At(0UL, 0UL));
    }

    /// <summary>Limits: five standard deviations of each statistic over 200 000 numbers.</summary>
    [Fact]
    public void Normal_numbers_have_the_moments_of_the_normal_law()
    {
        const int Count = 100_000;
        var numbers = Enumerable.Range(0, Count)
            .SelectMany(i => SplitMix.Normals(42UL, 2UL * (ulong)i) is var (a, b) ? new[] { a, b } : []).ToArray();
        double Moment(int power) => numbers.Average(x => Math.Pow(x, power));
        var unit = 5.0 / Math.Sqrt(numbers.Length);
        Assert.Equal(0.0, Moment(1), unit);
        Assert.Equal(1.0, Moment(2), unit * Math.Sqrt(2.0));
        Assert.Equal(0.0, Moment(3), unit * Math.Sqrt(15.0));
        Assert.Equal(3.0, Moment(4), unit * Math.Sqrt(96.0));
        Assert.Equal(0.0, numbers.Chunk(2).Average(pair => pair[0] * pair[1]), 5.0 / Math.Sqrt(Count));
    }

    [Fact]
    public void Uniform_numbers_stay_inside_their_ends()
    {
        Assert.All(Enumerable.Range(0, 100_000), i => Assert.InRange(SplitMix.Uniform(7UL, (ulong)i), double.Epsilon, Math.BitDecrement(1.0)));
    }
}
