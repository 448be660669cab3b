using Heaveline.Cars;
using Heaveline.Modes;
using Heaveline.Rides;
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
    public void Friction_that_sticks_is_told_up_to_a_speed_in_the_words_of_the_slowest()
    {
        var friction = new Friction { HalfWidth = new(150.0) };
        var stiff = Saloon with { Front = Saloon.Front with { Friction = friction }, Rear = Saloon.Rear with { Friction = friction } };
        var answer = RideStudy.Run(Asked with
        {
            Cars = [LoadedCar.Of(stiff)],
            Road = NamedSpectrum.Of(RoadClass.A),
            Speeds = [30.0 / 3.6, 60.0 / 3.6, 120.0],
        });
        var each = answer.Cars[0].Responses.Select(r => r.Cautions.SingleOrDefault(c => c.Id == "sticking-friction")?.Text).ToList();
        Assert.NotNull(each[0]);
        Assert.NotNull(each[1]);
        Assert.Null(each[2]);
        Assert.Equal("plain saloon up to 60 km/h, here at 30 km/h: " + each[0], Assert.Single(answer.Cautions));
    }

    [Fact]
    public void Where_speeds_stand_close_a_doubt_is_told_once_with_the_speed_it_begins_at()
    {
        // Class G: every wheel leaves the road at each of these speeds, by RandomResponse.LargestLoadVariation.
        var each = RideStudy.Run(Asked with { Road = NamedSpectrum.Of(RoadClass.G) });
        var close = RideStudy.Run(Asked with { Road = NamedSpectrum.Of(RoadClass.G), Every = 2 });
        var ids = each.Cars[0].Responses.Select(r => r.Cautions.Select(c => c.Id)).ToList();
        Assert.Equal(["lift-off"], ids[0]);
        var told = Assert.Single(each.Cautions);
        Assert.StartsWith("plain saloon from 36 km/h on, here at 72 km/h: Tyre loads vary by more than 33 %", told, StringComparison.Ordinal);
        Assert.Equal(each.Cautions, close.Cautions);
        // In the words of the fastest speed, with the number of every wheel there.
        var fastest = each.Cars[0].Responses[^1];
        Assert.EndsWith(Assert.Single(fastest.Cautions).Text, told, StringComparison.Ordinal);
        Assert.All(Enumerable.Range(0, 4), i => Assert.Contains(
            FormattableString.Invariant($"{CornerNames.Of(i, true)} {100.0 * fastest.LoadVariation(i):F0} %"), told));
        Assert.Equal(["36 km/h", "72 km/h"], close.Tables[0].Columns);
    }

    [Fact]
    public void A_road_too_rough_for_the_method_gives_no_number_and_is_a_failure()
    {
        var fern = Heaveline.Tests.Rides.GasFern.OnGas;
        var asked = Asked with { Cars = [LoadedCar.Of(fern, fern.LoadStates[0])], Road = NamedSpectrum.Of(RoadClass.H), Speeds = [22.0] };
        var answer = RideStudy.Run(asked);
        Assert.Equal(RandomOutcome.NotConverged, answer.Cars[0].Responses[0].Outcome);
        Assert.Empty(answer.Tables);
        Assert.Contains("no linear car could be found", answer.Failure);
        Assert.DoesNotContain(answer.Lines, line => line.Contains("NaN", StringComparison.Ordinal));
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
