using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;

namespace Heaveline.Tests.Drives.Identification;

/// <summary>Planted linear cars, driven in time over one hump on rough roads, logged by a phone with faults, and identified.</summary>
public class CarIdentificationTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static double[] Truth(LinearCar car) =>
        [car.FrontFrequency, car.RearFrequency, car.RearFrequency / car.FrontFrequency, car.FrontDamping, car.RearDamping, car.PitchIndex];

    private static CarFromDrive Of(PlantedCrossings drive)
    {
        var (_, known, windows) = drive.Drawn();
        return CarIdentification.Of(windows, known, Stop);
    }

    [Fact]
    public void Of_twenty_planted_cars_the_intervals_hold_seventeen_or_more_of_each_number()
    {
        var numbers = CarNumbers.Headlines;
        var (covered, errors) = (new int[numbers.Count], numbers.Select(_ => new List<double>()).ToArray());
        for (ulong seed = 0; seed < 20; seed++)
        {
            var (car, known, windows) = new PlantedCrossings { Seed = 20_000 + seed }.Drawn();
            var (found, truth) = (CarIdentification.Of(windows, known, Stop), Truth(car));
            for (var i = 0; i < numbers.Count; i++)
            {
                var estimate = found.Of(numbers[i])!;
                covered[i] += truth[i] >= estimate.Low && truth[i] <= estimate.High ? 1 : 0;
                errors[i].Add(Math.Abs(Math.Log(estimate.Value / truth[i])));
            }
        }

        Assert.All(covered, c => Assert.InRange(c, 17, 20));
        // Over 200 cars: 0.4, 0.3, 1.3 and 0.2 % (bench, drive-cars); twenty scatter about that.
        double[] most = [0.007, 0.007, 0.006, 0.02, 0.02, 0.004];
        Assert.All(errors.Zip(most), e => Assert.InRange(e.First.Order().ElementAt(10), 0.0, e.Second));
    }

    [Fact]
    public void What_is_left_of_a_rough_road_at_the_true_car_is_white()
    {
        var (car, known, windows) = new PlantedCrossings
        {
            Seed = 8, Hump = null, Each = 130, Roughness = 64e-6, Drift = 0.0, Jitter = 0.0, Engine = 0.0, SpeedError = 0.0,
            Rate = 400.0,
        }.Drawn();
        var likelihood = CarProblem.Of(windows, known).Likelihood;
        var x = likelihood.Centre.ToArray();
        CarNumbers.Parameters(car).CopyTo(x, 0);
        // White noise of 0.05 m/s² and 0.004 rad/s at 400 samples a second has the one-sided density 2σ²/400. At 100 the straight lines between
        // samples would take 9 % of the power at 12 Hz from both channels alike.
        (x[CarParameter.Roughness], x[CarParameter.VerticalNoise], x[CarParameter.PitchNoise]) =
            (Math.Log(64e-6), Math.Log(1.25e-5), Math.Log(8e-8));
        likelihood.Value(x, double.PositiveInfinity, Stop);
        // The gains of the planted phone are 1 % off, the noise of the lowest band 2 %.
        Assert.All(CarJudgement.Residuals(likelihood), band =>
        {
            Assert.Equal(1.0, band.Band.Vertical, 0.05);
            Assert.Equal(1.0, band.Band.Pitch, 0.05);
        });
    }

    [Fact]
    public void The_order_of_the_windows_moves_nothing_and_every_run_has_the_same_bits()
    {
        var (_, known, windows) = new PlantedCrossings { Seed = 77, Each = 2 }.Drawn();
        var one = CarIdentification.Of(windows, known, Stop);
        var again = CarIdentification.Of(windows, known, Stop);
        var turned = CarIdentification.Of([.. windows.Reverse()], known, Stop);
        Assert.Equal(one.Estimates, again.Estimates);
        Assert.Equal(one.Estimates, turned.Estimates);
        Assert.Equal(one.Windows.Select(w => w.Event), windows.Select(w => w.Event));
        Assert.Equal(one.Windows.Reverse(), turned.Windows);
    }

    [Fact]
    public void A_fit_begun_from_the_car_of_nearly_the_same_windows_ends_where_the_whole_one_does_to_what_it_leaves_open()
    {
        var (_, known, windows) = new PlantedCrossings { Seed = 77, Each = 2 }.Drawn();
        DriveWindow[] numbered = [.. windows.Select((w, i) => w with { Event = i + 1 })];
        var former = CarIdentification.Of(numbered, known, Stop);
        DriveWindow[] left = [.. numbered.Where(w => w.Event != 3)];
        var (near, whole) = (CarIdentification.Near(left, known, former, Stop), CarIdentification.Of(left, known, Stop));
        Assert.Single(near.Starts);
        Assert.Equal(left.Select(w => w.Event), near.Windows.Select(w => w.Event));
        Assert.NotEqual(former.Estimates, near.Estimates);
        Assert.All(CarNumbers.Headlines, n =>
        {
            var (one, other) = (near.Of(n)!, whole.Of(n)!);
            Assert.InRange(one.Value, Math.Sqrt(other.Low * other.Value), Math.Sqrt(other.High * other.Value));
            Assert.InRange(Math.Log(one.High / one.Low) / Math.Log(other.High / other.Low), 0.8, 1.25);
        });
    }

    [Fact]
    public void From_its_own_end_a_fit_goes_nowhere()
    {
        var (_, known, windows) = new PlantedCrossings { Seed = 77, Each = 2 }.Drawn();
        DriveWindow[] numbered = [.. windows.Select((w, i) => w with { Event = i + 1 })];
        var former = CarIdentification.Of(numbered, known, Stop);
        var again = CarIdentification.Near(numbered, known, former, Stop);
        Assert.All(former.Mean.Zip(again.Mean), x => Assert.Equal(x.First, x.Second, 0.02));
        Assert.All(CarNumbers.Headlines, n => Assert.Equal(former.Of(n)!.Value, again.Of(n)!.Value, 0.005 * former.Of(n)!.Value));
    }

    [Fact]
    public void Other_splines_draw_the_former_hump()
    {
        var (old, finer) = (new HumpSplines(3.7, 0.8), new HumpSplines(3.4, 0.5));
        double[] weights = [.. Enumerable.Range(0, old.Count).Select(j => 0.08 * Math.Sin(Math.PI * (j + 1) / (old.Count + 1)))];
        var (same, other) = (new double[old.Count], new double[finer.Count]);
        new HumpSplines(3.7, 0.8).From(old, weights, same);
        finer.From(old, weights, other);
        Assert.Equal(weights, same);
        double Height(HumpSplines splines, double[] by, double x) => Enumerable.Range(0, splines.Count).Sum(j => by[j] * splines.At(j, x));
        Assert.All((double[])[1.0, 1.7, 2.4], x => Assert.Equal(Height(old, weights, x), Height(finer, other, x), 0.003));
    }

    [Fact]
    public void Speed_need_not_be_known()
    {
        var (car, known, windows) = new PlantedCrossings { Seed = 12, SpeedSpread = 0.3, SpeedError = 0.1 }.Drawn();
        var found = CarIdentification.Of(windows, known, Stop);
        var truth = Truth(car);
        Assert.All(CarNumbers.Headlines.Zip(truth), n => Assert.InRange(n.Second, found.Of(n.First)!.Low, found.Of(n.First)!.High));
        Assert.All(found.Windows, w => Assert.InRange(w.SpeedHalfWidth / w.Speed, 0.0, 0.05));
    }

    [Fact]
    public void A_whole_log_lying_two_ways_gives_the_planted_car()
    {
        var road = new PlantedRoad { Bumps = [.. Enumerable.Range(0, 12).Select(i => (PlantedBump.Round, 4.2 + (0.45 * i)))], Seed = 3 };
        var (motion, _) = road.Driven();
        var found = new[] { (0.65, 0.14), (-1.9, 0.4) }.Select(way =>
        {
            var drive = Drive.Of((motion with { Turned = way.Item1, Tipped = way.Item2, Noise = 0.005, TurnNoise = 4e-4, Jitter = 0.0 }).Log, Stop);
            var trust = Trust.Of(drive, Stop);
            var events = DriveEvents.Of(
                drive,
                trust,
                new EventSettings { Wheelbase = road.Wheelbase, Sites = [.. Enumerable.Range(0, 12).Select(i => ("hump", 45.0 + (12.0 * i)))] },
                Stop);
            var windows = DriveWindows.Of(drive, events, trust);
            Assert.InRange(windows.Length, 10, 12);
            return CarIdentification.Of(
                windows,
                new IdentificationKnown
                {
                    Wheelbase = road.Wheelbase, HumpLengths = DriveWindows.Humps(events), PhoneBehindFrontAxle = road.Behind, PhoneSpread = 0.05,
                },
                Stop);
        }).ToArray();
        Assert.All(found, f =>
        {
            Assert.Equal(1.0, f.Of(CarNumber.FrequencyRatio)!.Value / (road.Rear / road.Front), 0.02);
            Assert.Equal(1.0, f.Of(CarNumber.FrontFrequency)!.Value / road.Front, 0.02);
            Assert.Equal(1.0, f.Of(CarNumber.PitchIndex)!.Value / road.Index, 0.02);
        });
        foreach (var number in CarNumbers.Headlines)
        {
            Assert.Equal(found[0].Of(number)!.Value, found[1].Of(number)!.Value, 0.005 * found[0].Of(number)!.Value);
        }
    }

    // One drive over eight humps, read ten and thirty times a second.
    [Theory]
    [InlineData(10.0, false)]
    [InlineData(30.0, true)]
    public void Below_twenty_samples_a_second_no_number_of_bumps_tells_a_car(double rate, bool tells)
    {
        var road = new PlantedRoad { Bumps = [.. Enumerable.Range(0, 8).Select(i => (PlantedBump.Round, 4.2 + (0.45 * i)))], Seed = 3 };
        var drive = Drive.Of((road.Driven().Motion with { Rate = rate, Jitter = 0.0, Hum = 0.0 }).Log, Stop);
        var events = DriveEvents.Of(
            drive,
            Trust.Of(drive, Stop),
            new EventSettings { Wheelbase = road.Wheelbase, Sites = [.. Enumerable.Range(0, 8).Select(i => ("hump", 45.0 + (12.0 * i)))] },
            Stop);
        Assert.InRange(events.Kept.Count(), CarJudgement.FewestEvents, 8);
        DriveWindow[][] both = [[.. DriveWindows.Of(drive, events)], [.. DriveWindows.Of(drive, events, Trust.Of(drive, Stop))]];
        if (tells)
        {
            Assert.All(both, windows => Assert.InRange(windows.Length, CarJudgement.FewestEvents, 8));
            return;
        }

        Assert.All(both, Assert.Empty);
        Assert.Equal(events.Kept.Count(), DriveWindows.LeftOut(drive, events).Length);
        var car = CarIdentification.Of(both[0], new IdentificationKnown { Wheelbase = road.Wheelbase }, Stop);
        Assert.False(car.IsBelieved);
        Assert.Equal(RefusalKind.TooFew, Assert.Single(car.Refusals).Kind);
    }

    [Fact]
    public void A_single_crossing_promises_no_interval_and_says_what_would_tell()
    {
        var found = Of(new PlantedCrossings { Seed = 5, Speeds = [6.5], Each = 1 });
        var few = Assert.Single(found.Refusals, r => r.Kind == RefusalKind.TooFew);
        Assert.False(found.IsBelieved);
        Assert.All(found.Estimates, e => Assert.False(e.IsSaid));
        Assert.StartsWith("One bump with no other near it", few.Says, StringComparison.Ordinal);
        Assert.Contains("would bring it from ±", few.WouldTell, StringComparison.Ordinal);
    }

    [Fact]
    public void With_a_car_file_only_drives_that_it_bears_are_named()
    {
        var (_, known, windows) = new PlantedCrossings { Seed = 5, Speeds = [6.5], Each = 1 }.Drawn();
        string Tells(Func<Heaveline.Roads.Road, double, bool> bears) =>
            CarIdentification.Of(windows, known with { Bears = bears }, Stop).Refusals.First(r => r.Kind == RefusalKind.TooFew).WouldTell;
        Assert.Contains("by the car file every wheel stays on the road", Tells((_, _) => true), StringComparison.Ordinal);
        Assert.DoesNotContain("25 km/h", Tells((road, speed) => speed < 20.0 / 3.6), StringComparison.Ordinal);
        var none = Tells((_, _) => false);
        Assert.Contains("Take a lower hump.", none, StringComparison.Ordinal);
        Assert.DoesNotContain("would bring it from", none, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, 14.0, true, false)]
    [InlineData(3, 14.0, true, false)]
    [InlineData(3, 6.5, false, false)]
    [InlineData(3, 6.5, true, true)]
    public void What_would_tell_is_slow_and_over_a_hump_that_was_driven_before_or_one_that_is_named(
        int passes, double speed, bool isHump, bool isAgain)
    {
        var (_, known, windows) = new PlantedCrossings { Seed = 5, Speeds = [speed], Each = passes }.Drawn();
        var found = CarIdentification.Of([.. windows.Select(w => w with { IsHump = isHump })], known, Stop);
        Assert.NotEmpty(found.Refusals);
        var again = false;
        Assert.All(found.Refusals, r =>
        {
            again |= r.WouldTell.Contains($"over {windows[0].Site} at", StringComparison.Ordinal);
            Assert.All(
                System.Text.RegularExpressions.Regex.Matches(r.WouldTell, "(\\d+) km/h"),
                m => Assert.InRange(int.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture), 10, 30));
        });
        Assert.True(isAgain || !again, string.Join("\n", found.Refusals));
    }

    [Fact]
    public void Without_a_turn_rate_or_a_wheelbase_or_windows_there_is_no_car()
    {
        var (_, known, windows) = new PlantedCrossings { Seed = 5, Each = 2 }.Drawn();
        var found = CarIdentification.Of([.. windows.Select(w => w with { PitchRate = [] })], known, Stop);
        Assert.Equal(RefusalKind.NoGyro, Assert.Single(found.Refusals).Kind);
        Assert.Empty(found.Estimates);
        Assert.Equal(RefusalKind.Wheelbase, Assert.Single(CarIdentification.WithoutWheelbase.Refusals).Kind);
        Assert.Equal(RefusalKind.TooFew, Assert.Single(CarIdentification.Of([], known, Stop).Refusals).Kind);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_phone_that_swings_on_its_holder_is_refused(ulong seed)
    {
        // A mount of 9 Hz, damping 0.08, between floor and phone: the relative motion is added to what the phone feels.
        static void Swing(double[] vertical, double[] pitch)
        {
            const double step = 0.0025, rate = 2.0 * Math.PI * 9.0, damping = 0.08;
            var (speed, place) = (0.0, 0.0);
            for (var i = 0; i < vertical.Length; i++)
            {
                var pull = -(2.0 * damping * rate * speed) - (rate * rate * place);
                speed += (pull - vertical[i]) * step;
                place += speed * step;
                vertical[i] = -(2.0 * damping * rate * speed) - (rate * rate * place);
            }
        }

        var found = Of(new PlantedCrossings { Seed = seed, Mount = Swing });
        Assert.False(found.IsBelieved);
        Assert.Contains(found.Refusals, r => r.Kind is RefusalKind.SoftMount or RefusalKind.Misfit);
    }

    [Fact]
    public void Less_power_than_chance_is_not_said_to_be_another_motion_and_nobody_is_sent_to_drive_the_same_again()
    {
        var (_, _, windows) = new PlantedCrossings { Seed = 21, Each = 2 }.Drawn();
        ResidualBand[] bands = [new(0.4, 0.9, 0.47, 0.96), new(1.6, 3.0, 0.49, 1.72)];
        var (slow, fast) = (3.6 * windows.Min(w => w.Speed), 3.6 * windows.Max(w => w.Speed));
        var refusal = RefusalWords.Misfit(bands[0], false, bands, windows);
        Assert.DoesNotContain("does not move like this log", refusal.Says, StringComparison.Ordinal);
        Assert.Contains("keeps only 0.47 times the power that the fit holds for chance", refusal.Says, StringComparison.Ordinal);
        Assert.Contains("of the pitch rate between 1.6 and 3 Hz 1.7 times that power is left", refusal.Says, StringComparison.Ordinal);
        // Six passes over one hump at several speeds are what was driven.
        Assert.True(windows.Count(w => w.Site is not null) >= 6 && fast > 1.2 * slow);
        Assert.DoesNotContain("over one hump twice at each of three speeds", refusal.WouldTell, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"at {slow:F0} km/h to {fast:F0} km/h"), refusal.WouldTell, StringComparison.Ordinal);
        Assert.Contains(
            "over one hump twice at each of three speeds", RefusalWords.Misfit(bands[1], true, bands, [windows[0]]).WouldTell,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Pitch_turned_round_and_a_car_driven_backwards_are_noticed()
    {
        var (_, known, windows) = new PlantedCrossings { Seed = 21, Each = 2 }.Drawn();
        var turned = CarIdentification.Of([.. windows.Select(w => w with { PitchRate = [.. w.PitchRate.Select(q => -q)] })], known, Stop);
        Assert.Contains(turned.Refusals, r => r.Kind == RefusalKind.Reversed);

        // Backwards, the rear axle meets the hump first and the phone lies nearer to the axle that comes second.
        var (car, seen, backwards) = new PlantedCrossings { Seed = 22, Each = 2, Car = c => c with { Wheelbase = 2.7, PhoneBehindFrontAxle = 0.9 } }
            .Drawn();
        var reversed = CarIdentification.Of(
            backwards,
            seen with { FrontShare = 1.0 - seen.FrontShare, PhoneBehindFrontAxle = car.Wheelbase - seen.PhoneBehindFrontAxle },
            Stop);
        Assert.Contains(
            reversed.Refusals,
            r => r.Kind == RefusalKind.Reversed && r.Says.StartsWith("The car seems to have been driven backwards", StringComparison.Ordinal));
        Assert.DoesNotContain(CarIdentification.Of(backwards, seen, Stop).Refusals, r => r.Kind == RefusalKind.Reversed);
    }

    [Theory]
    [InlineData(26, 1, 3.0)]
    [InlineData(25, 2, 3.15)]
    public void A_wheelbase_that_is_given_too_long_is_not_told_as_driven_backwards(ulong seed, int each, double given)
    {
        var (_, known, windows) = new PlantedCrossings
        {
            Seed = seed, Each = each, Car = c => c with { Wheelbase = 2.7, PhoneBehindFrontAxle = 1.45 },
        }
        .Drawn();
        Assert.DoesNotContain(CarIdentification.Of(windows, known, Stop).Refusals, r => r.Kind == RefusalKind.Reversed);
        var said = Assert.Single(CarIdentification.Of(windows, known with { Wheelbase = given }, Stop).Refusals, r => r.Kind == RefusalKind.Reversed);
        Assert.StartsWith("Wheelbase, place or speed are not as said, or forward is turned round: ", said.Says, StringComparison.Ordinal);
        Assert.EndsWith("and a shorter wheelbase explains the drive too.", said.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_minutes_of_rough_road_tell_a_car_and_a_quarter_of_a_minute_does_not()
    {
        var drive = new PlantedCrossings { Seed = 31, Hump = null, Roughness = 200e-6, Each = 8 };
        var (car, known, windows) = drive.Drawn();
        var found = CarIdentification.Of(windows, known, Stop);
        Assert.DoesNotContain(found.Refusals, r => r.Kind == RefusalKind.TooFew);
        Assert.Equal(1.0, found.Of(CarNumber.FrequencyRatio)!.Value / (car.RearFrequency / car.FrontFrequency), 0.1);
        Assert.Contains(CarIdentification.Of([.. windows.Take(3)], known, Stop).Refusals, r => r.Kind == RefusalKind.TooFew);
    }
}
