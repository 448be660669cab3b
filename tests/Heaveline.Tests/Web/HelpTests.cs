using Bunit;
using Heaveline.Measures;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Web.Frame;
using Heaveline.Web.Help;
using Heaveline.Web.Host;
using Heaveline.Web.Pages;
using Heaveline.Web.Pages.Stories;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Heaveline.Tests.Web;

/// <summary>What pages say of themselves and of their words.</summary>
public sealed class HelpTests : BunitContext
{
    private static readonly string Examples = Path.Combine(Checkout.Root, "examples", "garage");

    public static TheoryData<string> Pages => [.. PageEntry.All.Select(page => page.Path)];

    [Theory, MemberData(nameof(Pages))]
    public void Every_page_says_what_it_answers_and_every_word_that_it_names_stands_in_the_glossary(string path)
    {
        var help = PageHelp.Of(path);
        Assert.NotEqual(PageHelp.Of("no-such-page"), help);
        Assert.NotEmpty(help.Meanings);
        Assert.All(help.Meanings, word => Assert.NotEmpty(word.Says));
        Assert.Equal(help.Words.Count, help.Words.Distinct().Count());
    }

    [Fact]
    public void The_words_of_the_trade_are_those_of_the_glossary()
    {
        var page = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "glossary.md"));
        var trade = page[..page.IndexOf("## Measures", StringComparison.Ordinal)];
        var rows = trade.Split('\n').Count(line => line.StartsWith("| ", StringComparison.Ordinal));
        Assert.Equal(rows - 1, Terms.Trade.Count);
        Assert.Equal("wheel rate and tyre rate in series", Terms.Trade["ride rate"]);
    }

    [Fact]
    public void A_number_of_a_table_means_what_the_list_of_measures_says_a_seat_or_wheel_by_whatever_name()
    {
        foreach (var measure in Glossary.Subjects.SelectMany(subject => subject.Measures).DistinctBy(measure => measure.Key))
        {
            Assert.Equal(measure.Says, Terms.OfNumber(measure.Key));
        }

        Assert.Equal("Largest vertical acceleration at the hip point.", Terms.OfNumber("rear-left-peak-vertical"));
        Assert.Equal(Terms.OfNumber("wheel-bump-margin"), Terms.OfNumber("front-right-bump-margin"));
        Assert.Null(Terms.OfNumber("no-such-number"));
    }

    [Theory]
    [InlineData("Both bump stops are met; a bump stop is rubber.", "bump stops")]
    [InlineData("The dynamic index is 0.91 and the VDV 3.", "dynamic index|VDV")]
    [InlineData("It passes over the road and bounces.", "")]
    [InlineData("eVDV", "eVDV")]
    public void In_a_sentence_a_word_of_the_trade_carries_its_meaning_the_first_time_and_no_word_is_lost(string text, string marked)
    {
        var pieces = Terms.Marked(text);
        Assert.Equal(text, string.Concat(pieces.Select(piece => piece.Words)));
        Assert.Equal(marked, string.Join('|', pieces.Where(piece => piece.Says is not null).Select(piece => piece.Words)));
    }

    [Fact]
    public void The_story_is_told_of_the_cars_of_the_garage_or_else_of_those_that_come_with_the_program()
    {
        var empty = Directory.CreateTempSubdirectory("heaveline-story-").FullName;
        try
        {
            Assert.Null(StoryCars.Of(empty, null));
            Assert.False(StoryCars.Of(empty, Examples)!.IsHere);
            var here = StoryCars.Of(Examples, null)!;
            Assert.True(here.IsHere);
            Assert.True(here.Loaded.Loads.Sum(load => load.Mass.Si) > here.Light.Loads.Sum(load => load.Mass.Si));
        }
        finally
        {
            Directory.Delete(empty, recursive: true);
        }
    }

    [Fact]
    public void The_numbers_of_the_story_are_those_of_the_pass()
    {
        var cars = StoryCars.Of(Examples, null)!;
        var answer = CompareStudy.Run(new CompareAsked { Cars = cars.All, Road = StoryCars.Road, Speeds = [StoryCars.Speed] });
        var words = new StoryWords(cars, answer.Passes[0]);
        var (before, after) = (Nod(cars.Pair[0]), Nod(cars.Pair[1]));
        Assert.Equal($"Loaded, this saloon nods by {before} after a hump; with other springs and dampers by {after}.", words.Headline);
        Assert.Contains($"under '{cars.Loaded.Name}' by {before}", words.OfLoad, StringComparison.Ordinal);
        Assert.Contains($"{before} to {after}", words.OfCure, StringComparison.Ordinal);
        // The price is told: on this hump the cured car is harder on whoever drives alone.
        Assert.NotEmpty(words.Worse);
        Assert.Contains("press their bump stops by", words.OfCure, StringComparison.Ordinal);

        static string Nod(LoadedCar car)
        {
            var measure = PassCatalogue.PitchOver(StoryCars.Road)[0];
            var pass = PassStudy.Run(new PassAsked { Car = car, Road = StoryCars.Road, Speed = StoryCars.Speed }).Pass;
            return $"{measure.Print(measure.ShownOf(pass)!.Value)}{measure.Unit.Suffix}";
        }
    }

    [Fact]
    public void Where_the_saloon_is_nowhere_the_story_says_so_and_leads_to_a_car_of_ones_own()
    {
        var empty = Directory.CreateTempSubdirectory("heaveline-story-").FullName;
        PageHost.AddPages(Services, new ServeOptions { Garage = empty });
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        JSInterop.Mode = JSRuntimeMode.Loose;
        var page = Render<StoryPage>();
        Assert.Contains("in no folder here", page.Find(".lede").TextContent, StringComparison.Ordinal);
        Assert.Equal("sheet", page.Find("a.leading").GetAttribute("href"));
        Services.GetRequiredService<GarageView>().Dispose();
        Directory.Delete(empty, recursive: true);
    }
}
