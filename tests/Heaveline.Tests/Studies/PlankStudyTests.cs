using Heaveline.Drives.Planning;
using Heaveline.Files.Cars;
using Heaveline.Studies;
using Heaveline.Tests.Cli;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Studies;

public class PlankStudyTests
{
    private static readonly Lazy<PlankAnswer> OfVan = new(() =>
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "drover-van.yaml")).Value!;
        return PlankStudy.Run(new PlankAsked { Car = LoadedCar.Of(car, LoadedCar.UsualLoad(car)) });
    });

    [Fact]
    public void Each_goal_has_its_sentence_and_only_what_is_pure_is_proposed()
    {
        var answer = OfVan.Value;
        Assert.Equal(["first", "second", "pitch"], answer.Sentences.Select(s => s.Id).Where(id => Enum.TryParse<PlankGoal>(id, true, out _)));
        Assert.All(answer.Proposed, f => Assert.True(Math.Min(f.LeastShare, f.LinearShare) >= PlankAnswer.Almost));
        Assert.DoesNotContain(answer.Proposed, f => f.Goal == PlankGoal.First);
        Assert.Contains("not to be had almost alone", answer.Sentences.Single(s => s.Id == "first").Text, StringComparison.Ordinal);
        Assert.DoesNotContain(answer.Sentences, s => s.Id == "first-boards");
        Assert.Contains("Saw ", answer.Sentences.Single(s => s.Id == "second-boards").Text, StringComparison.Ordinal);
    }

    // The saloon's row for pitch keeps 85 % in the worst of its passes: the guide quotes it.
    [Fact]
    public void Pitch_is_called_alone_from_nine_tenths_on_and_mostly_pitch_below()
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;
        var answer = PlankStudy.Run(new PlankAsked { Car = LoadedCar.Of(car, LoadedCar.LoadNamed(car, "driver")) });
        var pitch = answer.Finds.Single(f => f.Goal == PlankGoal.Pitch);
        Assert.InRange(Math.Min(pitch.LeastShare, pitch.LinearShare), PlankAnswer.Almost, PlankAnswer.Alone);
        Said(answer, "Mostly pitch: ", "mostly pitch");
        Said(answer with { Finds = [pitch with { LeastShare = 0.92, LinearShare = 0.93 }] }, "Pitch alone: ", "pitch alone");

        static void Said(PlankAnswer answer, string begins, string column)
        {
            Assert.StartsWith(begins, answer.Sentences.Single(s => s.Id == "pitch").Text, StringComparison.Ordinal);
            Assert.Contains(column, answer.Tables.Single().Columns);
            Assert.Contains(begins, answer.Figure(PlankAnswer.Drawing).Caption, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_safety_words_stand_below_every_row()
    {
        Assert.Contains(OfVan.Value.Closing, c => c.Contains("A loose board flies", StringComparison.Ordinal));
        Assert.Contains(OfVan.Value.Closing, c => c.Contains("Off the public road", StringComparison.Ordinal));
    }

    [Fact]
    public void Boards_of_ones_own_are_read_with_their_length()
    {
        var saloon = Path.Combine(Checkout.Root, "examples", "garage", "thimble-city-car.yaml");
        var said = Spoken.Of("plank", saloon, "--boards", "20 x 200 x 3000 mm");
        Assert.Equal(0, said.Code);
        Assert.Contains("20x200x3000 mm", said.Results, StringComparison.Ordinal);
        Assert.DoesNotContain("22x", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void Boards_keep_the_sizes_they_are_sold_in_and_wedges_keep_an_end()
    {
        var lines = string.Join('\n', OfVan.Value.LinesIn(Heaveline.Quantities.ReaderUnits.Of("imperial")));
        var build = OfVan.Value.Sentences.Single(s => s.Id == "second-boards").Text;
        Assert.Matches(@"buy \d+ boards of \d+x\d+x4200 mm", build);
        Assert.Matches(@"buy \d+ boards of \d+x\d+x4200 mm", lines);
        Assert.DoesNotContain(" in x ", lines, StringComparison.Ordinal);
        Assert.Equal(build.Contains("wedge", StringComparison.Ordinal), build.Contains("5 mm thick at its thin end", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("22 mm", "is no board")]
    [InlineData("22 x 195 furlongs", "furlongs")]
    [InlineData("2 x 195 mm", "thickness of a board is 2 mm; it must be between 10 and 100 mm.")]
    [InlineData("2200 x 195 mm", "thickness of a board is 2200 mm; it must be between 10 and 100 mm.")]
    [InlineData("22 mm x 195 in", "width of a board is 4953 mm; it must be between 50 and 500 mm.")]
    [InlineData("22 x 195 x 60 mm", "length of a board is 60 mm; it must be between 600 and 12000 mm.")]
    [InlineData("", "blank")]
    public void Words_that_are_no_board_are_refused(string words, string because)
    {
        var saloon = Path.Combine(Checkout.Root, "examples", "garage", "thimble-city-car.yaml");
        var said = Spoken.Of("plank", saloon, "--boards", words);
        Assert.NotEqual(0, said.Code);
        Assert.Contains(because, said.Remarks, StringComparison.Ordinal);
    }
}
