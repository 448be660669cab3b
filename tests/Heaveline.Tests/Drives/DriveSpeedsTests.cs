using Heaveline.Drives;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Recovery;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.Drives.Lanes;

namespace Heaveline.Tests.Drives;

/// <summary>Speeds over a planted hump, against the planted car stepped through time over the planted hump.</summary>
public class DriveSpeedsTests
{
    private static readonly PlantedRoad Road = new()
    {
        Bumps = [.. Enumerable.Range(0, 12).Select(i => (PlantedBump.Round, 4.2 + (0.45 * i)))], Rear = 1.55, Seed = 3,
    };

    private static readonly Lazy<DriveSpeeds> Told = new(() =>
    {
        var (motion, onsets) = Road.Driven();
        var (drive, trust, events) = DriveRoughnessTests.Read(motion, Road.Wheelbase, onsets);
        var car = CarIdentification.Of(DriveWindows.Of(drive, events, trust), new IdentificationKnown
        {
            Wheelbase = Road.Wheelbase, HumpLengths = DriveWindows.Humps(events), PhoneBehindFrontAxle = Road.Behind, PhoneSpread = 0.05,
        });
        return DriveSpeeds.Of(events, car);
    });

    [Fact]
    public void Pitch_over_speed_is_that_of_the_planted_car()
    {
        var site = Assert.Single(Told.Value.Sites);
        // The second begins where the hump ends, which the drive tells to some decimetres.
        double[] shares = [.. site.Speeds.Zip(site.Pitch, (v, p) => p / Pitch(v, 1.0))];
        Assert.All(shares, share => Assert.Equal(1.0, share, 0.2));
        Assert.Equal(1.0, shares.Average(), 0.1);
        double[] speeds = [.. Enumerable.Range(0, 61).Select(k => site.Range.Slowest * Math.Pow(site.Range.Fastest / site.Range.Slowest, k / 60.0))];
        if (site.IsMostWithin)
        {
            Assert.Equal(1.0, speeds.MaxBy(v => Pitch(v, 1.0)) / site.Most.Speed, 0.08);
        }

        if (site.IsLeastWithin)
        {
            Assert.Equal(1.0, speeds.MinBy(v => Pitch(v, 1.0)) / site.Least.Speed, 0.08);
        }

        Assert.True(site.Most.Low <= site.Most.Speed && site.Most.Speed <= site.Most.High);
    }

    [Fact]
    public void The_ratio_suits_the_speed_at_which_the_planted_car_is_bettered_by_no_other()
    {
        var site = Assert.Single(Told.Value.Sites);
        Assert.All(site.Suited, found =>
        {
            // A tenth slower and a tenth faster another ratio on opposite sides is the better one.
            var (slow, fast) = (Slope(0.88 * found.Speed), Slope(1.12 * found.Speed));
            Assert.True(slow * fast < 0.0, $"{found}: {slow} {fast}");
        });
        if (site.Suited.IsEmpty)
        {
            double[] slopes = [.. site.Speeds.Skip(1).SkipLast(1).Select(Slope)];
            Assert.Equal(site.WantsLarger, slopes.All(s => s < 0.0) ? true : slopes.All(s => s > 0.0) ? false : null);
        }
    }

    [Fact]
    public void The_ends_fall_into_step_where_the_planted_ends_do()
    {
        var told = Told.Value;
        // Damped period of a body on its springs alone: 1/(f·√(1 − ζ²)); the tyres lengthen both by a few per cent.
        double Period(double f, double damping) => 1.0 / (f * Math.Sqrt(1.0 - (damping * damping)));
        Assert.InRange(told.Ends.FrontPeriod!.Value / Period(Road.Front, Road.FrontDamping), 1.0, 1.12);
        Assert.InRange(told.Ends.RearPeriod!.Value / Period(Road.Rear, Road.RearDamping), 1.0, 1.12);
        Assert.Equal(Road.Wheelbase / (0.7 * (told.Ends.FrontPeriod.Value - told.Ends.RearPeriod.Value)), told.InStep!.Speed, 1e-9);
        Assert.InRange(told.InStep.Speed, told.InStep.Low, told.InStep.High);
        Assert.InRange((told.InStep.High - told.InStep.Low) / told.InStep.Speed, 0.01, 0.5);
    }

    [Theory]
    [InlineData(0.981, 1.014, false)]
    [InlineData(0.971, 0.998, true)]
    public void No_end_is_called_the_faster_one_where_the_ratio_may_be_either_side_of_one(double low, double high, bool isSure)
    {
        var speeds = Told.Value with
        {
            Sites = [],
            InStep = null,
            Ratio = 0.997,
            RatioRange = (low, high),
            Ends = Told.Value.Ends with { FrontPeriod = 0.85, RearPeriod = 0.86 },
        };
        var said = Assert.Single(SiteSpeedTable.Said(speeds)).Text;
        Assert.Equal(isSure, said.Contains("falls further behind", StringComparison.Ordinal));
        Assert.Equal(!isSure, said.Contains("Neither end of this linear car is surely the faster (frequency ratio 0.981 to 1.014, 90 %)"));
        var ratio = Told.Value.RatioRange;
        Assert.InRange(Told.Value.Ratio, ratio.Low, ratio.High);
    }

    [Fact]
    public void Without_a_car_they_are_refused() => Assert.Throws<RefusedValueException>(
        () => DriveSpeeds.Of(LaneReading.Before.Events, CarIdentification.WithoutWheelbase, TestContext.Current.CancellationToken));

    private static double Slope(double speed) => Pitch(speed, 1.02) - Pitch(speed, 1.0 / 1.02);

    // Root mean square pitch over the second after the rear wheels have left the hump.
    private static double Pitch(double speed, double turned)
    {
        const double step = 0.0025, lead = 1.0;
        var car = new LinearCar
        {
            Wheelbase = Road.Wheelbase, FrontFrequency = Road.Front / Math.Sqrt(turned), RearFrequency = Road.Rear * Math.Sqrt(turned),
            FrontDamping = Road.FrontDamping, RearDamping = Road.RearDamping, PitchIndex = Road.Index, FrontShare = Road.FrontShare,
            PhoneBehindFrontAxle = Road.Behind,
        };
        var (hump, n) = (PlantedBump.Round, (int)((lead + ((PlantedBump.Round.Length + Road.Wheelbase) / speed) + 1.5) / step));
        double Height(double x) => x > 0.0 && x < hump.Length ? hump.At(x) : 0.0;
        double[] front = [.. Enumerable.Range(0, n).Select(i => Height(speed * ((i * step) - lead)))];
        double[] rear = [.. Enumerable.Range(0, n).Select(i => Height((speed * ((i * step) - lead)) - Road.Wheelbase))];
        var (_, rate) = new PlantedHalfCar(car, step).Over(front, rear);
        var (pitch, left) = (new double[n], (int)((lead + ((hump.Length + Road.Wheelbase) / speed)) / step));
        for (var i = 1; i < n; i++)
        {
            pitch[i] = pitch[i - 1] + (0.5 * step * (rate[i - 1] + rate[i]));
        }

        var second = pitch.AsSpan(left, (int)(1.0 / step));
        return Math.Sqrt(Dot.Of(second, second) / second.Length);
    }
}
