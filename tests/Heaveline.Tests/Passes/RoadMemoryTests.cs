using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

public sealed class RoadMemoryTests
{
    private static readonly (Profile, double, double)[] Here = [(Profile.Flat, 0.0, 20.0)];
    private static readonly (Profile, double, double)[] Faster = [(Profile.Flat, 0.0, 21.0)];

    private int reads;

    [Fact]
    public void Every_stretch_of_a_road_is_read_once_for_all_who_meet_it_one_after_the_other()
    {
        using var memory = new RoadMemory();
        for (var group = 0; group < 3; group++)
        {
            for (var k = 0; k < 5; k++)
            {
                Assert.Equal(Numbers(k), Table(memory, Here, k));
            }
        }

        Assert.Equal(5, reads);
    }

    [Fact]
    public void A_road_longer_than_the_memory_is_read_right_all_the_same()
    {
        using var memory = new RoadMemory();
        for (var group = 0; group < 2; group++)
        {
            for (var k = 0; k < 40; k++)
            {
                Assert.Equal(Numbers(k), Table(memory, Here, k));
            }
        }

        // The first fifteen are kept.
        Assert.Equal(40 + 25, reads);
    }

    [Fact]
    public void Another_road_speed_or_clock_is_read_anew()
    {
        using var memory = new RoadMemory();
        Table(memory, Here, 0);
        Table(memory, Faster, 0);
        Table(memory, Here, 0);
        Table(memory, Here, 0, step: 2e-3);
        Assert.Equal(4, reads);
    }

    [Fact]
    public void A_reading_that_was_stopped_leaves_nothing_to_be_met_again()
    {
        using var memory = new RoadMemory();
        Assert.Throws<OperationCanceledException>(() => memory.Table(
            Here, 0.0, 1e-3, new RoadBlock(0, 1, 0, 4), 8, (_, _) => throw new OperationCanceledException()));
        Assert.Equal(Numbers(0), Table(memory, Here, 0));
        Assert.Equal(1, reads);
    }

    private static double[] Numbers(int k) => [.. Enumerable.Range(0, 32).Select(i => (100.0 * k) + i)];

    private double[] Table(RoadMemory memory, (Profile, double, double)[] road, int k, double step = 1e-3) =>
        memory.Table(road, 0.0, step, new RoadBlock(k, 1, 4 * k, 4), 8, (table, length) =>
        {
            reads++;
            Numbers(k).AsSpan(0, length).CopyTo(table);
        }).ToArray();
}
