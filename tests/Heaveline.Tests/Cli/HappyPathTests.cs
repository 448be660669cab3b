namespace Heaveline.Tests.Cli;

public class HappyPathTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";
    private const string Cured = "examples/garage/fern-saloon-cured.yaml";

    [Fact]
    public void Check_says_of_a_good_file_that_it_is_in_order()
    {
        var said = Spoken.Of("check", Saloon, Cured);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Equal($"{Saloon}: in order\n{Cured}: in order\n", said.Results);
    }

    [Fact]
    public void Check_reads_what_was_written_down_about_a_drive()
    {
        using var scratch = new Scratch();
        var drive = Directory.CreateDirectory(scratch["drives/lane"]).FullName;
        File.Copy(Path.Combine(House.Checkout.Root, Saloon), scratch["fern.yaml"]);
        var file = Path.Combine(drive, "drive.yaml");
        File.WriteAllText(file, "drive: Lane\ncar: ../../fern.yaml\nload: driver\n");
        var said = Spoken.Of("check", file);
        Assert.Equal((0, "", $"{file}: in order\n"), (said.Code, said.Remarks, said.Results));
        File.WriteAllText(file, "drive: Lane\ncar: ../../fern.yaml\nload: nobody\n");
        said = Spoken.Of("check", file);
        Assert.Equal((1, $"{file}: 1 refused, 0 doubtful\n"), (said.Code, said.Results));
        Assert.Contains("load is \"nobody\", and the car has none of that name.", said.Remarks, StringComparison.Ordinal);
        Assert.Contains("It has: driver, four up with luggage.", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_reads_a_sheet_of_cable_ties()
    {
        const string sheet = "examples/ties/fern-saloon-hump.yaml";
        var said = Spoken.Of("check", sheet);
        Assert.Equal((0, "", $"{sheet}: in order\n"), (said.Code, said.Remarks, said.Results));
        using var scratch = new Scratch();
        var text = File.ReadAllText(Path.Combine(House.Checkout.Root, sheet));
        File.WriteAllText(scratch["ties.yaml"], text.Replace("speed: 8 km/h", "sped: 8 km/h", StringComparison.Ordinal));
        said = Spoken.Of("check", scratch["ties.yaml"]);
        Assert.Equal(1, said.Code);
        Assert.Contains("\"sped\" is not a key of", said.Remarks, StringComparison.Ordinal);
        Assert.DoesNotContain("weighing", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void Describe_has_a_column_for_every_load_state()
    {
        var said = Spoken.Of("describe", Saloon);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Equal(
            3, said.Results.Split('\n').Count(line => line.EndsWith("empty  driver  four up with luggage", StringComparison.Ordinal)));
    }

    [Fact]
    public void Describe_under_one_load_names_its_modes()
    {
        var said = Spoken.Of("describe", Saloon, "--load", "driver", "--modes");
        Assert.Equal(0, said.Code);
        Assert.Contains("Damped modes, driver", said.Results);
        Assert.Contains("rear wheel hop", said.Results);
        Assert.DoesNotContain("empty", said.Results);
    }

    [Fact]
    public void Describe_says_where_the_rear_rides_softer_than_the_front()
    {
        Assert.Contains("Under 'four up with luggage' the rear rides softer than the front (ratio 0.9", Spoken.Of("describe", Saloon).Results);
        Assert.DoesNotContain("rides softer", Spoken.Of("describe", Cured).Results);
    }

    [Fact]
    public void Pass_tells_hit_and_settling_apart()
    {
        var said = Spoken.Of("pass", Saloon, "--load", "four up with luggage", "--speed", "25 mph");
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.StartsWith(
            "Fern saloon, four up with luggage, over round-top hump, 75 mm high and 3.7 m long, both tracks at 40.2 km/h.\n", said.Results);
        Assert.Contains("\nThe hit lasts ", said.Results);
        Assert.Contains("\nThe settling: ", said.Results);
        Assert.Contains("\nBoth rear bump stops are touched 3 times", said.Results);
    }

    [Fact]
    public void A_certified_pass_agrees_with_the_stepped_one_to_the_last_shown_digit_but_one()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["straight.yaml"], StraightCar.Text);
        string[] line = ["pass", scratch["straight.yaml"], "--speed", "45 km/h", "--json"];
        var stepped = new AnswerJson(Spoken.Of(line));
        var exact = new AnswerJson(Spoken.Of([.. line, "--certified"]));
        Assert.NotEqual(stepped.Root["method"]!.GetValue<string>(), exact.Root["method"]!.GetValue<string>());
        foreach (var key in new[] { "settling-rms-pitch", "hit-peak-pitch", "obstacle-rms-heave-acceleration" })
        {
            Assert.Equal(exact.Value(key), stepped.Value(key), 1e-3 * Math.Abs(exact.Value(key)));
        }
    }

    [Fact]
    public void Compare_sets_cars_side_by_side_at_rising_speeds_whatever_order_they_are_given_in()
    {
        var said = Spoken.Of("compare", Saloon, Cured, "--speed", "80 km/h, 30 km/h", "--load", "driver");
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.True(said.Results.IndexOf("At 30 km/h", StringComparison.Ordinal) is > 0 and var slow
            && slow < said.Results.IndexOf("At 80 km/h", StringComparison.Ordinal));
    }

    [Fact]
    public void A_speed_among_several_has_the_numbers_that_it_has_alone()
    {
        var alone = new AnswerJson(Spoken.Of("compare", Saloon, Cured, "--json"));
        var among = new AnswerJson(Spoken.Of("compare", Saloon, Cured, "--speed", "50 km/h, 20 km/h, 90 km/h", "--json"));
        foreach (var key in new[] { "settling-rms-pitch", "obstacle-rms-heave-acceleration", "driver-rms-vertical", "recorded" })
        {
            Assert.Equal(alone.Value(key), among.Value(key, table: 1), 1e-9);
        }
    }

    [Fact]
    public void Two_files_of_one_car_are_told_apart_by_their_names()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["before.yaml"], StraightCar.Text);
        File.WriteAllText(scratch["after.yaml"], StraightCar.Text);
        Assert.Contains("Straight (before)  Straight (after)", Spoken.Of("compare", scratch["before.yaml"], scratch["after.yaml"]).Results);
    }

    [Fact]
    public void Road_alone_lists_names_that_pass_takes()
    {
        var said = Spoken.Of("road");
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        var names = said.Results.Split('\n').TakeWhile(line => line.Length > 0).Select(line => line.Split(' ')[0]).ToList();
        Assert.Contains("village-hump", names);
        foreach (var name in names)
        {
            Assert.Equal(0, Spoken.Of("pass", Saloon, "--road", name, "--speed", "15 km/h").Code);
        }
    }

    [Fact]
    public void Road_says_the_height_of_a_rounded_hump_at_its_top() =>
        Assert.Equal(75.0, new AnswerJson(Spoken.Of("road", "village-hump", "--json")).Value("highest"), 0.01);

    [Fact]
    public void A_random_road_that_was_written_is_a_road_to_pass()
    {
        using var scratch = new Scratch();
        var made = Spoken.Of("road", "--random", "C", "--length", "120 m", "--seed", "7", "--write", scratch["c.csv"]);
        Assert.Equal((0, ""), (made.Code, made.Remarks));
        Assert.Equal(File.ReadAllText(scratch["c.csv"]), Rewritten(scratch));
        Assert.Equal(0, Spoken.Of("pass", Saloon, "--road", scratch["c.csv"]).Code);
    }

    private static string Rewritten(Scratch scratch)
    {
        Assert.Equal(0, Spoken.Of("road", "--random", "C", "--length", "120 m", "--seed", "7", "--write", scratch["again.csv"]).Code);
        return File.ReadAllText(scratch["again.csv"]);
    }
}
