using Heaveline.Studies;
using Heaveline.Web.Pages;

namespace Heaveline.Tests.House;

/// <summary>One name for one thing: the word of a command is the name of its study, of its folder, of its page and of its part of a report.</summary>
public class NameTests
{
    // What can be asked, by the word of its command; worksheets and the report stand under their own.
    private static readonly List<(Type Study, Question Question)> Studies =
    [
        .. typeof(PassStudy).Assembly.GetTypes()
            .Where(t => t.Namespace == "Heaveline.Studies" && t.Name.EndsWith("Study", StringComparison.Ordinal))
            .Select(t => (t, (Question)t.GetProperty("Question")!.GetValue(null)!)),
    ];

    [Fact]
    public void A_study_and_its_folder_are_called_as_their_command()
    {
        Assert.True(Studies.Count > 10);
        foreach (var (study, question) in Studies)
        {
            Assert.Equal(Titled(question.Word) + "Study", study.Name);
            var file = Path.Combine("src", "Heaveline", "Studies", Titled(question.Group ?? question.Word), study.Name + ".cs");
            Assert.True(File.Exists(Path.Combine(Checkout.Root, file)), $"{file} is not there.");
        }
    }

    [Fact]
    public void What_is_asked_and_what_is_answered_are_called_as_their_command()
    {
        foreach (var (study, question) in Studies)
        {
            var types = study.GetProperty("Question")!.PropertyType.GetGenericArguments();
            Assert.Equal(Titled(question.Word) + "Asked", types[0].Name);
            Assert.Equal((question.Group is null ? Titled(question.Word) : "Sheet") + "Answer", types[1].Name);
        }
    }

    [Fact]
    public void A_part_of_a_report_is_called_as_the_command_that_says_the_same()
    {
        // The command describe fills two parts: the car at every load, and its modes under one. The finding is of all the others.
        var commands = Studies.Where(s => s.Question.Group is null).Select(s => s.Question.Word).Append("car").Append("modes").Append("finding");
        Assert.Subset(commands.ToHashSet(), ReportStudy.PartWords.ToHashSet());
        Assert.All(
            Enum.GetValues<PartKind>(), kind => Assert.NotNull(typeof(ReportPart).Assembly.GetType($"Heaveline.Reports.{kind}Part")));
    }

    [Fact]
    public void A_page_stands_at_the_address_that_its_class_is_called_by()
    {
        // The garage is the first page; what is no page has none of its own.
        Type[] pages =
        [
            .. typeof(RulePage).Assembly.GetTypes()
                .Where(t => t.Namespace == "Heaveline.Web.Pages" && t.Name.EndsWith("Page", StringComparison.Ordinal)),
        ];
        var addresses = pages.ToDictionary(
            page => page.Name,
            page => page.GetCustomAttributes(inherit: false).OfType<Microsoft.AspNetCore.Components.RouteAttribute>().Single().Template);
        Assert.Equal("/", addresses["GaragePage"]);
        foreach (var (page, address) in addresses.Where(a => a.Key is not ("GaragePage" or "NoSuchPage")))
        {
            Assert.Equal($"/{page[..^"Page".Length].ToLowerInvariant()}", address);
        }

        // The page of the car holds what describe says of it; that of the phone records what drive reads; the sheet begins a car; the story tells
        // of one from end to end.
        string[] commands = [.. Studies.Select(s => s.Question.Word), ReportStudy.Question.Word];
        Assert.Equal(["/", "/car", "/no-such-page", "/phone", "/sheet", "/story"], addresses.Values.Where(a => !commands.Contains(a[1..])).Order());
    }

    // wheel-rate: WheelRate.
    private static string Titled(string word) => string.Concat(word.Split('-').Select(part => char.ToUpperInvariant(part[0]) + part[1..]));
}
