using System.Collections.Immutable;
using Heaveline.Drives;

namespace Heaveline.Tests.Drives;

public class TrustTests
{
    private static Trust Of(Log log) => Trust.Of(Drive.Of(log));

    private static Log With(Log log, Func<double, double, double> vertical)
    {
        // Planted flat, so that the third axis is up.
        var track = log.Tracks[0];
        return log with
        {
            Tracks =
            [
                track with
                {
                    Values = [track.Values[0], track.Values[1], track.Values[2].Select((a, i) => vertical(track.Times[i], a)).ToImmutableArray()],
                },
                .. log.Tracks.Skip(1),
            ],
        };
    }

    private static PlantedDrive Flat => new() { Turned = 0.0, Tipped = 0.0 };

    [Fact]
    public void A_good_log_is_good_for_bumps_and_the_car()
    {
        var trust = Of(new PlantedDrive().Log);
        Assert.Equal(TrustLevel.Good, trust.For(TrustUse.Events).Level);
        Assert.Equal(TrustLevel.Good, trust.For(TrustUse.Car).Level);
        Assert.Equal(TrustLevel.Good, trust.For(TrustUse.Comfort).Level);
        Assert.False(trust.IsFolded);
        Assert.Null(trust.Engine);
        Assert.Empty(trust.Flights);
        Assert.Empty(trust.Dropped);
    }

    [Theory]
    [InlineData(10.0, TrustLevel.None, TrustLevel.None, TrustLevel.None)]
    [InlineData(30.0, TrustLevel.Limited, TrustLevel.Limited, TrustLevel.None)]
    [InlineData(50.0, TrustLevel.Good, TrustLevel.Good, TrustLevel.None)]
    [InlineData(70.0, TrustLevel.Good, TrustLevel.Good, TrustLevel.Limited)]
    public void The_rate_decides_what_a_log_is_good_for(double rate, TrustLevel events, TrustLevel car, TrustLevel comfort)
    {
        var trust = Of(new PlantedDrive { Rate = rate, Jitter = 0.0 }.Log);
        Assert.Equal(
            (events, car, comfort), (trust.For(TrustUse.Events).Level, trust.For(TrustUse.Car).Level, trust.For(TrustUse.Comfort).Level));
    }

    [Fact]
    public void A_log_in_which_nothing_moves_is_good_for_nothing()
    {
        var log = Flat.Log;
        var still = log with
        {
            Tracks =
            [
                .. log.Tracks.Select((track, k) => track with
                {
                    Values = [.. track.Values.Select((column, axis) =>
                        column.Select(_ => k == 0 && axis == 2 ? PlantedDrive.Gravity : 0.0).ToImmutableArray())],
                }),
            ],
        };
        var trust = Of(still);
        Assert.All(Enum.GetValues<TrustUse>(), use => Assert.Equal(TrustLevel.None, trust.For(use).Level));
        Assert.Contains("Nothing moves", trust.For(TrustUse.Comfort).Reason, StringComparison.Ordinal);

        // It pitches by 0.5 rad/s while no heave is seen.
        var pitching = still with
        {
            Tracks = [.. still.Tracks.Select(track => track.Kind != SensorKind.TurnRate ? track : track with
            {
                Values = [.. track.Values.Select((column, axis) =>
                    axis == 0 ? track.Times.Select(t => 0.5 * Math.Sin(9.0 * t)).ToImmutableArray() : column)],
            })],
        };
        Assert.False(Of(pitching).IsStill);
        Assert.Equal(0.5 / Math.Sqrt(2.0), Of(pitching).Turning, 0.01);
        Assert.DoesNotContain("Nothing moves", Of(pitching).For(TrustUse.Events).Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1e6)]
    [InlineData(1e9)]
    [InlineData(1e300)]
    public void A_stamp_far_from_all_others_costs_neither_memory_nor_the_drive(double away)
    {
        var log = Flat.Log;
        var track = log.Tracks[0];
        var far = log with
        {
            Tracks = [track with { Times = [.. track.Times[..^1], track.Times[^1] + away] }, .. log.Tracks.Skip(1).Select(t =>
            t with { Times = [.. t.Times[..^1], t.Times[^1] + away] })]
        };
        var drive = Drive.Of(far);
        Assert.Contains(drive.Story, line => line.About == "pause" && line.IsDoubtful);
        Assert.InRange(drive.Vertical.Length, 1, track.Times.Length);
        Assert.All(drive.Vertical, v => Assert.True(double.IsFinite(v)));
    }

    [Theory]
    [InlineData(3.0)]
    [InlineData(5.0)]
    public void Hard_bends_are_no_hand(double bends)
    {
        var drive = Drive.Of(new PlantedDrive { Bends = bends }.Log);
        Assert.False(drive.Mount.IsHandled);
        Assert.Equal(TrustLevel.Good, Trust.Of(drive).For(TrustUse.Events).Level);
    }

    [Fact]
    public void Without_a_gyro_there_is_heave_alone_and_no_car()
    {
        var log = new PlantedDrive().Log;
        var trust = Of(log with { Tracks = [log.Tracks[0], log.Tracks[2]] });
        Assert.Equal((TrustLevel.Limited, TrustLevel.None), (trust.For(TrustUse.Events).Level, trust.For(TrustUse.Car).Level));
    }

    [Fact]
    public void The_engines_hum_is_found_with_its_amplitude()
    {
        var engine = Of(With(Flat.Log, (t, a) => a + (0.15 * Math.Sin(2.0 * Math.PI * 31.0 * t)))).Engine;
        Assert.Equal(31.0, engine!.Frequency, 0.3);
        Assert.Equal(0.15, engine.Amplitude, 0.03);
    }

    [Fact]
    public void At_50_samples_a_second_the_engines_hum_limits_the_car()
    {
        var log = With((Flat with { Rate = 50.0, Jitter = 0.0 }).Log, (t, a) => a + (0.2 * Math.Sin(2.0 * Math.PI * 23.0 * t)));
        Assert.Equal(TrustLevel.Limited, Of(log).For(TrustUse.Car).Level);
    }

    [Fact]
    public void Noise_up_to_the_end_of_the_band_has_folded_down()
    {
        var trust = Of((new PlantedDrive { Noise = 0.3 }).Log);
        Assert.InRange(trust.TopPower!.Value, 0.7, 1.4);
        Assert.True(trust.IsFolded);
    }

    // A scale that is none of the usual, 17.3 m/s², reached twice by bumps.
    [Fact]
    public void Samples_at_any_full_scale_are_found_in_accelerometer_and_gyro()
    {
        var trust = Of(With(Flat.Log, (t, a) => t is > 40.0 and < 40.05 or > 60.0 and < 60.05 ? 17.3 : a));
        Assert.Equal(8.0 / 9000.0, trust.ClippedShare, 3e-4);
        Assert.Equal(2, trust.Dropped.Count(d => d.Reason == "clipped"));
        var log = Flat.Log;
        var turn = log.Of(SensorKind.TurnRate)!;
        var clipped = turn with
        {
            Values = [turn.Values[0], [.. turn.Values[1].Select((w, i) => i is > 3000 and < 3010 ? 4.36 : w)], turn.Values[2]],
        };
        trust = Of(log with { Tracks = log.Tracks.Replace(turn, clipped) });
        Assert.Equal(0.0, trust.ClippedShare);
        Assert.InRange(Assert.Single(trust.Dropped, d => d.Reason == "clipped").Part.From, 28.9, 29.2);
    }

    [Fact]
    public void Samples_at_full_scale_are_counted_and_left_out()
    {
        const double full = 2.0 * PlantedDrive.Gravity;
        var trust = Of(With(Flat.Log, (t, a) => t is > 40.0 and < 40.05 ? full : a));
        Assert.Equal(4.0 / 9000.0, trust.ClippedShare, 2e-4);
        var part = Assert.Single(trust.Dropped, d => d.Reason == "clipped").Part;
        Assert.InRange(part.From, 38.9, 39.2);
        Assert.InRange(part.To, 40.9, 41.2);
    }

    [Fact]
    public void A_phone_that_leaves_the_floor_is_named_with_its_instant()
    {
        var trust = Of(With(Flat.Log, (t, a) => t is > 50.0 and < 50.12 ? 0.0 : a));
        Assert.InRange(Assert.Single(trust.Flights), 49.9, 50.1);
    }

    [Fact]
    public void A_gap_is_left_out()
    {
        var planted = new PlantedDrive();
        var dropped = Of(planted.LogOf([.. planted.Instants.Where(t => t is < 30.0 or > 31.0)])).Dropped;
        var part = Assert.Single(dropped).Part;
        Assert.InRange(part.Length, 0.9, 1.1);
        Assert.Equal("not covered", dropped[0].Reason);
    }

    [Fact]
    public void A_phone_in_a_hand_is_good_for_nothing()
    {
        var log = Flat.Log;
        var track = log.Tracks[0];
        double Tilt(double t) => 1.2 * Math.Sin(0.4 * t);
        ImmutableArray<double> y =
            [.. track.Values[1].Select((a, i) => (a * Math.Cos(Tilt(track.Times[i]))) + (track.Values[2][i] * Math.Sin(Tilt(track.Times[i]))))];
        ImmutableArray<double> z =
            [.. track.Values[2].Select((a, i) => (a * Math.Cos(Tilt(track.Times[i]))) - (track.Values[1][i] * Math.Sin(Tilt(track.Times[i]))))];
        var drive = Drive.Of(log with { Tracks = [track with { Values = [track.Values[0], y, z] }, .. log.Tracks.Skip(1)] });
        Assert.True(drive.Mount.IsHandled);
        Assert.All(Trust.Of(drive).Verdicts, v => Assert.Equal(TrustLevel.None, v.Level));
    }
}
