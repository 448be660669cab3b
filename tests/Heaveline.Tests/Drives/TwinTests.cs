using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Recovery;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Roads;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Drives;

/// <summary>Twins of garage cars whose springs, dampers and inertia were scaled before they were driven.</summary>
public class TwinTests
{
    private const double Lead = 3.0;
    private static readonly double[] Planted = [1.06, 0.95, 1.20, 0.82, 1.0, 1.05];

    [Theory]
    [InlineData("fern-saloon.yaml", 0.03)]
    [InlineData("thimble-city-car.yaml", 0.04)]
    [InlineData("sprig-kit-car.yaml", 0.03)]
    public void A_scaled_car_is_found_again(string file, double springs)
    {
        var (car, load) = Garage(file);
        var (found, windows) = Driven(TwinScales.Of(car, Planted), car, load, 7);
        Assert.True(found.IsBelieved, string.Join(' ', found.Refusals.Select(r => r.Says)));
        var twin = Twin.Of(car, load, found, windows, 0.0, TestContext.Current.CancellationToken);
        Assert.True(twin.IsBelieved, twin.Refusal);
        foreach (var spring in new[] { TwinScale.FrontSpring, TwinScale.RearSpring })
        {
            Assert.Equal(Planted[(int)spring], twin.Of(spring)!.Factor.Value, springs * Planted[(int)spring]);
        }

        foreach (var damper in new[] { TwinScale.FrontDamper, TwinScale.RearDamper })
        {
            Assert.Equal(Planted[(int)damper], twin.Of(damper)!.Factor.Value, 0.08 * Planted[(int)damper]);
            Assert.True(twin.Of(damper)!.IsSaid, twin.Of(damper)!.Reason);
        }

        Assert.Equal(1.05, twin.Of(TwinScale.PitchInertia)!.Factor.Value, 0.02);
        Assert.All(twin.Numbers, n => Assert.True(n.Drive.Holds(n.Twin), $"{n}"));
    }

    [Fact]
    public void Friction_is_not_said_and_its_doubt_is_in_the_dampers()
    {
        var (car, load) = Garage("fern-saloon.yaml");
        var (found, windows) = Driven(car, car, load, 3);
        var rubbing = Twin.Of(car, load, found, windows, 0.0, TestContext.Current.CancellationToken);
        var smooth = Twin.Of(Without(car), load, found, windows, 0.0, TestContext.Current.CancellationToken);
        Assert.False(rubbing.Of(TwinScale.Friction)!.IsSaid);
        Assert.Contains("no friction", smooth.Of(TwinScale.Friction)!.Reason, StringComparison.Ordinal);
        Assert.True(
            rubbing.Of(TwinScale.RearDamper)!.Factor.HalfWidth > 1.2 * smooth.Of(TwinScale.RearDamper)!.Factor.HalfWidth / smooth.Of(
                TwinScale.RearDamper)!.Factor.Value);
        // Friction that the file leaves out has to be made up by the dampers.
        Assert.True(smooth.Of(TwinScale.RearDamper)!.Factor.Value > 1.1);

        static Car Without(Car car) => car with
        {
            Front = car.Front with { Friction = Friction.None },
            Rear = car.Rear with { Friction = Friction.None },
        };
    }

    [Fact]
    public void Scaled_springs_dampers_friction_and_inertia_are_those_of_the_model()
    {
        var (car, load) = Garage("thimble-city-car.yaml");
        var (plain, scaled) = (RideModel.Of(car, load), RideModel.Of(TwinScales.Of(car, [1.0, 1.21, 1.0, 0.8, 1.0, 1.1]), load));
        // A damping ratio is one of the spring's rate: twice the spring must not move the damper.
        Assert.Equal(
            0.8, scaled.Tangent.SuspensionDamping[2, 2] / plain.Tangent.SuspensionDamping[2, 2], 1e-6);
        Assert.Equal(1.0, scaled.Tangent.SuspensionDamping[0, 0] / plain.Tangent.SuspensionDamping[0, 0], 1e-9);
        var (empty, heavy) = (SprungBody.Of(car), SprungBody.Of(TwinScales.Of(car, [1.0, 1.0, 1.0, 1.0, 1.0, 1.1])));
        Assert.Equal(1.1, heavy.PitchInertia / empty.PitchInertia, 1e-9);
        Assert.Equal(2.0, TwinScales.Of(Garage("fern-saloon.yaml").Car, [1.0, 1.0, 1.0, 1.0, 2.0, 1.0]).Front.Friction.HalfWidth.Si / 45.0, 1e-9);
    }

    [Fact]
    public void Rough_tracks_have_the_density_asked_for_in_their_mean()
    {
        var tracks = RoughTracks.Of(64e-6, 1.5, 5, TestContext.Current.CancellationToken);
        const int count = 1 << 15;
        double[] mean = [.. Enumerable.Range(0, count).Select(i => 0.5 * (tracks.At(i).Left + tracks.At(i).Right))];
        double[] apart = [.. Enumerable.Range(0, count).Select(i => tracks.At(i).Left - tracks.At(i).Right)];
        // Variance of the slopes over 0.25 m holds waves of half a metre and longer: against the same sum over the spectrum.
        double Slopes(double[] h) => Enumerable.Range(0, count).Average(i => Math.Pow(h[(i + 5) % count] - h[i], 2.0));
        var step = 1.0 / (count * RoughTracks.Spacing);
        var expected = Enumerable.Range(1, count / 2).Select(k => k * step).Where(n => n is >= 0.011 and <= 2.83)
            .Sum(n => 64e-6 * 0.01 / (n * n) * step * Math.Pow(2.0 * Math.Sin(Math.PI * n * 0.25), 2.0));
        Assert.Equal(1.0, Slopes(mean) / expected, 0.15);
        Assert.True(Slopes(apart) > 0.2 * Slopes(mean));
        var one = RoughTracks.Of(64e-6, 0.0, 5, TestContext.Current.CancellationToken);
        Assert.All(Enumerable.Range(0, 1000), i => Assert.Equal(one.At(i).Left, one.At(i).Right, 1e-15));
    }

    private static (Car Car, LoadState Load) Garage(string file)
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", file)).Value!;
        return (car, car.LoadStates[0]);
    }

    // Eighteen passes over three bumps at many speeds, class B in two tracks, noise as a phone's.
    private static (CarFromDrive Found, DriveWindow[] Windows) Driven(Car truth, Car file, LoadState load, ulong seed)
    {
        (string Site, Profile Profile, double Length, double[] Speeds)[] sites =
        [
            ("hump", new RoundTopHump { Height = new(0.075), Length = new(3.7) }.Draw(), 3.7, [18, 24, 30, 26, 20, 32]),
            ("joint", new Versine { Height = new(0.03), Length = new(0.8) }.Draw(), 0.8, [45, 45, 45, 45, 45, 45]),
            (
                "table",
                new FlatTopHump { Height = new(0.075), Plateau = new(2.5), RampUp = new(1.0), RampDown = new(1.0) }.Draw(),
                4.5,
                [16, 22, 28, 19, 25, 23]),
        ];
        var rough = RoughTracks.Of(64e-6, 0.5 * (file.Front.Track.Si + file.Rear.Track.Si), 77 * seed, default);
        var (passes, place) = (new List<(Road, double, DriveWindow)>(), 0);
        foreach (var (site, profile, _, speeds) in sites)
        {
            foreach (var said in speeds)
            {
                var number = passes.Count + 1;
                var speed = said / 3.6 * (1.0 + (0.03 * SplitMix.Normals(seed + 5, 2UL * (ulong)number).First));
                var from = (0.2 - Lead) * speed;
                var count = (int)(((4.3 * speed) - from) / RoughTracks.Spacing);
                var (left, right) = (new double[count], new double[count]);
                for (var i = 0; i < count; i++)
                {
                    var x = from + (i * RoughTracks.Spacing);
                    var u = Math.Clamp((x - from) / 3.0, 0.0, 1.0);
                    var (l, r) = rough.At(place + i);
                    var share = u * u * (3.0 - (2.0 * u));
                    (left[i], right[i]) = ((share * l) + profile.Height(x), (share * r) + profile.Height(x));
                }

                place += count;
                passes.Add((SampledRoad.Of(site, from, RoughTracks.Spacing, left, right, null, default), speed, new DriveWindow
                {
                    Rate = 100.0,
                    Vertical = [.. new double[500]],
                    PitchRate = [.. new double[500]],
                    Before = 1.0,
                    Speed = speed,
                    Site = site,
                    Event = number,
                }));
            }
        }

        var planted = new PassWindows(passes, Lead) { Phone = (1.45, 0.0), VerticalNoise = 0.06, PitchNoise = 0.004, Seed = 1000 * seed };
        DriveWindow[] windows = [.. planted.Of(RideModel.Of(truth, load), default)!
            .Select((w, i) => w with { Speed = w.Speed * (1.0 + (0.02 * SplitMix.Normals(seed + 9, 2UL * (ulong)i).First)) })];
        var body = RideModel.Of(file, load).Body;
        return (CarIdentification.Of(windows, new IdentificationKnown
        {
            Wheelbase = file.Wheelbase.Si,
            FrontShare = 1.0 - (body.BehindFrontAxle / file.Wheelbase.Si),
            FrontShareSpread = 0.01,
            PhoneBehindFrontAxle = 1.45,
            PhoneSpread = 0.05,
            HumpLengths = sites.ToImmutableDictionary(s => s.Site, s => s.Length),
        }), windows);
    }
}
