using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Recording;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

/// <summary>The numbers of the page as its record makes them, worked out line by line, against the measures of the core.</summary>
public class LiveMeasuresTests
{
    private const int Places = 4;

    private static readonly GarageView Garage = new(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });

    public static TheoryData<string, string> Drives
    {
        get
        {
            var drives = new TheoryData<string, string>();
            foreach (var car in Heaveline.Tests.Recording.StepRecordTests.Demo.Select(row => (string)row.Data))
            {
                foreach (var road in new[] { "village-hump", "pothole-left", "sine-pitch" })
                {
                    drives.Add(car, road);
                }
            }

            return drives;
        }
    }

    [Theory, MemberData(nameof(Drives))]
    public void Wherever_its_sliders_stand_the_recorded_numbers_are_the_measures_of_the_core(string car, string road)
    {
        var loads = Garage.Car(car)!.Value!.LoadStates.Select(load => load.Name).ToList();
        var compared = 0;
        foreach (var load in new[] { loads.FirstOrDefault(), loads.LastOrDefault() }.Distinct())
        {
            compared += Compare(new PassState { Car = car, Load = load, Road = road });
        }

        Assert.InRange(compared, 1, int.MaxValue);
    }

    [Fact]
    public void What_a_table_of_the_page_shows_is_noted_on_every_kind_of_road()
    {
        foreach (var road in new[] { "village-hump", "sine-pitch" })
        {
            var view = new PassTrial(Garage).See(new PassState { Car = "fern-saloon", Road = road }, full: true).View!;
            var wanted = PassCatalogue.For(view.Now.Model, view.Now.Pass.Road, MeasureUse.BeforeAfter);
            var noted = new LiveMeasures(view.Now.Model, view.Now.Pass.Road, view.Now.Pass.SampleStep, wanted).Measures;
            Assert.Equal(wanted.Select(m => m.Key), noted.Select(m => m.Key));
        }
    }

    [Fact]
    public void A_measure_that_needs_the_end_of_a_record_first_waits_for_the_program()
    {
        var view = new PassTrial(Garage).See(new PassState { Car = "fern-saloon" }, full: true).View!;
        Measure<Pass>[] wanted = [.. SettlingCatalogue.All, .. PassCatalogue.OwnError];
        var noted = new LiveMeasures(view.Now.Model, view.Now.Pass.Road, view.Now.Pass.SampleStep, wanted).Measures;
        Assert.Equal(["settling-rms-pitch", "settling-peak-pitch", "settling-late-pitch"], noted.Select(m => m.Key));
    }

    // How many crossings were compared.
    private static int Compare(PassState state)
    {
        var view = new PassTrial(Garage).See(state, full: true).View!;
        var lines = SliderLine.Of(view, ReaderUnits.Metric).SelectMany(group => group.Lines);
        var asked = LiveSettings.Of(view, lines);
        var (road, sample) = (view.Now.Pass.Road, view.Now.Pass.SampleStep);
        var measures = new LiveMeasures(view.Now.Model, road, sample, PassCatalogue.For(view.Now.Model, road, MeasureUse.BeforeAfter));
        var live = LiveCar.Of(asked, measures)!;
        var random = new Random(5);
        var compared = 0;
        for (var k = 0; k < Places; k++)
        {
            int?[] at = [.. live.Sliders.Select(slider => (int?)random.Next(slider.Rows.Count))];
            var keys = live.Sliders.Select(slider => slider.Key).ToList();
            int?[] all = [.. asked.Sliders.Select(slider => keys.IndexOf(slider.Key) is var i and >= 0 ? at[i] : null)];
            var speed = 5.0 + (15.0 * random.NextDouble());
            if (live.Sliders.Zip(at, (slider, place) => slider.Rows[place!.Value]).Any(row => row is null)
                || asked.At(all) is not { } there || Standing(there) is not { } model)
            {
                continue;
            }

            var given = live.Given(at);
            LiveCarTests.Trim(given, model);
            var request = new PassRequest(model, road, speed);
            var timing = PassTiming.Of(request, PassRecord.Default, FixedStep.Once);
            var wheels = RoadUnderWheels.Of(model, road);
            if (wheels.HasJump)
            {
                // Such a road is not recorded: the page waits for the program.
                return 1;
            }

            var samples = PassRun.Of(model, wheels, speed, timing, TestContext.Current.CancellationToken);
            var pass = new Pass(request, timing, samples, FixedStep.Statistics(timing, null, null));
            if (pass.Outcome != PassOutcome.Completed)
            {
                continue;
            }

            compared++;
            Same(measures, pass, Recorded(live, given, wheels, speed, timing), $"{state.Car}, {state.Load}, {speed:F2} m/s");
        }

        return compared;
    }

    private static void Same(LiveMeasures measures, Pass pass, double[] recorded, string where)
    {
        for (var i = 0; i < recorded.Length; i++)
        {
            var (measure, expected) = (measures.Measures[i], measures.Measures[i].Of(pass));
            if (!double.IsFinite(expected))
            {
                Assert.False(double.IsFinite(recorded[i]), $"{where}: {measure.Key} is not, recorded {recorded[i]:R}");
                continue;
            }

            // A margin is what is left of a travel: its size is that of the travel. A millimetre, a tenth of a degree counts as the least.
            var near = 1e-12 * Math.Max(Math.Abs(expected), 1.0);
            Assert.True(Math.Abs(expected - recorded[i]) <= near, $"{where}: {measure.Key} is {expected:R}, recorded {recorded[i]:R}");
        }
    }

    private static double[] Recorded(LiveCar live, double[] given, RoadUnderWheels wheels, double speed, PassTiming timing)
    {
        var step = live.Step with { Sample = live.Step.Signals };
        var (samples, each, numbers) = (RecordRun.Of(step, given, wheels, speed, timing), step.Sample.Count, live.Further!);
        double[] all = [.. given, .. new double[2 * numbers.Questions.Count]];
        (all[LiveGiven.Speed], all[LiveGiven.Start], all[LiveGiven.Last]) = (speed, timing.Start, timing.Samples - 1);
        var windows = RecordRun.Of(numbers.Record, numbers.Windows, all);
        double[] Column(int signal) => [.. Enumerable.Range(0, timing.Samples).Select(k => samples[(k * each) + signal])];
        for (var q = 0; q < numbers.Questions.Count; q++)
        {
            var question = numbers.Questions[q];
            var fold = CurveFolds.Of((CurveQuestionKind)question.Kind);
            double[] stretch = [windows[2 * q], windows[2 * q], windows[(2 * q) + 1], windows[(2 * q) + 1]];
            stretch.CopyTo(all, LiveGiven.Stretch);
            var column = Column(question.Signal);
            var answers = RecordRun.Of(fold, all, column, column, question.Apart);
            for (var i = 0; i < answers.Length; i++)
            {
                all[given.Length + (2 * q) + i] = answers[i].One;
            }
        }

        return RecordRun.Of(numbers.Record, numbers.Numbers, all);
    }

    private static RideModel? Standing((Heaveline.Cars.Car Car, Heaveline.Cars.LoadState Load) there)
    {
        try
        {
            return RideModel.Of(there.Car, there.Load);
        }
        catch (RefusedValueException)
        {
            return null;
        }
    }
}
