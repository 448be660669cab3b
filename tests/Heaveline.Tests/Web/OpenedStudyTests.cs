using Heaveline.Files.Garages;
using Heaveline.Studies;
using Heaveline.Tests.Cli;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Chosen;
using Heaveline.Web.Pages.Garages;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.WebUtilities;

namespace Heaveline.Tests.Web;

public sealed class OpenedStudyTests : IDisposable
{
    private const string File = "autumn.yaml";
    private const string Text = """
        # Mine.
        study: Fern in autumn
        car: fern-saloon.yaml
        parts: [village-autumn.yaml]
        use:
          - {road: village-hump, speeds: [25 km/h]}  # twice a day
        budget: 600 EUR

        """;

    private readonly Scratch folder = new();
    private readonly GarageView garage;

    public OpenedStudyTests()
    {
        foreach (var (from, name) in new[] { ("garage", "fern-saloon.yaml"), ("parts", "village-autumn.yaml") })
        {
            System.IO.File.Copy(Path.Combine(Checkout.Root, "examples", from, name), folder[name]);
        }

        System.IO.File.WriteAllText(folder[File], Text);
        garage = new GarageView(new ServeOptions { Garage = Path.GetDirectoryName(folder[File])! });
    }

    [Fact]
    public void The_address_of_a_study_names_its_file_and_asks_what_it_asks()
    {
        var address = StudyLink.Of(File, garage)!;
        Assert.EndsWith("&study=autumn.yaml", address, StringComparison.Ordinal);
        Assert.Empty(OpenedStudy.Of(File, garage).Changed(Asked(address), garage));
    }

    [Fact]
    public void An_address_that_names_a_study_and_no_car_asks_what_the_study_asks_but_for_what_it_says_itself()
    {
        var alone = "choose" + ChooseQuery.Filled("?study=autumn.yaml", garage);
        Assert.Empty(OpenedStudy.Of(File, garage).Changed(Asked(alone), garage));
        Assert.EndsWith("study=autumn.yaml", alone, StringComparison.Ordinal);
        var other = "choose" + ChooseQuery.Filled("?study=autumn.yaml&budget=500%20EUR", garage);
        Assert.Equal(["budget"], OpenedStudy.Of(File, garage).Changed(Asked(other), garage));
        Assert.Null(ChooseQuery.Filled(new Uri("http://localhost/" + alone).Query, garage));
        Assert.Null(ChooseQuery.Filled("?study=ghost.yaml", garage));
        Assert.Null(ChooseQuery.Filled("?budget=500%20EUR", garage));
    }

    [Theory]
    [InlineData("budget=600%20EUR", "budget=500%20EUR", "the budget")]
    [InlineData("budget=600%20EUR", "open=front%20bar", "the places whose part may change and the budget")]
    [InlineData("25%20km", "30%20km", "what is driven over")]
    // What the file leaves out is asked as usual, said or not.
    [InlineData("budget=600%20EUR", "budget=600%20EUR&draws=200&seed=1", "")]
    public void What_is_asked_otherwise_than_the_file_asks_is_told_in_words(string from, string to, string words)
    {
        var given = Asked(StudyLink.Of(File, garage)!.Replace(from, to, StringComparison.Ordinal));
        Assert.Equal(words, OpenedStudy.InWords(OpenedStudy.Of(File, garage).Changed(given, garage)));
    }

    [Fact]
    public void What_is_changed_is_written_back_and_remarks_and_other_lines_stay()
    {
        var study = OpenedStudy.Of(File, garage);
        var given = Asked(StudyLink.Of(File, garage)!.Replace("600", "450", StringComparison.Ordinal));
        var (outcome, problem) = StudyKeeping.Save(given, study, study.Text.Stamp, garage);
        Assert.Equal((SaveEnd.Saved, ""), (outcome!.End, problem));
        Assert.Equal(Text.Replace("600", "450", StringComparison.Ordinal), System.IO.File.ReadAllText(folder[File]));
        Assert.Single(garage.Garage.Earlier(File));
        Assert.Empty(OpenedStudy.Of(File, garage).Changed(given, garage));
    }

    [Fact]
    public void A_file_that_has_changed_meanwhile_is_left_as_it_is_until_one_knows()
    {
        var study = OpenedStudy.Of(File, garage);
        var given = Asked(StudyLink.Of(File, garage)!.Replace("600", "450", StringComparison.Ordinal));
        var other = Text.Replace("25 km/h", "35 km/h", StringComparison.Ordinal);
        System.IO.File.WriteAllText(folder[File], other);
        var now = OpenedStudy.Of(File, garage);
        Assert.Equal(SaveEnd.Conflict, StudyKeeping.Save(given, now, study.Text.Stamp, garage).Outcome!.End);
        Assert.Equal(other, System.IO.File.ReadAllText(folder[File]));
        Assert.Equal("what is driven over and the budget", OpenedStudy.InWords(now.Changed(given, garage)));
        Assert.Equal(SaveEnd.Saved, StudyKeeping.Save(given, now, now.Text.Stamp, garage).Outcome!.End);
        Assert.Empty(OpenedStudy.Of(File, garage).Changed(given, garage));
    }

    [Fact]
    public void A_question_is_kept_under_its_title_and_no_file_is_written_over()
    {
        var given = Asked(StudyLink.Of(File, garage)!);
        Assert.Equal(("fern-for-mother.yaml", ""), StudyKeeping.KeepAs(given, "Fern, for mother", "", garage));
        Assert.Equal("Fern, for mother", garage.Garage.Study("fern-for-mother.yaml").Value!.Name);
        // The very same again is there already.
        Assert.Equal(("fern-for-mother.yaml", ""), StudyKeeping.KeepAs(given, "Fern, for mother", "", garage));
        var (file, problem) = StudyKeeping.KeepAs(given, "Autumn", "", garage);
        Assert.Equal((null, "There is a file autumn.yaml already, and it is left as it is. Take another name."), (file, problem));
        Assert.Equal(Text, System.IO.File.ReadAllText(folder[File]));
        Assert.Equal((null, FileName.Nameless), StudyKeeping.KeepAs(given, " ?! ", "", garage));
    }

    [Fact]
    public void A_study_that_is_gone_or_refused_is_said_and_nothing_is_written()
    {
        var given = Asked(StudyLink.Of(File, garage)!);
        var gone = OpenedStudy.Of("winter.yaml", garage);
        Assert.Null(gone.Sheet);
        Assert.Contains("There is no study named winter.yaml", gone.Problem, StringComparison.Ordinal);
        Assert.Equal((null, gone.Problem), StudyKeeping.Save(given, gone, null, garage));
        System.IO.File.WriteAllText(folder[File], Text.Replace("600 EUR", "dear", StringComparison.Ordinal));
        Assert.Contains("is refused", OpenedStudy.Of(File, garage).Problem, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        garage.Dispose();
        folder.Dispose();
    }

    private Given Asked(string address)
    {
        var said = QueryHelpers.ParseQuery(address[address.IndexOf('?', StringComparison.Ordinal)..]);
        return ChooseQuery.Given(new Given(said.SelectMany(one => one.Value.Select(words => (one.Key, words)))), garage);
    }
}
