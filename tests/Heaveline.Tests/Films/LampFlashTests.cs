using System.Collections.Immutable;
using Heaveline.Films;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Tests.Films;

/// <summary>The rhythm of a lamp whose brightness is made up by a swing that dies away.</summary>
public class LampFlashTests
{
    // A beam whose edge lies above the camera swings through it: brightness by the angle.
    private static LampTrack Lamp(double frequency, double damping, bool isTwice, ulong seed, double length = 2.5)
    {
        ImmutableArray<double> times = [.. Enumerable.Range(0, (int)(60 * length)).Select(i => i / 60.0)];
        return new LampTrack
        {
            Times = times,
            Brightness =
            [
                .. times.Select((t, i) =>
                {
                    var phase = 2.0 * Math.PI * frequency * (t - 0.2);
                    var swing = t < 0.2 ? 0.0 : Math.Exp(-damping * phase) * Math.Cos(phase);
                    // Seen twice a swing where the edge passes the camera at rest.
                    var light = isTwice ? swing * swing : swing;
                    return 100.0 * Math.Exp((1.2 * light) + (0.3 * t) + (0.05 * SplitMix.Normals(seed, 2UL * (ulong)i).First));
                }),
            ],
        };
    }

    [Theory]
    [InlineData(1.3, 0.15)]
    [InlineData(1.6, 0.22)]
    [InlineData(1.1, 0.10)]
    public void The_rhythm_stands_within_a_thirtieth_of_a_hertz_of_its_interval_and_the_pitch_among_what_goes(double frequency, double damping)
    {
        var flash = LampFlash.Of(Lamp(frequency, damping, isTwice: false, 3), 0.2);
        Assert.InRange(frequency, flash.Rhythm.Low - 0.03, flash.Rhythm.High + 0.03);
        Assert.Contains(flash.Pitch, p => Math.Abs((p.Value / frequency) - 1.0) < 0.06);
        Assert.InRange(flash.LeftAfterOne.Value, 0.6 * Math.Exp(-2.0 * Math.PI * damping), Math.Min(1.0, 1.6 * Math.Exp(-2.0 * Math.PI * damping)));
    }

    [Fact]
    public void A_beam_that_sweeps_the_camera_twice_in_a_swing_leaves_half_its_rhythm_among_the_pitch_frequencies()
    {
        var flash = LampFlash.Of(Lamp(1.35, 0.06, isTwice: true, 5), 0.2);
        Assert.InRange(flash.Rhythm.Value, 2.5, 2.9);
        Assert.Contains(flash.Pitch, p => Math.Abs((p.Value / 1.35) - 1.0) < 0.06);
        Assert.DoesNotContain(flash.Pitch, p => p.Value > 2.5);
    }

    [Fact]
    public void Frames_without_light_too_few_too_many_or_not_in_order_are_refused_and_a_reading_can_be_stopped()
    {
        var lamp = Lamp(1.3, 0.15, isTwice: false, 3);
        Assert.Throws<RefusedValueException>(() => lamp with { Brightness = [.. lamp.Times.Select(_ => 0.0)] });
        Assert.Throws<RefusedValueException>(() => lamp with { Times = [], Brightness = [] });
        Assert.Throws<RefusedValueException>(() => lamp with { Times = [.. lamp.Times.Reverse()] });
        Assert.Throws<RefusedValueException>(() => lamp with { Times = [.. Enumerable.Range(0, LampTrack.MostFrames + 1).Select(i => i / 60.0)] });
        var cut = lamp with { Brightness = lamp.Brightness[..20] };
        Assert.Contains("20 numbers", Assert.Throws<RefusedValueException>(() => LampFlash.Of(cut)).Message, StringComparison.Ordinal);
        Assert.Throws<OperationCanceledException>(() => LampFlash.Of(lamp, 0.2, new CancellationToken(canceled: true)));
    }

    [Fact]
    public void Noise_a_cutfilm_and_a_lamp_that_saturates_are_refused()
    {
        var noise = Lamp(1.3, 0.15, isTwice: false, 7) with
        {
            Brightness = [.. Enumerable.Range(0, 150).Select(i => 100.0 * Math.Exp(0.2 * SplitMix.Normals(7, 2UL * (ulong)i).First))],
        };
        Assert.Contains("rhythm", Assert.Throws<RefusedValueException>(() => LampFlash.Of(noise, 0.2)).Message, StringComparison.Ordinal);
        Assert.Throws<RefusedValueException>(() => LampFlash.Of(Lamp(1.3, 0.15, isTwice: false, 7, length: 0.9), 0.2));
        Assert.Throws<RefusedValueException>(() => LampFlash.Of(Lamp(1.3, 0.15, isTwice: false, 7) with { Saturated = 0.8 }));
    }
}
