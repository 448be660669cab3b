using System.Text.Json.Nodes;
using Heaveline.Figures;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Studies;
using Heaveline.Tests.Files;
using Heaveline.Tests.House;
using Heaveline.Web.Charts;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

public class PassPageLogicTests
{
    [Fact]
    public void A_crossing_computed_with_slips_says_so()
    {
        var fern = File.ReadAllText(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"));
        IReadOnlyList<Warning> Slips(string text) => CarFile.Read(new SourceText("slips.yaml", text)).Warnings;
        Assert.Equal("", PassWords.Slips(Slips(fern)));
        var high = fern.Replace("centre-of-gravity-height: 0.56 m", "centre-of-gravity-height: 1.9 m", StringComparison.Ordinal);
        var one = PassWords.Slips(Slips(high));
        Assert.StartsWith("This is computed with a number of the car's file that looks like a slip: ", one, StringComparison.Ordinal);
        Assert.Contains("1.9 m", one, StringComparison.Ordinal);
    }

    [Fact]
    public void A_length_that_is_not_given_is_called_not_known_and_no_slip()
    {
        var reading = CarFile.Read(new SourceText("kept.yaml", TextCar.With(
            "    spring-per-wheel: 0.90\n", "    spring-per-wheel: 0.90\n  bought-spring: {rate: 25 N/mm}\n")));
        var words = PassWords.Slips(reading.Warnings);
        Assert.StartsWith(
            "Something that this rests on is not known: front bought spring does not say where it stands", words, StringComparison.Ordinal);
        Assert.DoesNotContain("slip", words, StringComparison.Ordinal);
    }

    private static readonly GarageView Demo = new(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });

    [Fact]
    public void A_value_beyond_a_slider_is_said_beside_it_with_what_it_reaches()
    {
        var state = new PassState { Car = "fern-saloon", Load = "driver", Road = "village-hump" };
        SliderLine Line(double stiff) => SliderLine.Of(
                new PassTrial(Demo).See(state.With("rear-spring", stiff), full: false).View!, Heaveline.Quantities.ReaderUnits.Metric)
            .SelectMany(group => group.Lines).Single(line => line.Key == "rear-spring");
        var scale = Line(40.0).Scale;
        Assert.Null(Line(40.0).Beyond);
        Assert.Null(Line(scale.To).Beyond);
        Assert.Null(Line(scale.From).Beyond);
        var far = Line(3.0 * scale.To);
        Assert.StartsWith(
            $"{far.Text(far.Value)} N/mm is above what the slider reaches ({far.Text(scale.From)} to {far.Text(scale.To)} N/mm)", far.Beyond);
        Assert.StartsWith($"{far.Text(0.9 * scale.From)} N/mm is below what the slider reaches", Line(0.9 * scale.From).Beyond);
    }

    [Fact]
    public void An_address_gives_back_the_state_that_wrote_it()
    {
        var state = new PassState
        {
            Car = "fern saloon & co",
            Load = "four up",
            Road = "pothole",
            Beside = "fern-saloon",
            AsFrequencies = true,
            InertiaGrows = true,
        }
            .With("front-spring", 18.5).With("speed", 63.0).With("height", 41.5).With("luggage", 60.0);
        Assert.Equal(state.Query, PassState.Of(state.Query, "other").Query);
        Assert.True(state.IsSameAs(PassState.Of(state.Query, "other")));
    }

    [Fact]
    public void A_number_of_an_address_that_cannot_be_read_is_kept_and_objected_to()
    {
        var state = PassState.Of("?car=&front-spring=soft&rear-spring=NaN&speed=1e400&height=5 kg&unknown=3&springs=what", "fern-saloon");
        Assert.Equal("fern-saloon", state.Car);
        Assert.Empty(state.Values);
        Assert.False(state.AsFrequencies);
        Assert.Equal(["front-spring", "height", "rear-spring", "speed", "springs"], state.Unread.Keys);
        Assert.Equal(state.Query, PassState.Of(state.Query, "other").Query);
        var (view, objections) = new PassTrial(Demo).See(state, full: false);
        Assert.Null(view);
        Assert.Equal(state.Unread.Keys, objections.Select(o => o.Choice));
        Assert.StartsWith("front-spring 'soft': ", objections[0].Sentence, StringComparison.Ordinal);
        Assert.Empty(
            state.With("speed", 40.0).With("height", null).With("front-spring", 20.0).With("rear-spring", null).With("springs", null).Unread);
    }

    [Fact]
    public void What_an_address_sets_as_it_is_anyway_is_not_changed()
    {
        var state = PassState.Of("?car=fern-saloon&speed=40&front-damping=1&luggage=0&rear-damping=1.5", "");
        Assert.True(state.IsSameAs(PassState.Of("?car=fern-saloon&front-damping=1&luggage=0&rear-damping=1.5", "")));
        var lines = SliderLine.Of(new PassTrial(Demo).See(state, full: false).View!, Heaveline.Quantities.ReaderUnits.Metric)
            .SelectMany(group => group.Lines);
        Assert.Equal(["rear-damping"], lines.Where(line => line.IsChanged).Select(line => line.Key));
    }

    [Theory]
    [InlineData("speed=40,5", 40.5)]
    [InlineData("speed=20 mph", 32.18688)] // 1 mile = 1.609344 km (international yard, 1959).
    [InlineData("speed=10 m/s", 36.0)]
    public void A_speed_in_an_address_is_written_as_anywhere_else(string query, double kilometresPerHour)
    {
        var state = PassState.Of("?" + query, "fern-saloon");
        Assert.Equal(kilometresPerHour, state.KilometresPerHour);
        Assert.Empty(state.Unread);
    }

    [Fact]
    public void Where_no_car_is_named_the_first_one_that_can_be_driven_is_taken()
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-usual-").FullName;
        try
        {
            var garage = new GarageView(new ServeOptions { Garage = folder });
            Assert.Null(garage.UsualCar);
            File.WriteAllText(Path.Combine(folder, "a-torn-one.yaml"), "car: A torn one\nwheelbase: 2700 kg\n");
            Assert.Equal("a-torn-one", garage.UsualCar);
            File.Copy(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"), Path.Combine(folder, "fern-saloon.yaml"));
            Assert.Equal(["a-torn-one", "fern-saloon"], garage.CarNames);
            Assert.Equal("fern-saloon", garage.UsualCar);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Undo_and_redo_go_through_every_state_that_was_left()
    {
        var (a, b, c) = (new PassState { Car = "a" }, new PassState { Car = "b" }, new PassState { Car = "c" });
        var history = new StateHistory();
        Assert.Null(history.Undo(a));
        history.Leave(a);
        history.Leave(b);
        Assert.Equal(b, history.Undo(c));
        Assert.Equal(a, history.Undo(b));
        Assert.False(history.CanUndo);
        Assert.Equal(b, history.Redo(a));
        Assert.Equal(c, history.Redo(b));
        Assert.False(history.CanRedo);
        history.Undo(c);
        history.Leave(b);
        Assert.False(history.CanRedo);
    }

    [Fact]
    public void Without_a_change_there_is_no_former_state_and_with_one_there_is()
    {
        var trial = new PassTrial(Demo);
        var state = new PassState { Car = "fern-saloon" };
        Assert.Null(trial.See(state, full: false).View!.Former);
        var view = trial.See(state.With("rear-spring", 48.0), full: false).View!;
        Assert.Equal("as described", view.Former!.Name);
        Assert.NotEqual(view.Former.Measures.Pitch.Settling!.RmsAngle, view.Now.Measures.Pitch.Settling!.RmsAngle);
        Assert.Equal("Fern saloon, cured", trial.See(state with { Beside = "fern-saloon-cured" }, full: false).View!.Former!.Name);
    }

    [Fact]
    public void The_former_state_is_what_the_car_as_described_does_on_the_same_road_at_the_same_speed()
    {
        var trial = new PassTrial(Demo);
        var drive = new PassState { Car = "fern-saloon", Load = "driver" }.With("speed", 55.0).With("height", 50.0);
        var plain = trial.See(drive, full: false).View!;
        var changed = trial.See(drive.With("front-damping", 1.5), full: false).View!;
        Assert.Equal(plain.Now.Measures.Pitch.Hit!.PeakAcceleration, changed.Former!.Measures.Pitch.Hit!.PeakAcceleration);
        Assert.Equal(0.050, Math.Abs(ObstacleHeight.Of(plain.Now.Pass.Road)), 1e-6);
    }

    [Fact]
    public void Names_that_are_not_here_are_told_apart()
    {
        var trial = new PassTrial(Demo);
        var state = new PassState { Car = "fern-saloon" };
        string[] Wrong(PassState wrong) => [.. trial.See(wrong, full: false).Objections.Select(o => o.Choice)];
        Assert.Equal(["car"], Wrong(state with { Car = "../fern-saloon" }));
        Assert.Equal(["load"], Wrong(state with { Load = "nobody" }));
        Assert.Equal(["road"], Wrong(state with { Road = "../../roads/country-lane.csv" }));
        Assert.Equal(["speed"], Wrong(state.With("speed", 900.0)));
        Assert.Equal(["car", "road", "speed"], Wrong((state with { Car = "nobody", Road = "nowhere" }).With("speed", 0.5)));
    }

    [Fact]
    public void A_road_that_takes_too_long_is_driven_for_its_first_part()
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-long-").FullName;
        try
        {
            File.Copy(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"), Path.Combine(folder, "fern-saloon.yaml"));
            File.WriteAllText(Path.Combine(folder, "waves.yaml"), "road: long waves\nsine: {amplitude: 5 mm, wavelength: 10 m, waves: 100}\n");
            var view = new PassTrial(new GarageView(new ServeOptions { Garage = folder })).See(
                new PassState { Car = "fern-saloon", Road = "waves.yaml" }.With("speed", 36.0), full: false).View!;
            Assert.True(view.IsCut);
            Assert.Equal(PassTrial.Longest, view.Now.Pass.Time[^1], 0.01);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // Words of a panel may hold a number that a slider moves, as the delay of the rear wheels on a rough road: the panel is known by its id.
    [Fact]
    public void A_longer_wheelbase_on_a_rough_road_keeps_every_panel_and_the_curves_behind_it()
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-rough-").FullName;
        try
        {
            File.Copy(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"), Path.Combine(folder, "fern-saloon.yaml"));
            foreach (var file in new[] { "country-lane.yaml", "country-lane.csv" })
            {
                File.Copy(Path.Combine(Checkout.Root, "examples", "roads", file), Path.Combine(folder, file));
            }

            var trial = new PassTrial(new GarageView(new ServeOptions { Garage = folder }));
            var state = new PassState { Car = "fern-saloon", Road = "country-lane.yaml" }.With("speed", 30.0);
            var (plain, longer) = (Curves(trial, state), Curves(trial, state.With("wheelbase", 2900.0)));
            Assert.Equal("pitch", plain[0].Id);
            Assert.NotEqual(plain.Single(panel => panel.Id == "road").Y.Label, longer.Single(panel => panel.Id == "road").Y.Label);
            Assert.Equal(plain.Select(panel => panel.Id), longer.Select(panel => panel.Id));
            Assert.Equal(plain.Length, plain.Select(panel => panel.Id).Distinct().Count());
            // Both meet the same road, which is drawn once.
            Assert.All(
                plain.Zip(longer), pair => Assert.Equal((pair.First.Id == "road" ? 1 : 2) * pair.First.Traces.Length, pair.Second.Traces.Length));
            Assert.All(longer, panel => Assert.Contains(
                $"\"id\":\"{panel.Id}\"",
                ChartSheet.Of(PassCurves.Of(trial.See(state, full: false).View!.Now, null)).Structure,
                StringComparison.Ordinal));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        static ChartPanel[] Curves(PassTrial trial, PassState state)
        {
            var view = trial.See(state, full: false).View!;
            return [.. PassCurves.Of(view.Now, view.Former).Panels.OfType<ChartPanel>()];
        }
    }

    [Fact]
    public void A_story_falls_into_how_it_pitched_and_all_the_rest()
    {
        var story = PassWords.Story(new PassTrial(Demo).See(
            new PassState { Car = "fern-saloon", Load = "four up with luggage", Road = "village-hump-100" }.With("speed", 60.0), full: false).View!);
        Assert.StartsWith("The hit lasts ", story[0], StringComparison.Ordinal);
        Assert.EndsWith(" by pitching as by heaving above the road.", story[0], StringComparison.Ordinal);
        Assert.StartsWith("Both ", story[1], StringComparison.Ordinal);
        Assert.Contains("The dipped beam ", story[1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_thinned_curve_keeps_its_peaks_and_its_ends()
    {
        double[] xs = [.. Enumerable.Range(0, 5000).Select(k => 0.001 * k)];
        double[] ys = [.. xs.Select((x, k) => Math.Sin(9.0 * x) + (k == 3333 ? 7.0 : 0.0))];
        var thin = ThinCurve.Of(Trace.From("", xs, ys), double.PositiveInfinity);
        Assert.InRange(thin.Xs.Length, 100, ThinCurve.Most);
        Assert.Equal(ys.Max(), thin.Ys.Max());
        Assert.Equal(ys.Min(), thin.Ys.Min());
        Assert.Equal((xs[0], xs[^1]), (thin.Xs[0], thin.Xs[^1]));
        Assert.True(thin.Xs.Zip(thin.Xs.Skip(1)).All(pair => pair.First < pair.Second));
    }

    [Fact]
    public void A_scene_moves_as_the_record_says()
    {
        var crossing = new PassTrial(Demo).See(new PassState { Car = "fern-saloon", Load = "four up with luggage" }, full: false).View!.Now;
        var motion = SceneMotion.Of(crossing);
        var stride = SceneMotion.StrideOf(crossing);
        var k = motion.Length / SceneMotion.PerSample / 2;
        var (front, trim) = (crossing.Pass.FrontHeight, crossing.Model.Trim);
        // The car is laden evenly: its left side does what its middle does.
        Assert.Equal(trim.FrontHeight + front[k * stride], motion[SceneMotion.PerSample * k], 2e-3);
        Assert.Equal(crossing.Pass.Travel(0)[k * stride], motion[(SceneMotion.PerSample * k) + 2] - motion[SceneMotion.PerSample * k], 1e-6);
        Assert.Equal(crossing.Pass.Travel(2)[k * stride], motion[(SceneMotion.PerSample * k) + 3] - motion[(SceneMotion.PerSample * k) + 1], 1e-6);
    }

    [Theory]
    [InlineData(1.0, 0.75, Better.Less, "better: 25\u00a0% less")]
    [InlineData(1.0, 1.25, Better.Less, "worse: 25\u00a0% more")]
    [InlineData(1.0, 1.001, Better.Less, "as before")]
    [InlineData(1.0, 1.25, Better.Neither, "25\u00a0% more")]
    [InlineData(1.0, 1.25, Better.More, "better: 25\u00a0% more")]
    public void A_change_is_said_in_words(double before, double after, Better better, string words) =>
        Assert.Equal(words, new MeasureChange(HitCatalogue.PeakPitchAcceleration with { Better = better }, before, after).Words);

    [Fact]
    public void A_length_changes_by_a_length_a_share_by_points_and_a_small_negative_has_no_sign()
    {
        var margin = WheelCatalogue.Of(WheelPlace.Of(0, hasSides: true)).Single(m => m.Key == "front-left-bump-margin");
        Assert.Equal("worse: 12\u00a0mm less", new MeasureChange(margin, 8.0, -4.0).Words);
        Assert.Equal("0", new MeasureChange(margin, null, -0.2).Print(-0.2));
        Assert.Equal(
            "better: 3 points more",
            new MeasureChange(WheelCatalogue.Of(WheelPlace.Of(0, hasSides: true)).Single(m => m.Key == "front-left-least-load"), 40.0, 43.0).Words);
    }

    [Fact]
    public void The_download_is_the_answer_of_the_command_and_has_the_former_state_in_the_column_before()
    {
        var kept = JsonNode.Parse(File.ReadAllText(Path.Combine(Checkout.Root, "examples", "answers", "fern-saloon.pass.json")))!.AsObject();
        var state = new PassState { Car = "fern-saloon", Load = "four up with luggage", Road = "village-hump" }.With("speed", 50.0);
        var plain = Handed(state);
        Assert.Equal(kept.Select(p => p.Key), plain.Select(p => p.Key).Except(["former", "set"]));
        Assert.All(kept.Where(p => p.Key is not ("heaveline" or "tables")), p => Assert.Equal(p.Value!.ToJsonString(), plain[p.Key]!.ToJsonString()));
        Assert.Equal(Rows(kept).Select(r => Key(r)), Rows(plain).Select(r => Key(r)));
        Assert.All(Rows(kept).Zip(Rows(plain)).Where(pair => !Key(pair.First).StartsWith("error-", StringComparison.Ordinal)), pair => Assert.Equal(
            (double)pair.First["values"]![0]!, (double)pair.Second["values"]![0]!, 1e-6 * (1.0 + Math.Abs((double)pair.First["values"]![0]!))));

        var changed = Handed(state.With("rear-spring", 48.0));
        Assert.Equal("as described", (string?)changed["former"]);
        Assert.Equal(Value(plain, "settling-rms-pitch", 0), Value(changed, "settling-rms-pitch", 0));
        Assert.NotEqual(Value(plain, "settling-rms-pitch", 0), Value(changed, "settling-rms-pitch", 1));

        static JsonObject Handed(PassState state) =>
            JsonNode.Parse(PassRoutes.Json(new PassTrial(Demo).See(state, full: true).View!, "0"))!.AsObject();
        static IEnumerable<JsonNode> Rows(JsonObject answer) => answer["tables"]![0]!["rows"]!.AsArray().Select(r => r!);
        static string Key(JsonNode row) => (string)row["key"]!;
        static double Value(JsonObject answer, string key, int column) => (double)Rows(answer).Single(r => Key(r) == key)["values"]![column]!;
    }

    [Theory]
    [InlineData("softer front", "fern-saloon-softer-front")]
    [InlineData("  Très ferme (avant) ", "fern-saloon-très-ferme-avant")]
    [InlineData("../../etc/passwd", "fern-saloon-etc-passwd")]
    public void A_file_is_called_after_its_car_and_its_name(string name, string file) =>
        Assert.Equal(file, PassVariant.FileName("fern-saloon", name));

    [Theory]
    [InlineData("springs=nope", "springs 'nope': there is frequencies; leave it out for the usual.")]
    [InlineData("inertia=nope", "inertia 'nope': there is grows; leave it out for the usual.")]
    public void A_word_that_the_address_does_not_know_is_told_and_stays(string query, string sentence)
    {
        var state = PassState.Of(query, "fern-saloon");
        Assert.Equal(sentence, Assert.Single(state.Objections).Sentence);
        Assert.Contains(query, state.Query, StringComparison.Ordinal);
        Assert.Empty(PassState.Of("springs=frequencies&inertia=grows", "fern-saloon").Objections);
    }
}
