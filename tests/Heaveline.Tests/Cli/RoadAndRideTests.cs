using System.Text.Json.Nodes;

namespace Heaveline.Tests.Cli;

public class RoadAndRideTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";

    [Fact]
    public void A_made_road_reads_back_as_the_same_road_of_its_class()
    {
        using var scratch = new Scratch();
        var made = Spoken.Of(
            "road", "--random", "C", "--length", "300 m", "--seed", "5", "--write", scratch["c.csv"], "--figure", scratch["c.svg"], "--json");
        var read = Spoken.Of("road", scratch["c.csv"], "--json");
        Assert.Equal((0, 0), (made.Code, read.Code));
        Assert.Equal(["c.csv", "c.svg"], scratch.Contents);
        var density = Row(made, "density");
        // The file keeps heights to 0.1 µm: the spectrum is the same to far better than a per mille.
        Assert.InRange(Row(read, "density"), density * 0.999, density * 1.001);
        // Class C spans 128 to 512e-6 m³; one road of 300 m lies within a factor of two of the mean of 256.
        Assert.InRange(density, 128.0, 512.0);
        Assert.InRange(Row(made, "roughness-index"), 5.0, 13.0);
    }

    [Fact]
    public void Another_seed_is_another_road_and_the_same_seed_the_same()
    {
        string Said(string seed) => Spoken.Of("road", "--random", "B", "--length", "120 m", "--seed", seed).Results;
        Assert.Equal(Said("3"), Said("3"));
        Assert.NotEqual(Said("3"), Said("4"));
    }

    [Fact]
    public void A_short_profile_is_refused_a_class_in_words()
    {
        var said = Spoken.Of("road", "examples/roads/country-lane.yaml");
        Assert.Equal(0, said.Code);
        Assert.Contains("No class: ", said.Results);
        Assert.Contains("measure a longer road", said.Results);
    }

    [Theory]
    [InlineData("road --random Z", "no road class")]
    [InlineData("road --random C --length 500", "has no unit")]
    [InlineData("road village-hump --random C", "not both")]
    [InlineData("ride examples/garage/fern-saloon.yaml --class K", "no road class")]
    [InlineData("ride examples/garage/fern-saloon.yaml --draw everything", "everything")]
    public void Wrong_words_end_with_code_2(string line, string says)
    {
        var said = Spoken.Typed(line);
        Assert.Equal(2, said.Code);
        Assert.Contains(says, said.Remarks);
    }

    [Fact]
    public void A_ride_grows_with_the_road_class_as_its_spectrum_does_and_less_past_the_dampers_bends()
    {
        double Heave(string letter) => Row(Spoken.Of("ride", Saloon, "--class", letter, "--speed", "80 km/h", "--json"), "rms-heave-acceleration");
        // Density grows fourfold a class, so a linear car doubles; digressive dampers and friction make it differ a little.
        Assert.InRange(Heave("C") / Heave("B"), 1.5, 2.2);
    }

    [Fact]
    public void The_time_route_stands_beside_the_frequency_route_with_its_interval()
    {
        var said = Spoken.Of("ride", Saloon, "--speed", "60 km/h", "--load", "driver", "--in-time", "--json");
        Assert.Equal(0, said.Code);
        var (low, high) = (Row(said, "rms-pitch-acceleration-in-time-low"), Row(said, "rms-pitch-acceleration-in-time-high"));
        Assert.True(low < Row(said, "rms-pitch-acceleration-in-time") && Row(said, "rms-pitch-acceleration-in-time") < high);
        // Equivalent linearisation knows no lift-off and Gaussian motion only: within a tenth of the interval's middle here.
        Assert.InRange(Row(said, "rms-pitch-acceleration"), 0.9 * low, 1.1 * high);
    }

    [Theory]
    [InlineData("sweep")]
    [InlineData("spectra")]
    [InlineData("transfer")]
    public void Every_picture_of_a_ride_is_written_whole(string what)
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("ride", Saloon, "--speed", "40 km/h, 80 km/h", "--draw", what, "--figure", scratch["ride.svg"]);
        Assert.Equal(0, said.Code);
        Assert.Equal(["ride.svg"], scratch.Contents);
        var svg = System.Xml.Linq.XDocument.Load(scratch["ride.svg"]);
        Assert.Contains("frequency|speed".Split('|'), word => svg.ToString().Contains(word, StringComparison.Ordinal));
    }

    [Fact]
    public void A_pass_says_what_the_standard_counts_of_a_seat()
    {
        using var scratch = new Scratch();
        Spoken.Of("road", "--random", "B", "--length", "400 m", "--write", scratch["b.csv"]);
        var said = Spoken.Of(
            "pass", Saloon, "--road", scratch["b.csv"], "--speed", "70 km/h", "--comfort", "driver", "--figure", scratch["comfort.png"]);
        Assert.Equal(0, said.Code);
        Assert.Contains("Comfort, driver (ISO 2631-1)", said.Results);
        Assert.Contains("vibration total value", said.Results);
        Assert.Contains("As a guide (annex C", said.Results);
        Assert.DoesNotContain("memory", said.Results);
        // One bump gets no word of a motion that lasts, and no dose of sickness.
        var bump = Spoken.Of("pass", Saloon, "--comfort", "driver").Results;
        Assert.Contains("One obstacle is a single event", bump);
        Assert.DoesNotContain("As a guide", bump);
        Assert.DoesNotContain("MSDV", bump);
        Assert.DoesNotContain("whole record: RMS", bump);
        Assert.Contains("comfort.png", scratch.Contents);
        var wrong = Spoken.Of("pass", Saloon, "--comfort", "dickey");
        Assert.Equal(1, wrong.Code);
        Assert.Contains("driver, front passenger", wrong.Remarks);
    }

    private static double Row(Spoken said, string key)
    {
        var rows = JsonNode.Parse(said.Results)!["tables"]!.AsArray().SelectMany(t => t!["rows"]!.AsArray());
        return rows.Single(r => (string)r!["key"]! == key)!["values"]![0]!.GetValue<double>();
    }
}
