using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json.Nodes;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Recording;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// A state at rest for the page's script, so that it goes on by itself: the car's step and balance as modules, what its sliders move, the road.
/// </summary>
/// <param name="Structure">What there is, as JSON.</param>
/// <param name="Numbers">Doubles, little-endian: the car's numbers, each slider's columns, the tracks' knots and coefficients.</param>
/// <param name="Step">WebAssembly module of a step.</param>
/// <param name="Ahead">Of what a step reads and does not change.</param>
/// <param name="Balance">Of the balance at rest.</param>
/// <param name="Windows">Of the stretches of time that the page's numbers look at.</param>
/// <param name="Measures">Of those numbers, from what their curves answer.</param>
/// <param name="Folds">One a kind of question to a curve.</param>
public sealed record LivePass(
    string Structure, byte[] Numbers, byte[] Step, byte[] Ahead, byte[] Balance, byte[] Windows, byte[] Measures, IReadOnlyList<byte[]> Folds)
{
    // A frame has a sixtieth of a second for all that it draws: a run of so many steps takes about 2 ms of it on a small machine.
    private const int MostSteps = 40_000;

    // A megabyte of road is no longer sent beside a picture.
    private const int MostKnots = 20_000;

    // The same for every car.
    private static readonly FoldRecord[] FoldRecords = [.. CurveFolds.Kinds.Select(CurveFolds.Of)];
    private static readonly byte[][] FoldModules = [.. FoldRecords.Select(RecordModule.Of)];

    /// <summary>What of a state can be followed; null where nothing can.</summary>
    /// <param name="id">Number of the state.</param>
    /// <param name="view">The state.</param>
    /// <param name="lines">Its sliders.</param>
    /// <param name="units">The reader's units.</param>
    internal static LivePass? Of(int id, PassView view, IReadOnlyList<SliderLine> lines, ReaderUnits units)
    {
        var (pass, model) = (view.Now.Pass, view.Now.Model);
        var wheels = RoadUnderWheels.Of(model, pass.Road);
        var knots = Enumerable.Range(0, 4).Select(i => wheels[i]).Distinct().Sum(profile => profile.Knots.Length);
        if (!view.Now.IsWhole || wheels.HasJump || knots > MostKnots)
        {
            return null;
        }

        var measures = new LiveMeasures(model, pass.Road, pass.SampleStep, PassCatalogue.For(model, pass.Road, MeasureUse.BeforeAfter));
        if (LiveCar.Of(LiveSettings.Of(view, lines), measures) is not { Sliders.Count: > 0 } car)
        {
            return null;
        }

        var per = (int)Math.Ceiling(pass.SampleStep / car.LongestStep);
        return (long)per * pass.Count > MostSteps ? null : Of(id, view, lines, units, car, measures, wheels, per);
    }

    private static LivePass Of(
        int id,
        PassView view,
        IReadOnlyList<SliderLine> lines,
        ReaderUnits units,
        LiveCar car,
        LiveMeasures measures,
        RoadUnderWheels wheels,
        int per)
    {
        var (pass, made) = (view.Now.Pass, car.Further!);
        var given = LiveGiven.Car + car.Numbers.Length + (2 * made.Questions.Count);
        var step = car.Step.DrawnAndRead;
        var numbers = new List<double>(car.Numbers);
        var sliders = new JsonArray();
        foreach (var slider in car.Sliders)
        {
            var line = lines.First(one => one.Key == slider.Key);
            sliders.Add((JsonNode)new JsonObject
            {
                ["key"] = slider.Key,
                ["from"] = line.Scale.From,
                ["step"] = line.Scale.Step,
                ["places"] = slider.Rows.Count,
                ["columns"] = Integers(slider.Columns),
            });
            // Column by column: what stands beside each other is alike. Where no car stands is no number, which is never shown.
            numbers.AddRange(slider.Columns.SelectMany((_, k) => slider.Rows.Select(row => row?[k] ?? double.NaN)));
        }

        var tracks = Enumerable.Range(0, 4).Select(i => wheels[i]).Distinct().ToList();
        foreach (var track in tracks)
        {
            numbers.AddRange(track.Knots);
            numbers.AddRange(track.Coefficients);
        }

        var structure = new JsonObject
        {
            ["state"] = id,
            ["given"] = given,
            ["free"] = RecordModule.Free(step, given),
            ["drawn"] = step.Sample.Count,
            ["shown"] = car.Step.Draws.Count,
            ["asked"] = new JsonArray([.. made.Questions.Select(question => Asked(question, car.Step.Draws.Count))]),
            ["folds"] = new JsonArray([.. FoldRecords.Select(fold => (JsonNode)new JsonObject
            {
                ["reach"] = fold.Reach,
                // JSON has no infinity.
                ["begin"] = new JsonArray([.. fold.Begin.Select(begin => (JsonNode)begin.ToString("R", CultureInfo.InvariantCulture))]),
            })]),
            ["measures"] = new JsonArray([.. measures.Measures.Select(measure => LiveNumber.Of(measure, units))]),
            ["none"] = LiveNumber.None,
            ["balance"] = car.Trim.Numbers.Count,
            ["sliders"] = sliders,
            ["tracks"] = Integers([.. tracks.Select(track => track.Knots.Length)]),
            ["under"] = Integers([.. Enumerable.Range(0, 4).Select(i => tracks.IndexOf(wheels[i]))]),
            ["behind"] = pass.Model.Car.Wheelbase.Si,
            ["per"] = per,
            ["limit"] = MostSteps,
            ["sample"] = pass.SampleStep,
            ["drive"] = Drive(view, lines),
            ["steepest"] = In.Degrees.Of(PassRange.LargestAngle),
            ["stride"] = SceneMotion.StrideOf(view.Now),
            ["most"] = ThinCurve.Most,
            ["millimetre"] = units.Factor("mm"),
        };
        return new LivePass(
            structure.ToJsonString(),
            MemoryMarshal.AsBytes(CollectionsMarshal.AsSpan(numbers)).ToArray(),
            RecordModule.Of(step, given),
            RecordModule.Ahead(step, given),
            RecordModule.Of(car.Trim.Record, car.Trim.Numbers),
            RecordModule.Of(made.Record, made.Windows),
            RecordModule.Of(made.Record, made.Numbers),
            FoldModules);
    }

    // The clock of a pass at any speed, as PassTiming sets it: distances, m, and times, s.
    private static JsonObject Drive(PassView view, IReadOnlyList<SliderLine> lines)
    {
        var (pass, road, record) = (view.Now.Pass, view.Now.Pass.Road, PassRecord.Default);
        var (wheelbase, tyres) = (pass.Model.Car.Wheelbase.Si, pass.Model.Car.Axles.Select(axle => axle.Tyre.ContactLength.Si));
        var end = Math.Max(road.End, road.EventEnd ?? 0.0) + wheelbase;
        return new JsonObject
        {
            ["speed"] = pass.Speed,
            ["shownSpeed"] = lines.FirstOrDefault(line => line.Key == PassState.Speed)?.Value,
            // Of what its slider shows, in metres.
            ["perHeight"] = 1e-3 / (lines.FirstOrDefault(line => line.Key == PassState.Height)?.Factor ?? 1.0),
            ["height"] = road.Event is null ? null : Math.Abs(ObstacleHeight.Of(road)),
            ["lead"] = record.LeadTime,
            ["settling"] = record.SettlingTime,
            ["longest"] = PassTrial.Longest,
            ["before"] = (0.5 * tyres.Max()) - Math.Min(0.0, road.Start),
            ["end"] = end,
            ["over"] = end + (0.5 * tyres.Max()),
            ["leaves"] = pass.RearLeaves * pass.Speed,
        };
    }

    private static JsonNode Asked(LiveQuestion question, int first) => new JsonObject
    {
        ["fold"] = CurveFolds.Kinds.ToList().IndexOf((CurveQuestionKind)question.Kind),
        ["column"] = first + question.Signal,
        ["apart"] = question.Apart,
    };

    private static JsonArray Integers(IReadOnlyList<int> values) => new([.. values.Select(value => (JsonNode)value)]);
}
