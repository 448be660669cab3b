using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>A study's file at the command line: what it says is what the options say.</summary>
public class StudyFileDoorTests
{
    private const string Options =
        "choose examples/garage/fern-saloon.yaml --parts examples/parts/village-autumn.yaml --open \"front spring\" "
        + "--open \"rear spring: at most 90\" --open \"front damper\" --open \"rear damper\" "
        + "--use \"village-hump at 25 km/h, 40 km/h; loads four up with luggage; weight 2\" --use \"short-bump at 50 km/h\" "
        + "--use \"class C at 80 km/h; loads driver\" --load driver --load \"four up with luggage\" --wish settling --wish hit --wish ride "
        + "--wish money --wish \"parts changed\" --with \"worst use case at most 5 % more, in 19 of 20 cars\" --with \"roll at most 5 % more\" "
        + "--budget \"600 EUR\" ";

    private const string Study = "choose examples/studies/fern-four-up.yaml";

    [Fact]
    public void A_study_answers_what_its_options_answer_byte_for_byte()
    {
        var file = Spoken.Typed(Study + " --json");
        Assert.Equal(0, file.Code);
        Assert.Equal("", file.Remarks);
        Assert.Equal(Spoken.Typed(Options + "--draws 64 --seed 1 --json").Results, file.Results);
        Assert.Contains("Worth buying: A, ", file.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void An_option_beside_a_study_takes_the_place_of_its_line() => Assert.Equal(
        Spoken.Typed(Options + "--draws 20 --seed 7").Results, Spoken.Typed(Study + " --draws 20 --seed 7").Results);

    [Fact]
    public void A_place_that_the_file_opens_cannot_be_kept_beside_it()
    {
        var said = Spoken.Typed(Study + " --keep \"front spring\"");
        Assert.Equal(2, said.Code);
        Assert.Contains("'front spring' is to stay as it is, and is open", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_cannot_be_read_is_not_asked_for_its_lists()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["s.yaml"], "study: s\n\tcar: fern-saloon.yaml\nparts: [a.yaml]\n");
        var said = Spoken.Of("choose", scratch["s.yaml"]);
        Assert.Equal(1, said.Code);
        Assert.Contains("YAML takes no tabs there", said.Remarks, StringComparison.Ordinal);
        Assert.DoesNotContain("parts must be given", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void Front_springs_alone_should_not_be_bought()
    {
        var said = Spoken.Typed("choose examples/studies/fern-front-springs.yaml");
        Assert.Equal(0, said.Code);
        Assert.Contains("\nLeave it as it is: ", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_study_asks_of_its_car_and_lists_is_refused_at_its_line()
    {
        using var scratch = new Scratch();
        var (garage, parts) = (Path.Combine(Checkout.Root, "examples", "garage"), Path.Combine(Checkout.Root, "examples", "parts"));
        var study = scratch["study.yaml"];
        File.WriteAllText(study,
            $"study: s\ncar: {Path.GetRelativePath(Path.GetDirectoryName(study)!, Path.Combine(garage, "fern-saloon.yaml"))}\n"
            + $"parts: [{Path.GetRelativePath(Path.GetDirectoryName(study)!, Path.Combine(parts, "village-autumn.yaml"))}]\n"
            + "open:\n  front-spring: any\n  rear-spring: Larch R-380, Larch R-999\n"
            + "use:\n  - {road: nowhere, speeds: [40 km/h]}\n  - {road: plank, speeds: [30 km/h], loads: [nobody]}\nloads: [driver, family]\n");
        foreach (var command in new[] { "choose", "check" })
        {
            var said = Spoken.Of(command, study);
            Assert.Equal(1, said.Code);
            Assert.Contains("study.yaml:6:", said.Remarks, StringComparison.Ordinal);
            Assert.Contains("'Larch R-999' is no part of the lists for the rear spring", said.Remarks, StringComparison.Ordinal);
            Assert.Contains("study.yaml:8:", said.Remarks, StringComparison.Ordinal);
            Assert.Contains("study.yaml:10:", said.Remarks, StringComparison.Ordinal);
            Assert.Contains("'family' is no load state of Fern saloon", said.Remarks, StringComparison.Ordinal);
        }

        Assert.Equal(0, Spoken.Typed("check examples/studies/fern-four-up.yaml examples/studies/fern-front-springs.yaml").Code);
    }
}
