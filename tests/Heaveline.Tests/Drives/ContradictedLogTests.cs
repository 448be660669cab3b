using System.Collections.Immutable;
using Heaveline.Drives;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Events;
using Heaveline.Tests.Drives.Lanes;

namespace Heaveline.Tests.Drives;

/// <summary>Logs that contradict themselves: a header that lies, a drive pasted twice, a gyro of the other hand on a phone that slips.</summary>
public class ContradictedLogTests
{
    private static readonly Lazy<Drive> Plain = new(() => Drive.Of(LarchLane.Before.Log));

    [Theory]
    [InlineData("mph", 0.44704 * 3.6, "km/h")]
    [InlineData("km/h", 1.0 / (0.44704 * 3.6), "mph")]
    public void A_speed_whose_header_names_another_unit_is_read_as_the_positions_say(string header, double factor, string meant)
    {
        var drive = Drive.Of(Speed(factor, header));
        Assert.Contains(drive.Story, s => s.About == "speed-unit" && s.IsDoubtful
            && s.Text.Contains($"read in {meant}, not in {header} as the header says", StringComparison.Ordinal));
        Assert.Equal(Plain.Value.Speed.Max(), drive.Speed.Max(), 0.01 * Plain.Value.Speed.Max());
    }

    [Fact]
    public void A_speed_that_no_unit_explains_is_said_and_stands_and_a_right_one_is_not_doubted()
    {
        var drive = Drive.Of(Speed(1.3, "km/h"));
        Assert.Contains(drive.Story, s => s.About == "speed-place" && s.Text.Contains("one of them is wrong", StringComparison.Ordinal));
        Assert.Equal(1.3 * Plain.Value.Speed.Max(), drive.Speed.Max(), 0.01);
        foreach (var lane in new[] { LarchLane.Before, LarchLane.After, LarchLane.NoChange, LarchLane.Morning })
        {
            Assert.DoesNotContain(Drive.Of(lane.Log).Story, s => s.About is "speed-place" or "speed-unit");
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_log_that_holds_its_drive_twice_counts_it_once(bool isResampled)
    {
        var log = LarchLane.Morning.Log;
        var again = isResampled ? Resampled(log, 61.0, 0.0) : log;
        var length = log.Tracks[0].Times[^1] + 25.0;
        var twice = log with
        {
            Tracks =
            [
                .. log.Tracks.Select((t, k) => t with
                {
                    Times = [.. t.Times, .. again.Tracks[k].Times.Select(at => at + length)],
                    Values = [.. t.Values.Select((v, c) => v.AddRange(again.Tracks[k].Values[c]))],
                }),
            ],
        };
        var (one, both) = (Events(log), Events(twice));
        Assert.InRange(both.Drive.Story.Count(s => s.About == "again" && s.IsDoubtful), 1, 1);
        Assert.Equal(one.Events.Kept.Count(), both.Events.Kept.Count());
        Assert.DoesNotContain(one.Drive.Story, s => s.About == "again");
    }

    [Fact]
    public void One_drive_written_at_another_rate_with_fewer_digits_is_one_drive_and_two_over_the_same_bumps_are_two()
    {
        var log = LarchLane.Morning.Log;
        Assert.True(LogLikeness.IsOneDrive(log, Resampled(log, 61.0, 0.01)));
        Assert.True(LogLikeness.IsOneDrive(Resampled(log, 47.0, 0.02), log));
        Assert.False(LogLikeness.IsOneDrive(log, LarchLane.Evening.Log));
        Assert.False(LogLikeness.IsOneDrive(LarchLane.Before.Log, LarchLane.NoChange.Log));
    }

    [Fact]
    public void A_phone_that_slips_is_seen_by_a_gyro_of_the_other_hand_too()
    {
        var log = LarchLane.Before.Log;
        var turned = log with
        {
            Tracks = [.. log.Tracks.Select(t => t.Kind != SensorKind.TurnRate ? t : t with
            {
                Values = [.. t.Values.Select(v => v.Select(a => -a).ToImmutableArray())],
            })],
        };
        var other = Drive.Of(turned);
        Assert.True(other.Mount.IsHandTurned);
        Assert.NotEmpty(Plain.Value.Mount.Moves);
        Assert.Equal(Plain.Value.Mount.Moves.Length, other.Mount.Moves.Length);
        Assert.All(Plain.Value.Mount.Moves.Zip(other.Mount.Moves), m => Assert.Equal(m.First, m.Second, 1.0));
    }

    [Fact]
    public void A_bump_put_in_where_nothing_is_read_is_told_by_what_is_read()
    {
        var moved = Plain.Value.Mount.Moves[0];
        var events = Events(LarchLane.Before.Log, new EventSettings { Wheelbase = 2.7, Added = [moved + 15.0] }).Events;
        Assert.Equal([moved + 15.0], events.Unmet.Added);
        Assert.InRange(events.Unmet.Read.To, moved - 5.0, moved);
        Assert.DoesNotContain(events.Events, e => e.ByHand);
    }

    [Fact]
    public void A_bump_that_is_left_out_keeps_its_own_numbers()
    {
        var log = LarchLane.Before.Log;
        var before = Events(log).Events;
        var site = before.Sites.First(s => s.Kept >= 4);
        foreach (var pass in site.Events.Where(e => e.IsKept).Take(3))
        {
            var settings = new EventSettings { Wheelbase = 2.7, Rejected = [pass.Onset] };
            var after = Events(log, settings).Events.Events.Single(e => e.Number == pass.Number);
            Assert.Equal("Rejected by hand.", after.Reason);
            Assert.Equal((pass.Onset, pass.Length, pass.Numbers.Headline), (after.Onset, after.Length, after.Numbers.Headline));
        }
    }

    private static (Drive Drive, DriveEvents Events) Events(Log log, EventSettings? settings = null)
    {
        var drive = Drive.Of(log, TestContext.Current.CancellationToken);
        var trust = Trust.Of(drive, TestContext.Current.CancellationToken);
        return (drive, DriveEvents.Of(drive, trust, settings ?? new() { Wheelbase = 2.7 }, TestContext.Current.CancellationToken));
    }

    private static Log Speed(double factor, string header)
    {
        var log = LarchLane.Before.Log;
        return log with
        {
            Tracks = [.. log.Tracks.Select(t => t.Kind != SensorKind.Speed ? t : t with
            {
                UnitSaid = header, UnitTaken = header, Values = [[.. t.Values[0].Select(v => v * factor)]],
            })],
        };
    }

    // Straight between samples, with fewer digits.
    private static Log Resampled(Log log, double rate, double step) => log with
    {
        Tracks = [.. log.Tracks.Select(t => t.Kind is SensorKind.Speed or SensorKind.Position ? t : Resampled(t, rate, step))],
    };

    private static SensorTrack Resampled(SensorTrack track, double rate, double step)
    {
        double[] times = [.. Enumerable.Range(0, (int)((track.Times[^1] - track.Times[0]) * rate)).Select(i => track.Times[0] + ((i + 0.3) / rate))];
        var found = new int[times.Length];
        for (var (i, k) = (0, 0); i < times.Length; i++)
        {
            while (k + 2 < track.Times.Length && track.Times[k + 1] <= times[i])
            {
                k++;
            }

            found[i] = k;
        }

        return track with
        {
            Times = [.. times],
            Values = [.. track.Values.Select(v => times.Select((t, i) =>
            {
                var k = found[i];
                var value = v[k] + ((t - track.Times[k]) / (track.Times[k + 1] - track.Times[k]) * (v[k + 1] - v[k]));
                return step > 0.0 ? step * Math.Round(value / step) : value;
            }).ToImmutableArray())],
        };
    }
}
