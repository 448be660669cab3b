using Heaveline.Drives;
using Heaveline.Files.Drives;
using Heaveline.Tests.Drives.Lanes;
using Heaveline.Tests.Files.Drives;

namespace Heaveline.Tests.Drives;

/// <summary>The demo's planted drives and the answers that are expected of them.</summary>
public class LarchLaneTests
{
    [Fact]
    public void Nine_minutes_hold_24_crossings_of_four_sites_one_braked_one_after_the_slip()
    {
        foreach (var lane in new[] { LarchLane.Before, LarchLane.After, LarchLane.NoChange })
        {
            Assert.InRange(lane.Plan.Line.Length, 520.0, 620.0);
            Assert.Equal(24, lane.Plan.Crossings.Count);
            Assert.All(lane.Plan.Crossings.GroupBy(c => c.Site), site => Assert.Equal(6, site.Count()));
            Assert.Equal(["braked", "after the slip"], lane.Plan.Crossings.Select(c => c.Spoilt).Where(s => s.Length > 0));
            Assert.All(
                lane.Plan.Crossings.Where(c => c.Site != "Mill joint" && c.Spoilt.Length == 0),
                c => Assert.InRange(3.6 * c.Speed, 15.0, 50.0));
        }
    }

    [Fact]
    public void One_comma_file_and_three_with_decimal_commas_are_read_as_they_were_planted()
    {
        var before = Read([("larch-lane-before.csv", LaneWriter.Whole(LarchLane.Before.Log))]);
        var after = Read(LaneWriter.Apart(LarchLane.After.Log));
        foreach (var (read, planted) in new[] { (before, LarchLane.Before.Log), (after, LarchLane.After.Log) })
        {
            foreach (var kind in new[] { SensorKind.Acceleration, SensorKind.TurnRate })
            {
                var (a, b) = (read.Of(kind)!, planted.Of(kind)!);
                Assert.Equal(b.Times.Length, a.Times.Length);
                for (var k = 0; k < b.Times.Length; k += 97)
                {
                    Assert.Equal(b.Times[k] - b.Times[0], a.Times[k] - a.Times[0], 2e-5);
                    Assert.Equal(b.Values[2][k], a.Values[2][k], 1e-4);
                }
            }
        }
    }

    private static Log Read(IReadOnlyList<(string Name, string Text)> files) =>
        LogFile.Read([.. files.Select(f => (f.Name, LogWriter.Bytes(f.Text)))], TestContext.Current.CancellationToken).Log!;
}
