using Heaveline.Files;
using Heaveline.Files.Roads;

namespace Heaveline.Tests.Files;

/// <summary>
/// A measured stone-block test road, 10 m by 10 mm (OpenCRG, crg-bin/belgian_block.crg, Apache License 2.0): a grid of heights in mm with an
/// offset of 2.1 m and empty cells at its edges.
/// </summary>
public class StoneBlockRoadTests
{
    [Fact]
    public void Two_whole_tracks_of_a_measured_stone_block_road_are_driven_as_measured()
    {
        var (text, left, right) = StoneBlocks.Tracks("0.00", "-1.37");
        var reading = MeasuredProfileFile.Read(new SourceText("stone-block.csv", text));
        Assert.Empty(reading.Refusals);
        var road = reading.Value!;
        Assert.Equal(10.0, road.End, 1e-9);
        Assert.Equal(1001, road.Left.Knots.Length);
        var datum = 0.5 * (left[0] + right[0]);
        for (var i = 0; i < left.Count; i++)
        {
            Assert.Equal(1e-3 * (left[i] - datum), road.Left.Height(road.Left.Knots[i]), 1e-12);
            Assert.Equal(1e-3 * (right[i] - datum), road.Right.Height(road.Right.Knots[i]), 1e-12);
        }

        // The offset of 2.1 m is gone, and the stones remain.
        Assert.InRange(left.Max() - left.Min(), 10.0, 200.0);
        Assert.InRange(Math.Abs(road.Left.StartHeight), 0.0, 0.1);
        var averaged = road.AveragedOver(new(0.12));
        Assert.False(averaged.HasJump);
        Assert.True(Steepest(averaged.Left) < 0.5 * Steepest(road.Left), "a contact patch longer than the joints takes most of their slope");
    }

    [Fact]
    public void A_track_at_the_measured_edge_is_refused_gap_by_gap()
    {
        var (text, _, right) = StoneBlocks.Tracks("0.00", "-1.70");
        var reading = MeasuredProfileFile.Read(new SourceText("stone-block.csv", text));
        Assert.Null(reading.Value);
        // A thousand of them: after 300 the reader gives up, and says so before all others.
        Assert.InRange(right.Count(double.IsNaN), 301, int.MaxValue);
        Assert.Equal(301, reading.Refusals.Count);
        Assert.Equal((2, "right is empty; it must be a number."), (reading.Refusals[1].Line, reading.Refusals[1].Message));
    }

    private static double Steepest(Heaveline.Roads.Profile profile)
    {
        var steepest = 0.0;
        for (var x = 0.5; x < 9.5; x += 0.001)
        {
            steepest = Math.Max(steepest, Math.Abs(profile.Slope(x)));
        }

        return steepest;
    }
}
