using Heaveline.Cars;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class RideStudyTests
{
    private static readonly Car Saloon = PlainCar.Saloon with
    {
        Seats = [new Seat { Name = "driver", BehindFrontAxle = new(1.3), LeftOfMiddle = new(0.35), Height = new(0.6) }],
    };

    private static RideAsked Asked { get; } = new()
    {
        Cars = [LoadedCar.Of(Saloon)],
        Road = NamedSpectrum.Of(RoadClass.B),
        Speeds = [10.0, 15.0, 20.0],
    };

    [Fact]
    public void A_program_asks_without_files_and_gets_tables_figures_and_words_by_their_ids()
    {
        var answer = RideStudy.Run(Asked);
        Assert.Equal(["36 km/h", "54 km/h", "72 km/h"], Assert.Single(answer.Tables).Columns);
        Assert.Equal(["sweep", "count", "spectra", "transfer"], answer.FigureIds);
        Assert.All(answer.FigureIds, id => Assert.NotEmpty(answer.Figure(id).Panels));
        Assert.Throws<KeyNotFoundException>(() => answer.Figure("film"));
        Assert.Equal(["both"], answer.Sentences.Select(s => s.Id));
        Assert.Empty(answer.Cautions);
    }

    [Fact]
    public void A_car_without_a_seat_has_no_figure_of_what_is_counted_there()
    {
        var answer = RideStudy.Run(Asked with { Cars = [LoadedCar.Of(PlainCar.Saloon)], Speeds = [20.0] });
        Assert.Equal(["sweep", "spectra", "transfer"], answer.FigureIds);
    }

    [Fact]
    public void Where_speeds_stand_close_a_doubt_is_told_once_with_the_speed_it_begins_at()
    {
        // Class G: every wheel leaves the road at each of these speeds, by RandomResponse.LargestLoadVariation.
        var each = RideStudy.Run(Asked with { Road = NamedSpectrum.Of(RoadClass.G) });
        var close = RideStudy.Run(Asked with { Road = NamedSpectrum.Of(RoadClass.G), Every = 2 });
        var ids = each.Cars[0].Responses.Select(r => r.Cautions.Select(c => c.Id)).ToList();
        Assert.Equal(["lift-off-front-left", "lift-off-front-right", "lift-off-rear-left", "lift-off-rear-right"], ids[0]);
        Assert.Equal(12, each.Cautions.Count);
        Assert.StartsWith("plain saloon at 36 km/h: The front left tyre's load varies", each.Cautions[0], StringComparison.Ordinal);
        Assert.Equal(4, close.Cautions.Count);
        Assert.All(close.Cautions, c => Assert.StartsWith("plain saloon from 36 km/h: ", c, StringComparison.Ordinal));
        // In the words of the fastest speed.
        Assert.EndsWith(each.Cautions[^1].Split(": ", 2)[1], close.Cautions[^1], StringComparison.Ordinal);
        Assert.Equal(["36 km/h", "72 km/h"], close.Tables[0].Columns);
    }

    [Fact]
    public void Intervals_come_with_the_sentence_that_says_how_and_the_source()
    {
        var answer = RideStudy.Run(Asked with { Speeds = [20.0], Draws = 10 });
        Assert.Equal(["doubts", "both"], answer.Sentences.Select(s => s.Id));
        Assert.Contains("10 draws", answer.Sentences[0].Text);
        Assert.Contains(Heaveline.Answers.Sources.Draws, answer.Sources);
    }

    [Fact]
    public void Two_cars_of_one_name_are_told_apart()
    {
        var read = RideStudy.Question.Read(KnownThings.Words("car", Saloon.Name, "car", Saloon.Name), new KnownThings(Saloon));
        Assert.Equal(2, read.Asked!.Cars.Select(c => c.Name).Distinct().Count());
    }

    [Fact]
    public void The_progress_of_a_ride_rises_to_its_end()
    {
        var shares = new List<double>();
        _ = RideStudy.Run(Asked with { InTime = true, Speeds = [20.0] }, new StudyRun { Progress = new Shares(shares) });
        Assert.Equal([1.0 / 13.0, 1.0], shares);
    }

    private sealed class Shares(List<double> told) : IProgress<double>
    {
        public void Report(double value) => told.Add(value);
    }
}
