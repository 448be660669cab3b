using Heaveline.Numerics;

namespace Heaveline.Tests.Numerics;

public unsafe class LaneLayoutTests
{
    [Fact]
    public void Every_place_of_a_lane_is_written_and_read_where_the_lane_has_it()
    {
        Holds<ScalarLane>();
        Holds<Lane128>();
        Holds<Lane256>();
        Holds<Lane512>();
        Holds<FloatLane128>();
        Holds<FloatLane256>();
        Holds<FloatLane512>();
    }

    [Fact]
    public void Dual_numbers_are_refused_in_place_of_being_overwritten()
    {
        var dual = new DualLane(2.0, 3.0);
        var at = &dual;
        Assert.Contains(nameof(DualLane), Assert.Throws<NotSupportedException>(() => LaneLayout<DualLane>.Put(at, 0, 7.0)).Message);
        Assert.Throws<NotSupportedException>(() => LaneLayout<DualLane>.At(at, 0));
        Assert.Equal((2.0, 3.0), (dual.Value, dual.Slope));
    }

    private static void Holds<T>()
        where T : unmanaged, ILane<T>
    {
        var lane = T.Of(-1.0);
        for (var place = 0; place < T.Count; place++)
        {
            LaneLayout<T>.Put(&lane, place, place + 0.5);
        }

        var values = new double[T.Count];
        lane.To(values);
        for (var place = 0; place < T.Count; place++)
        {
            Assert.Equal((place + 0.5, place + 0.5), (values[place], LaneLayout<T>.At(&lane, place)));
        }
    }
}
