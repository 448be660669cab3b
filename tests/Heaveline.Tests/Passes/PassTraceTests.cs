using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

public class PassTraceTests
{
    private const double Gravity = 9.80665;
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
    private static readonly Road LeftOnly = Road.From(new HalfSine { Height = new(0.03), Length = new(0.8) }, Tracks.Left);

    public static TheoryData<string> Cars => [.. All.Keys];

    // Its wheels have no half that could stay beside a plank.
    [Fact]
    public void A_two_wheeler_rides_over_an_obstacle_in_whichever_track_it_lies()
    {
        var model = RideModel.Of(ExactCars.TwoWheeler);
        Pass Over(Tracks tracks) => Pass.Of(model, Road.From(new HalfSine { Height = new(0.03), Length = new(0.8) }, tracks), 8.0);
        var both = Over(Tracks.Both);
        Assert.True(both.Pitch.Max() > 1e-3);
        foreach (var pass in new[] { Over(Tracks.Left), Over(Tracks.Right) })
        {
            Assert.Equal(both.Pitch, pass.Pitch);
            Assert.Equal(both.Heave, pass.Heave);
            Assert.All(Enumerable.Range(0, 4), corner => Assert.Equal(both.RoadHeight(corner), pass.RoadHeight(corner)));
        }
    }

    private static Dictionary<string, (Car Car, LoadState Load)> All { get; } = new()
    {
        ["saloon"] = (ExactCars.Saloon, LoadState.Reference),
        ["off centre"] = (ExactCars.Saloon, ExactCars.OffCentre),
        ["solid axles, off centre"] = (ExactCars.SolidAxles, ExactCars.OffCentre),
        ["fluid pipe, off centre"] = (ExactCars.FluidLinked(LineState.Pipe), ExactCars.OffCentre),
        ["two-wheeler"] = (ExactCars.TwoWheeler, LoadState.Reference),
    };

    [Theory, MemberData(nameof(Cars))]
    public void A_trace_is_its_signals_trace_and_the_formula_of_it_bit_for_bit(string name)
    {
        var (car, load) = All[name];
        var model = RideModel.Of(car, load);
        var (x, y) = (model.X, model.Y);
        var left = model.Body.LeftOfMiddle;
        foreach (var road in new[] { Hump, LeftOnly })
        {
            var pass = Pass.Of(model, road, 14.0, new() { Method = FixedStep.Once });
            var (heave, pitch, roll) = (pass.Heave, pass.Pitch, pass.Roll);
            var (up, nod, lean) = (pass.HeaveAcceleration, pass.PitchAcceleration, pass.RollAcceleration);
            Same(pass.FrontHeight, RideSignal.BodyHeight(model, 0.0, 0.0), k => heave[k] - (x[0] * pitch[k]) + (-left * roll[k]));
            Same(
                pass.RearHeight, RideSignal.BodyHeight(model, car.Wheelbase.Si, 0.0), k => heave[k] - (x[2] * pitch[k]) + (-left * roll[k]));
            Same(
                pass.VerticalAcceleration(1.7, 0.35),
                RideSignal.VerticalAcceleration(model, 1.7, 0.35),
                k => up[k] - ((model.Body.BehindFrontAxle - 1.7) * nod[k]) + ((0.35 - left) * lean[k]));
            Same(pass.ForeAftForce(0.6), RideSignal.ForeAftForce(0.6), k => (0.6 * nod[k]) - (Gravity * pitch[k]));
            Same(pass.LateralForce(0.8), RideSignal.LateralForce(0.8), k => (-0.8 * lean[k]) + (Gravity * roll[k]));
            for (var i = 0; i < 4; i++)
            {
                var (wheel, trim, corner) = (pass.WheelHeight(i), model.Numbers.TrimTravel[i], i);
                double Body(int k) => heave[k] - (x[corner] * pitch[k]) + (y[corner] * roll[k]);
                Same(pass.Trace(RideSignal.Travel(model, i)), RideSignal.Travel(model, i), k => wheel[k] - Body(k));
                Equal(pass.Travel(i), k => trim + wheel[k] - Body(k));
                var tyre = RideSignal.TyreLoad(model, i);
                var change = pass.Trace(tyre);
                Equal(pass.TyreLoad(i), k => tyre.AtTrim + change[k]);
                Assert.Equal(model.Trim.WheelLoad[i], pass.TyreLoad(i)[0]);
                Assert.Equal((trim, 0.0), (RideSignal.Travel(model, i).AtTrim, RideSignal.WheelHeight(i).AtTrim));
            }

            Assert.True(pass.Travel(0).Max() - pass.Travel(0).Min() > 0.01, "the wheel hardly moves");

            void Same(ImmutableArray<double> trace, RideSignal signal, Func<int, double> formula)
            {
                Equal(trace, k => pass.Trace(signal)[k]);
                Equal(trace, formula);
            }

            void Equal(ImmutableArray<double> trace, Func<int, double> formula)
            {
                Assert.Equal(pass.Count, trace.Length);
                Assert.All(trace, (value, k) => Assert.Equal(BitConverter.DoubleToInt64Bits(formula(k)), BitConverter.DoubleToInt64Bits(value)));
            }
        }
    }

    [Fact]
    public void A_trace_is_read_off_the_record_once()
    {
        var model = RideModel.Of(ExactCars.Saloon, ExactCars.OffCentre);
        var pass = Pass.Of(model, LeftOnly, 14.0, new() { Method = FixedStep.Once });
        Func<Pass, ImmutableArray<double>>[] traces =
        [
            p => p.Time, p => p.Heave, p => p.Pitch, p => p.Roll, p => p.PitchRate, p => p.HeaveAcceleration, p => p.PitchAcceleration,
            p => p.RollAcceleration, p => p.FrontHeight, p => p.RearHeight, p => p.Travel(1), p => p.WheelHeight(2), p => p.TyreLoad(3),
            p => p.VerticalAcceleration(1.7, 0.35), p => p.ForeAftForce(0.6), p => p.LateralForce(0.8), p => p.Trace(RideSignal.TravelRate(model, 0)),
        ];
        // The first who ask, all at once, and those after them share one storage.
        var first = traces.Select(of => Enumerable.Range(0, 64).AsParallel().WithDegreeOfParallelism(8).Select(_ => of(pass)).ToArray()).ToList();
        Assert.All(traces.Zip(first), t => Assert.All(t.Second, trace => Assert.True(trace == t.First(pass))));
        Assert.Equal(traces.Length, first.Select(f => f[0]).Distinct().Count());
        Assert.True(pass.VerticalAcceleration(1.7, 0.35) != pass.VerticalAcceleration(1.7, 0.36));
    }

    [Fact]
    public void Reading_a_trace_again_allocates_nothing()
    {
        var pass = Pass.Of(RideModel.Of(ExactCars.Saloon), Hump, 14.0, new() { Method = FixedStep.Once });
        Assert.Equal(pass.Count, Read());
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
        {
            _ = Read();
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        int Read()
        {
            var least = Math.Min(pass.Time.Length, pass.Heave.Length);
            least = Math.Min(least, Math.Min(pass.Pitch.Length, pass.PitchRate.Length));
            return Math.Min(least, Math.Min(pass.PitchAcceleration.Length, pass.Trace(RideSignal.HeaveAcceleration).Length));
        }
    }
}
