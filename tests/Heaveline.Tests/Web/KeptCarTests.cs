using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Tests.House;
using Heaveline.Tuning;
using Heaveline.Web.Tuning;

namespace Heaveline.Tests.Web;

/// <summary>
/// A setting as a change of the car and as words in a file are one thing: the file read back crosses a road as the car on the page did.
/// </summary>
public class KeptCarTests
{
    private static readonly string Garage = Path.Combine(Checkout.Root, "examples", "garage");

    // Springs by rate, at the wheel, by table, by wire, by leaves, by torsion bar; dampers by table and by ratio; a fluid line; a two-wheeler.
    public static TheoryData<string> Cars =>
        [.. Directory.EnumerateFiles(Garage, "*.yaml").Select(path => Path.GetFileNameWithoutExtension(path)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Cars))]
    public void Every_setting_kept_reads_back_as_the_same_car(string name)
    {
        var reading = CarFile.Load(Path.Combine(Garage, name + ".yaml"), Garage);
        var car = reading.Value!;
        foreach (var grows in new[] { false, true })
        {
            foreach (var setting in Settings.All(grows))
            {
                if (setting.ScaleOf(car) is { } scale)
                {
                    foreach (var part in new[] { 0.37, 0.61 })
                    {
                        Agree(name, reading, Values((setting.Key, scale.From + (part * (scale.To - scale.From)))), grows);
                    }
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void All_settings_together_read_back_as_the_same_car(string name)
    {
        var reading = CarFile.Load(Path.Combine(Garage, name + ".yaml"), Garage);
        var values = Settings.All(true).Where(setting => setting.ScaleOf(reading.Value!) is not null)
            .Select(setting => (setting.Key, Scale: setting.ScaleOf(reading.Value!)!))
            .Select(one => (one.Key, one.Scale.From + (0.43 * (one.Scale.To - one.Scale.From))));
        Agree(name, reading, Values([.. values]), true);
    }

    [Fact]
    public void A_gas_spring_kept_reads_back_as_the_same_car()
    {
        var text = File.ReadAllText(Path.Combine(Garage, "fern-saloon.yaml"))
            .Replace(
                "    rate: 38 N/mm ± 4 %\n    tester: club spring press\n", "    gas: {area: 60 cm², volume: 1.8 L}\n", StringComparison.Ordinal);
        var folder = Directory.CreateTempSubdirectory("heaveline-gas-").FullName;
        try
        {
            var path = Path.Combine(folder, "gas.yaml");
            File.WriteAllText(path, text);
            var reading = CarFile.Load(path, folder);
            Assert.IsType<GasSpring>(reading.Value!.Rear.Spring.Law);
            Agree("gas", reading, Values(("rear-spring", 1.23), ("rear-damping", 0.77)), false, folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void An_interconnection_set_to_nothing_is_taken_out_of_the_file()
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-link-").FullName;
        try
        {
            var path = Path.Combine(folder, "linked.yaml");
            File.WriteAllText(
                path,
                File.ReadAllText(Path.Combine(Garage, "fern-saloon.yaml")) + "interconnection:\n  elastic: {rate: 4 N/mm, damping: 120 N s/m}\n");
            var reading = CarFile.Load(path, folder);
            Assert.IsType<ElasticLink>(reading.Value!.Interconnection);
            var changed = Agree("linked", reading, Values(("link", 0.0), ("link-damping", 0.0)), false, folder);
            Assert.Null(changed.Interconnection);
            Agree("linked", reading, Values(("link", 0.0)), false, folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Luggage_kept_is_a_load_state_of_its_own()
    {
        var reading = CarFile.Load(Path.Combine(Garage, "fern-saloon.yaml"), Garage);
        var car = Settings.Apply(reading.Value!, Values(("wheelbase", 2810.0)), true);
        var chosen = car.LoadStates.Single(state => state.Name == "four up with luggage");
        var loaded = Luggage.On(chosen, car, 62.5);
        var words = SettingWords.Of(reading.Value!, car, Values(("wheelbase", 2810.0)), true, reading.Root!)
            .Concat(Luggage.Words(chosen, loaded, reading.Root!));
        var kept = Read("fern-saloon", reading.Root!, words, Garage);
        Same(RideModel.Of(car, loaded), RideModel.Of(kept, kept.LoadStates.Single(state => state.Name == loaded.Name)));
    }

    [Theory]
    [InlineData("front-spring", 24.0, "front/spring/rate", "24 N/mm ± 4 %")]
    [InlineData("rear-stop", 60.0, "rear/bump-stop/clearance", "60 mm ± 4 mm")]
    [InlineData("wheelbase", 2810.0, "wheelbase", "2.81 m ± 5 mm")]
    public void What_is_set_is_as_uncertain_as_what_it_takes_the_place_of(string key, double value, string path, string text)
    {
        var reading = CarFile.Load(Path.Combine(Garage, "fern-saloon.yaml"), Garage);
        var car = Settings.Apply(reading.Value!, Values((key, value)), false);
        var words = SettingWords.Of(reading.Value!, car, Values((key, value)), false, reading.Root!).ToArray();
        Assert.Equal(text, words.Single(edit => string.Join('/', edit.Path) == path).Value!.Text);
        if (key == "wheelbase")
        {
            Assert.EndsWith("kg m2 ± 10 %", words.Single(edit => edit.Path[^1] == "pitch-inertia").Value!.Text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("damping-ratio: 0.3 ± 20 %", "0.39 ± 20 %")]
    [InlineData("damping-ratio: 0.3 ± 0.05", "0.39 ± 0.05")]
    [InlineData("damping-ratio: 0.3 +/- 20%", "0.39 ± 20%")]
    [InlineData("damping-ratio: 0.3", "0.39")]
    public void A_damping_ratio_times_as_strong_keeps_its_doubt(string damper, string text)
    {
        var fern = File.ReadAllText(Path.Combine(Garage, "fern-saloon.yaml"));
        var (from, to) = (fern.LastIndexOf("  damper:", StringComparison.Ordinal), fern.LastIndexOf("  bump-stop:", StringComparison.Ordinal));
        var reading = CarFile.Read(new SourceText("ratio.yaml", $"{fern[..from]}  damper: {{{damper}}}\n{fern[to..]}"), Garage);
        Assert.True(reading.Value is not null, reading.Format());
        var values = Values(("rear-damping", 1.3));
        var car = Settings.Apply(reading.Value, values, false);
        Assert.Equal(text, Assert.Single(SettingWords.Of(reading.Value, car, values, false, reading.Root!)).Value!.Text);
    }

    [Theory]
    [InlineData("front-spring", 0.0, "above 0 N/mm")]
    [InlineData("rear-spring", -3.0, "above 0 N/mm")]
    [InlineData("front-damping", -0.1, "0 × described or above")]
    [InlineData("wheelbase", 100.0, "between 500 and 10000 mm")]
    [InlineData("link", double.NaN, "0 N/mm or above")]
    public void What_no_car_can_have_is_refused_in_the_unit_of_the_slider(string key, double value, string limit)
    {
        var car = CarFile.Load(Path.Combine(Garage, "fern-saloon.yaml"), Garage).Value!;
        var refused = Assert.Throws<Heaveline.Quantities.RefusedValueException>(() => Settings.Apply(car, Values((key, value)), false));
        Assert.Equal(limit, refused.Limit);
    }

    [Theory]
    [InlineData("fern-saloon", AxleEnd.Front, 1.10)]
    [InlineData("drover-van", AxleEnd.Rear, 1.60)]
    [InlineData("thimble-city-car", AxleEnd.Rear, 1.35)]
    [InlineData("pebble-fluid-car", AxleEnd.Front, 1.75)]
    public void A_spring_set_by_its_frequency_gives_that_frequency(string name, AxleEnd end, double hertz)
    {
        var car = CarFile.Load(Path.Combine(Garage, name + ".yaml"), Garage).Value!;
        var load = car.LoadStates[0];
        var spring = new SpringSetting(end);
        var set = spring.Apply(car, spring.ValueFor(RideModel.Of(car, load), car, hertz));
        // Five digits of the rate, and table rows to a hundredth of a millimetre, are what is left between them.
        Assert.Equal(hertz, AxleRide.Of(RideModel.Of(set, load), end).Rates.Frequency, 3e-4 * hertz);
    }

    private static Car Agree(string name, Reading<Car> reading, ImmutableDictionary<string, double> values, bool grows, string? folder = null)
    {
        var set = Settings.Apply(reading.Value!, values, grows);
        var kept = Read(name, reading.Root!, SettingWords.Of(reading.Value!, set, values, grows, reading.Root!), folder ?? Garage);
        Same(RideModel.Of(set), RideModel.Of(kept));
        if (set.LoadStates.Count > 0)
        {
            Same(RideModel.Of(set, set.LoadStates[^1]), RideModel.Of(kept, kept.LoadStates[^1]));
        }

        return kept;
    }

    private static Car Read(string name, Node root, IEnumerable<KeyEdit> words, string folder)
    {
        var written = VariantFile.Write("kept: \"so\"", name + ".yaml", root, words);
        Assert.True(written.Text is not null, written.Refusal?.Message);
        var text = written.Text;
        var reading = CarFile.Read(new SourceText(Path.Combine(folder, "kept.yaml"), text), folder);
        Assert.True(reading.Value is not null, $"{text}\n{reading.Format()}");
        return reading.Value;
    }

    private static void Same(RideModel page, RideModel file)
    {
        var road = Road.From(new RoundTopHump { Height = new(0.06), Length = new(3.0) });
        var options = new PassOptions { Method = FixedStep.Once, Record = new() { SettlingTime = 1.2 } };
        var (a, b) = (PassMeasures.Of(Pass.Of(page, road, 9.0, options)).Pitch, PassMeasures.Of(Pass.Of(file, road, 9.0, options)).Pitch);
        Close(a.Hit!.PeakAngle, b.Hit!.PeakAngle);
        Close(a.Hit.PeakAcceleration, b.Hit.PeakAcceleration);
        Close(a.Settling!.RmsAngle, b.Settling!.RmsAngle);
        Close(a.Settling.LateAngle, b.Settling.LateAngle);
    }

    private static void Close(double page, double file) => Assert.Equal(page, file, 1e-6 * Math.Abs(page));

    private static ImmutableDictionary<string, double> Values(params ReadOnlySpan<(string Key, double Value)> values)
    {
        var all = ImmutableDictionary<string, double>.Empty;
        foreach (var (key, value) in values)
        {
            all = all.SetItem(key, value);
        }

        return all;
    }
}
