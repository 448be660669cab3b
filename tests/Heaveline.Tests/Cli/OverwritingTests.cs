namespace Heaveline.Tests.Cli;

/// <summary>What a command writes never takes the place of what it reads, and never lands under a name that is not meant for it.</summary>
public class OverwritingTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";

    [Theory]
    [InlineData("pass", "--csv")]
    [InlineData("compare", "--csv")]
    [InlineData("rule", "--csv")]
    public void A_car_file_is_not_written_over(string command, string option)
    {
        using var scratch = new Scratch();
        var text = File.ReadAllText(Path.Combine(House.Checkout.Root, Saloon));
        File.WriteAllText(scratch["car.yaml"], text);
        var said = Spoken.Of(command, scratch["car.yaml"], option, scratch["car.yaml"]);
        Assert.Equal(2, said.Code);
        Assert.Contains("must end in .csv", said.Remarks, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(scratch["car.yaml"]));
    }

    [Fact]
    public void Nor_is_a_random_road_written_over_a_car()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["car.yaml"], "car: mine\n");
        Assert.Equal(2, Spoken.Of("road", "--random", "C", "--length", "100 m", "--write", scratch["car.yaml"]).Code);
        Assert.Equal("car: mine\n", File.ReadAllText(scratch["car.yaml"]));
    }

    [Theory]
    [InlineData("lane.yaml")]
    [InlineData("lane.csv")]
    public void A_measured_profile_is_not_written_over_by_the_pass_that_drives_it(string road)
    {
        using var scratch = new Scratch();
        var profile = "distance [m],height [mm]\n" + string.Concat(
            Enumerable.Range(0, 60).Select(i => FormattableString.Invariant($"{0.1 * i:F1},{i % 3}\n")));
        File.WriteAllText(scratch["lane.csv"], profile);
        File.WriteAllText(scratch["lane.yaml"], "road: lane\nprofile: lane.csv\n");
        var said = Spoken.Of("pass", Saloon, "--road", scratch[road], "--csv", scratch["lane.csv"]);
        Assert.Equal(2, said.Code);
        Assert.Contains("is not written over", said.Remarks, StringComparison.Ordinal);
        Assert.Equal(profile, File.ReadAllText(scratch["lane.csv"]));
    }

    [Theory]
    [InlineData("--live", "link.html")]
    [InlineData("--animation", "link.webp")]
    [InlineData("--figure", "link.svg")]
    [InlineData("--csv", "link.csv")]
    public void What_a_link_leads_to_is_not_written_over(string option, string link)
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["kept.txt"], "kept");
        File.CreateSymbolicLink(scratch[link], "kept.txt");
        var said = Spoken.Of("pass", Saloon, option, scratch[link]);
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains("this is a link to 'kept.txt', which is not written over", said.Remarks, StringComparison.Ordinal);
        Assert.Equal("kept", File.ReadAllText(scratch["kept.txt"]));
    }

    [Theory]
    [InlineData("check", "")]
    [InlineData("describe", " ")]
    public void A_name_without_letters_is_answered_in_words(string command, string name)
    {
        var said = Spoken.Of(command, name);
        Assert.Equal(1, said.Code);
        Assert.Contains("no file is named", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_in_place_of_a_file_is_called_one()
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch["d.yaml"]);
        Assert.Contains("this is a folder, not a file", Spoken.Of("check", scratch["d.yaml"]).Remarks, StringComparison.Ordinal);
        Assert.Contains("is a folder", Spoken.Of("new", scratch["d.yaml"]).Remarks, StringComparison.Ordinal);
    }
}
