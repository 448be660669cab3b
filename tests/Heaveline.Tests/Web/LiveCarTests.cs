using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Recording;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

/// <summary>A live car against the program itself: every demo car, at places of its sliders drawn at random.</summary>
public class LiveCarTests
{
    private const int Places = 24;

    private static readonly GarageView Garage = new(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });

    public static TheoryData<string> Demo => Heaveline.Tests.Recording.StepRecordTests.Demo;

    [Theory, MemberData(nameof(Demo))]
    public void Wherever_its_sliders_stand_a_live_car_has_the_bits_of_the_car(string name)
    {
        var (live, asked, view) = Of(name);
        Assert.Contains(live.Sliders, slider => slider.Key == "luggage");
        Assert.Contains(live.Sliders, slider => slider.Key == "rear-damping");
        var stood = 0;
        foreach (var (at, model) in Drawn(live, asked))
        {
            stood++;
            var given = live.Given(at);
            Trim(given, model);
            var timing = PassTiming.Of(new(model, view.Now.Pass.Road, 11.0), new() { Duration = 0.5 }, FixedStep.Once);
            var wheels = RoadUnderWheels.Of(model, view.Now.Pass.Road);
            var stepped = PassRun.Of(model, wheels, 11.0, timing, TestContext.Current.CancellationToken);
            var recorded = RecordRun.Of(live.Step, given, wheels, 11.0, timing);
            // Products of what two sliders do are rounded otherwise; else there is no difference at all.
            var near = live.Sliders.SelectMany(slider => slider.Columns).GroupBy(column => column).Any(column => column.Count() > 1) ? 1e-12 : 0.0;
            double[] peaks = [.. Enumerable.Range(0, Channel.Count).Select(c => stepped.Where((_, i) => i % Channel.Count == c).Max(Math.Abs))];
            for (var i = 0; i < stepped.Length; i++)
            {
                Assert.True(
                    Math.Abs(stepped[i] - recorded[i]) <= near * peaks[i % Channel.Count],
                    $"sample {i / Channel.Count}, channel {i % Channel.Count}: {stepped[i]:R}, live {recorded[i]:R}");
            }
        }

        Assert.InRange(stood, Places / 2, Places);
    }

    [Theory, MemberData(nameof(Demo))]
    public void Where_the_car_stands_its_recorded_balance_leaves_nothing_over(string name)
    {
        var (live, asked, _) = Of(name);
        var drawn = Drawn(live, asked).ToList();
        Assert.InRange(drawn.Count, Places / 2, Places);
        foreach (var (at, model) in drawn)
        {
            var given = live.Given(at);
            Trim(given, model);
            var numbers = RecordRun.Of(live.Trim, given);
            Assert.All(numbers[..9], left => Assert.InRange(left, -1e-9, 1e-9));
            for (var i = 0; i < LiveGiven.TrimCount; i++)
            {
                var expected = given[LiveGiven.Trim + i];
                var near = 1e-9 * Math.Max(1e-3, Math.Abs(expected));
                Assert.InRange(numbers[90 + i], expected - near, expected + near);
            }

            Assert.All(numbers[(90 + LiveGiven.TrimCount)..], margin => Assert.True(margin > 0.0));
        }
    }

    [Theory, MemberData(nameof(Demo))]
    public void Its_modules_are_small(string name)
    {
        var (live, _, _) = Of(name);
        var given = LiveGiven.Car + live.Numbers.Length;
        var (step, trim) = (RecordModule.Of(live.Step.Drawn, given).Length, RecordModule.Of(live.Trim.Record, live.Trim.Numbers).Length);
        var ahead = RecordModule.Ahead(live.Step.Drawn, given).Length;
        TestContext.Current.SendDiagnosticMessage($"{name}: step {step} B, ahead {ahead} B, balance {trim} B, {live.Numbers.Length} numbers");
        Assert.InRange(step, 1, 4096);
        Assert.InRange(ahead, 1, 4096);
        Assert.InRange(trim, 1, 12_288);
    }

    private static (LiveCar Live, LiveAsked Asked, PassView View) Of(string name)
    {
        var view = new PassTrial(Garage).See(new PassState { Car = name }, full: true).View!;
        var lines = SliderLine.Of(view, Heaveline.Quantities.ReaderUnits.Metric).SelectMany(group => group.Lines);
        var asked = LiveSettings.Of(view, lines);
        var clock = System.Diagnostics.Stopwatch.StartNew();
        var live = LiveCar.Of(asked)!;
        var sliders = live.Sliders.Select(slider => $"{slider.Key} {slider.Rows.Count}×{slider.Columns.Count}");
        TestContext.Current.SendDiagnosticMessage($"{name}: {clock.ElapsedMilliseconds} ms, {string.Join(", ", sliders)}");
        return (live, asked, view);
    }

    // Places at which the car can stand.
    private static IEnumerable<(int?[] At, RideModel Model)> Drawn(LiveCar live, LiveAsked asked)
    {
        var random = new Random(7);
        for (var k = 0; k < Places; k++)
        {
            int?[] at = [.. live.Sliders.Select(slider => (int?)random.Next(slider.Rows.Count))];
            var keys = live.Sliders.Select(slider => slider.Key).ToList();
            int?[] all = [.. asked.Sliders.Select(slider => keys.IndexOf(slider.Key) is var i and >= 0 ? at[i] : null)];
            if (live.Sliders.Zip(at, (slider, place) => slider.Rows[place!.Value]).Any(row => row is null) || asked.At(all) is not { } there)
            {
                continue;
            }

            RideModel model;
            try
            {
                model = RideModel.Of(there.Car, there.Load);
            }
            catch (Heaveline.Quantities.RefusedValueException)
            {
                continue;
            }

            yield return (at, model);
        }
    }

    // The trim as the core finds it, and the position it found it at.
    internal static void Trim(double[] given, RideModel model)
    {
        var n = model.Numbers;
        double[] trim = [.. n.TrimTravel, .. n.TrimForce, .. n.TrimLoad, .. n.TrimFlow[..2]];
        trim.CopyTo(given, LiveGiven.Trim);
        var (pitch, roll) = (model.Trim.Pitch, model.Trim.Roll);
        var heave = model.Trim.FrontHeight + (n.X[0] * pitch) + (n.Body.LeftOfMiddle * roll);
        double[] wheels = [.. Enumerable.Range(0, 4).Select(i => n.TrimTravel[i] + heave - (n.X[i] * pitch) + (n.Y[i] * roll))];
        double[] position = [heave, pitch, roll, .. wheels, .. n.TrimFlow[..2]];
        position.CopyTo(given, LiveGiven.Position);
    }
}
