using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Garages;
using Heaveline.Studies;
using Heaveline.Web.Pages.Garages;

namespace Heaveline.Tests.Web;

public class SheetReadingTests
{
    private static readonly Dictionary<string, string> Three = new() { ["wheelbase"] = "2.74 m", ["front"] = "768 kg", ["rear"] = "672 kg" };

    [Theory]
    [InlineData("unsprung", "5000 kg")]
    [InlineData("unsprung", "1e300 kg")]
    [InlineData("front", "1e300 kg")]
    [InlineData("rear", "1 kg")]
    [InlineData("front-spring", "1e12 N/mm")]
    [InlineData("rear-spring", "1e-9 N/mm")]
    [InlineData("name", "Lark\nnote: another")]
    public void What_the_check_of_the_file_refuses_is_refused_at_its_number(string key, string words)
    {
        var (_, reading) = Read(key, words);
        Assert.True(reading.IsRefused);
        Assert.Null(reading.Car);
        Assert.Contains(key, reading.Refusals.Keys);
        Assert.Equal("Put right what is refused", Heading(key, words).Headline);
    }

    [Fact]
    public void Whatever_can_be_saved_passes_the_check()
    {
        string[] numbers = ["1e300", "-1", "0", "1e-300", "1e12", "5000", "999999999999", "3", "0.2", "1.9", "NaN", "1e9999", "12", "0.001"];
        string[] units = ["", " kg", " m", " mm", " N/mm", " %", " lbf/in", " kg ± 300 %"];
        var (saved, refused) = (0, 0);
        foreach (var key in GarageSheet.Lines.Select(line => line.Key).Append(SheetReading.Named))
        {
            foreach (var words in numbers.SelectMany(number => units.Select(unit => number + unit)).Concat(["a: b # c", "\u0007", "x\r\ny"]))
            {
                var (sheet, reading) = Read(key, words);
                if (reading.Car is null)
                {
                    Assert.True(reading.IsRefused || sheet.Missing.Count > 0, $"{key}: {words}");
                    refused++;
                    continue;
                }

                saved++;
                Assert.False(reading.IsRefused);
                var file = CarFile.Read(new SourceText("lark.yaml", sheet.Text!));
                Assert.True(file.Refusals.Count == 0, $"{key}: {words}");
            }
        }

        Assert.True(saved > 100 && refused > 500, $"{saved} saved, {refused} refused");
    }

    [Theory]
    [InlineData("rear-moves", "60 mm")]
    [InlineData("damping", "3")]
    [InlineData("index", "0.2")]
    [InlineData("height", "1.9 m")]
    public void A_slip_that_the_check_warns_of_stands_at_its_number(string key, string words)
    {
        var (_, reading) = Read(key, words, ("rear-spring", "30 N/mm"));
        Assert.False(reading.IsRefused);
        Assert.Contains(key, reading.Slips.Keys);
    }

    [Fact]
    public void What_is_to_be_measured_next_is_what_the_study_of_doubts_says_of_the_file()
    {
        var (sheet, reading) = Read("rear-spring", "38 N/mm", ("front-spring", "22 N/mm"));
        var finding = SheetFinding.Of(reading.Car!);
        var answer = DoubtStudy.Run(new DoubtAsked { Car = new LoadedCar("Lark", reading.Car!, LoadedCar.UsualLoad(reading.Car!)) });
        var said = Assert.Single(answer.Sentences, sentence => sentence.Text.StartsWith("Measure the", StringComparison.Ordinal)).Text;
        var heading = SheetHeading.Of(sheet, reading, finding, 0);
        Assert.Contains("Measure number 8 next, rear spring moves", heading.Next, StringComparison.Ordinal);
        Assert.StartsWith("Measure the rear spring motion ratio next", said, StringComparison.Ordinal);
        var share = said[said.IndexOf("it makes", StringComparison.Ordinal)..said.IndexOf(" of the variance", StringComparison.Ordinal)];
        Assert.Contains(share, heading.Next, StringComparison.Ordinal);
        Assert.Contains(said[said.IndexOf("without its doubt", StringComparison.Ordinal)..], heading.Next, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_of_both_axles_is_told_with_one_share_at_the_top_and_at_its_place()
    {
        var guessed = GarageSheet.Of("Lark", Three).Estimates.Where(one => one.Key != "tyre")
            .Select(one => (one.Key, one.Value.Value.Split('±')[0].Trim())).ToArray();
        var (sheet, reading) = Read("wheelbase", "2.74 m", guessed);
        var finding = SheetFinding.Of(reading.Car!);
        var tyre = GarageSheet.Lines.Single(line => line.Key == "tyre");
        var share = SheetFinding.ShareOf(finding.Ratio, tyre);
        Assert.True(share > 1.2 * finding.Ratio.Shares.Max(one => one.Share), "both axles make it");
        Assert.Contains(
            FormattableString.Invariant($"Measure number 13 next, stiffness of one tyre: it makes {100.0 * share:F0} % of the variance"),
            SheetHeading.Of(sheet, reading, finding, 1).Next,
            StringComparison.Ordinal);
    }

    [Fact]
    public void All_that_the_file_marks_as_estimated_is_counted()
    {
        var (sheet, reading) = Read("rear-gap", "60 mm");
        Assert.Equal(sheet.Text!.Split('\n').Count(line => line.Contains("# estimated: ", StringComparison.Ordinal)), reading.Estimated);
        // At the top stand numbers of the page alone, so that both counts are of the same ones.
        var heading = SheetHeading.Of(sheet, reading, SheetFinding.Of(reading.Car!), 9);
        Assert.Contains("4 measured, 9 estimated", heading.Headline, StringComparison.Ordinal);
        Assert.Contains($"In the file {reading.Estimated} values are marked as estimated", heading.Next, StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_that_stands_on_its_stops_says_under_which_load()
    {
        Assert.Contains(
            "Four up with luggage the rear stands on the bump stops: the ratio is that of the stops there.",
            Heading("rear-gap", "10 mm").Next,
            StringComparison.Ordinal);
        Assert.DoesNotContain("bump stops:", Heading("rear-gap", "150 mm").Next, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_sheet_says_what_is_missing()
    {
        var sheet = GarageSheet.Of("Lark", new Dictionary<string, string>());
        Assert.Equal(
            "Still missing: “Hub to hub”, “Front wheels on the scale”, “Rear wheels on the scale”. Without them there is no car to save.",
            SheetHeading.Missing(sheet));
        Assert.Null(SheetHeading.Missing(GarageSheet.Of("Lark", Three)));
    }

    [Theory]
    [InlineData("Garage", "In garage.yaml")]
    [InlineData("!?", "Give it a name")]
    [InlineData("Garage queen", null)]
    public void A_car_cannot_take_the_file_in_which_the_garage_remembers_its_choices(string title, string? words)
    {
        var problem = FileName.Problem(FileName.Of(title, ""));
        Assert.Equal(words, words is null ? problem : problem?[..words.Length]);
        Assert.NotNull(UploadedFile.Refused(GarageChoices.Name, 10));
    }

    private static (GarageSheet Sheet, SheetReading Reading) Read(string key, string words, params (string Key, string Words)[] more)
    {
        var typed = new Dictionary<string, string>(Three);
        foreach (var (other, value) in more.Append((key, words)).Where(one => one.Item1 != SheetReading.Named))
        {
            typed[other] = value;
        }

        var sheet = GarageSheet.Of(key == SheetReading.Named && words.Trim().Length > 0 ? words : "Lark", typed);
        return (sheet, SheetReading.Of(sheet));
    }

    private static SheetHeading Heading(string key, string words)
    {
        var (sheet, reading) = Read(key, words);
        return SheetHeading.Of(sheet, reading, reading.Car is { } car ? SheetFinding.Of(car) : null, 0);
    }
}
