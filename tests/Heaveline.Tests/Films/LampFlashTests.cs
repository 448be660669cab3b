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

    // By lot: how it swings, from how near it comes nearer, how many frames, how noisy and how alike the noise of neighbours is, how much stronger
    // the beam is above its edge than below it.
    private static (LampTrack Lamp, double Frequency, double Left) Drawn(ulong seed, double uneven = 0.5)
    {
        double Any(ulong k) => SplitMix.Uniform(4242 + seed, k);
        var (frequency, damping, phase) = (0.9 + Any(1), 0.1 + (0.18 * Any(2)), 2.0 * Math.PI * Any(3));
        var (strength, length, near) = (0.5 + Any(4), 1.6 + (1.6 * Any(5)), 4.0 + (8.0 * Any(6)));
        var (noise, edge, rate) = (0.03 + (0.07 * Any(7)), uneven * (Any(8) - 0.5), new[] { 30.0, 60.0, 60.0, 120.0 }[(int)(4.0 * Any(9))]);
        var (alike, was, decay) = (Math.Pow(0.85 * Any(10), 60.0 / rate), 0.0, 2.0 * Math.PI * damping * frequency);
        ImmutableArray<double> times = [.. Enumerable.Range(0, (int)(rate * length)).Select(i => i / rate)];
        var lamp = new LampTrack
        {
            Times = times,
            Brightness =
            [
                .. times.Select((t, i) =>
                {
                    var swing = Math.Exp(-decay * t) * Math.Cos((2.0 * Math.PI * frequency * t) + phase);
                    was = (alike * was) + (Math.Sqrt(1.0 - (alike * alike)) * SplitMix.Normals(seed + 99, 2UL * (ulong)i).First);
                    return 100.0 * Math.Exp((strength * (swing + (edge * swing * swing))) + (noise * was)) / Math.Pow(1.0 - (t / near), 2.0);
                }),
            ],
        };
        return (lamp, frequency, Math.Exp(-decay / frequency));
    }

    [Fact]
    public void Intervals_of_rhythm_and_of_what_is_left_hold_in_eighty_five_to_ninety_five_of_a_hundred_of_three_hundred_planted_lamps()
    {
        var (rhythm, left, said) = (0, 0, 0);
        for (var seed = 0UL; seed < 300; seed++)
        {
            var (lamp, frequency, kept) = Drawn(seed);
            try
            {
                var flash = LampFlash.Of(lamp, 0.0);
                said++;
                rhythm += flash.Rhythm.Low <= frequency && frequency <= flash.Rhythm.High ? 1 : 0;
                left += flash.LeftAfterOne.Low <= kept && kept <= flash.LeftAfterOne.High ? 1 : 0;
            }
            catch (RefusedValueException)
            {
                // Too open, or so slow to die that it is taken for other lights: counted below.
            }
        }

        Assert.True(said >= 285, $"{said} said");
        Assert.True(rhythm >= 0.85 * said && rhythm <= 0.95 * said, $"rhythm: {rhythm} of {said}");
        Assert.True(left >= 0.85 * said && left <= 0.95 * said, $"left: {left} of {said}");
    }

    // Of such beams the law without the square told a rhythm that is neither the swing's nor its double, open by 8 to 17 % only.
    [Theory]
    [InlineData(3.0, 68UL)]
    [InlineData(3.0, 70UL)]
    [InlineData(3.0, 105UL)]
    [InlineData(6.0, 3UL)]
    [InlineData(6.0, 15UL)]
    [InlineData(6.0, 31UL)]
    public void A_beam_so_uneven_that_its_square_finds_another_swing_and_fits_better_is_told_no_rhythm(double uneven, ulong seed) =>
        Assert.Contains("flashes a second, open by", Assert.Throws<RefusedValueException>(() => LampFlash.Of(Drawn(seed, uneven).Lamp, 0.0)).Message,
            StringComparison.Ordinal);

    [Theory]
    [InlineData(1.3, 0.15)]
    [InlineData(1.6, 0.22)]
    [InlineData(1.1, 0.10)]
    public void The_rhythm_stands_within_its_interval_in_thirty_four_of_forty_lamps_and_the_pitch_among_what_goes(double frequency, double damping)
    {
        var held = 0;
        for (var seed = 0UL; seed < 40; seed++)
        {
            var flash = LampFlash.Of(Lamp(frequency, damping, isTwice: false, seed), 0.2);
            held += flash.Rhythm.Low <= frequency && frequency <= flash.Rhythm.High ? 1 : 0;
            Assert.Contains(flash.Pitch, p => Math.Abs((p.Value / frequency) - 1.0) < 0.06);
            Assert.InRange(
                flash.LeftAfterOne.Value, 0.6 * Math.Exp(-2.0 * Math.PI * damping), Math.Min(1.0, 1.6 * Math.Exp(-2.0 * Math.PI * damping)));
        }

        Assert.True(held >= 34, $"{held} of 40");
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
    public void Frames_in_which_the_lamp_is_not_seen_are_left_out_and_counted_and_too_many_of_them_are_refused()
    {
        var lamp = Lamp(1.3, 0.15, isTwice: false, 3);
        LampTrack Lost(int each) => lamp with { Brightness = [.. lamp.Brightness.Select((b, i) => i % each == 5 ? 0.0 : b)] };
        var (whole, some) = (LampFlash.Of(lamp, 0.2), LampFlash.Of(Lost(12), 0.2));
        Assert.Equal(0, whole.Lost);
        Assert.InRange(some.Lost, 10, 13);
        Assert.Equal(whole.Times.Length, some.Times.Length + some.Lost);
        Assert.InRange(some.Rhythm.Value / whole.Rhythm.Value, 0.97, 1.03);
        // Nor is a frame that was lost the quickest change, from which on the lamp is looked at.
        var knocked = lamp with { Brightness = [.. lamp.Brightness.Select((b, i) => i == 80 ? 0.0 : i < 12 ? 0.2 * b : b)] };
        Assert.Equal(0.2, LampFlash.Of(knocked).From, 0.02);
        Assert.Contains(
            "frames in which the lamp is seen",
            Assert.Throws<RefusedValueException>(
                () => LampFlash.Of(lamp with { Brightness = [.. lamp.Brightness.Select((b, i) => i % 2 == 0 ? b : 0.0)] }, 0.2)).Message,
            StringComparison.Ordinal);
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
