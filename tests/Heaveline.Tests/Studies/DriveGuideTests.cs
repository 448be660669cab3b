using System.Text.RegularExpressions;
using Heaveline.Drives.Planning;
using Heaveline.Files;
using Heaveline.Quantities;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Studies;

/// <summary>The guides about drives ask for what the program asks for.</summary>
public class DriveGuideTests
{
    private static string Guide(string name) => Text("docs", "guide", name);

    // Lines are broken where there is room: what is looked for may run over an end.
    private static string Text(params string[] path) =>
        Regex.Replace(File.ReadAllText(Path.Combine([Checkout.Root, .. path])), "\\s+", " ");

    [Fact]
    public void Page_and_guide_of_the_phone_ask_for_two_turns_and_twelve_passes()
    {
        foreach (var text in new[] { Guide("record-with-a-phone.md"), Text("src", "Heaveline.Web", "Pages", "PhonePage.razor") })
        {
            Assert.Contains("take two turns", text, StringComparison.Ordinal);
            Assert.Contains("four passes at each of three speeds up to 30 km/h", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void No_guide_asks_for_passes_over_a_hump_faster_than_the_program_would_plan()
    {
        var fastest = In.KilometresPerHour.Of(TestDay.Fastest);
        foreach (var guide in new[] { "record-with-a-phone.md", "which-car-moves-like-this.md", "did-the-change-work.md" })
        {
            var asked = Regex.Matches(Guide(guide), "speeds?[^.;|]*? (?:to|and) ([0-9]+) km/h");
            Assert.NotEmpty(asked);
            Assert.All(asked, m => Assert.True(double.Parse(m.Groups[1].Value, Invariant) <= fastest, $"{guide}: {m.Value}"));
        }
    }

    [Fact]
    public void The_guide_names_every_ending_that_the_page_takes()
    {
        var guide = Guide("what-a-log-is-good-for.md");
        Assert.All(FileFormat.DriveLog.Endings, ending => Assert.Contains($"`{ending}`", guide, StringComparison.Ordinal));
    }

    [Fact]
    public void The_story_names_the_files_that_are_written_for_it()
    {
        var (story, bench) = (Guide("lump-in-the-road.md"), Text("bench", "Heaveline.Bench", "LaneLogs.cs"));
        foreach (var name in new[] { "before", "after", "no-change" })
        {
            Assert.Contains($"\"{name}\"", bench, StringComparison.Ordinal);
            Assert.Contains($"`{name}-truth.csv`", story, StringComparison.Ordinal);
        }

        foreach (var name in new[] { "before", "no-change", "morning", "evening" })
        {
            Assert.Contains($"\"{name}.csv\"", bench, StringComparison.Ordinal);
            Assert.Contains($"`{name}.csv`", story, StringComparison.Ordinal);
        }
    }

    private static System.Globalization.CultureInfo Invariant => System.Globalization.CultureInfo.InvariantCulture;
}
