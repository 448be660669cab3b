using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.Figures;

namespace Heaveline.Tests.Studies;

public class DescribeStudyTests
{
    private static readonly LoadState Unbearable = new()
    {
        Name = "anvils",
        // So far behind the rear axle that the front wheels would leave the ground.
        Loads = [new() { Name = "anvils", Mass = new(2000.0), BehindFrontAxle = new(6.0), Height = new(0.5) }],
    };

    [Fact]
    public void A_car_is_described_under_every_load_that_it_has()
    {
        var answer = DescribeStudy.Run(DescribeAsked.Of(DrawnCars.Saloon));
        Assert.Equal(["empty", "driver alone", "four and luggage"], answer.Tables[0].Columns);
        Assert.Equal(["Standing", "Axles", "Body"], answer.Tables.Select(t => t.Title));
        Assert.Equal(answer.Sentences.Select(s => s.Id).Distinct(), answer.Sentences.Select(s => s.Id));
        Assert.Equal($"{DrawnCars.Saloon.Name}: load states", answer.Figure(answer.FigureIds[0]).Title);
    }

    [Fact]
    public void Modes_are_listed_and_drawn_first_where_they_are_asked_for()
    {
        var answer = DescribeStudy.Run(DescribeAsked.Of(DrawnCars.Saloon) with { WithModes = true });
        Assert.Equal("Damped modes, driver alone", answer.Tables[^1].Title);
        Assert.Equal(DescribeAnswer.Modes, answer.FigureIds[0]);
    }

    [Fact]
    public void Numbers_come_before_their_doubts_for_whoever_waits()
    {
        Answer? meanwhile = null;
        var asked = DescribeAsked.Of(DrawnCars.Saloon) with { WithSlopes = true };
        var answer = DescribeStudy.Run(asked, new StudyRun { Meanwhile = a => meanwhile = a });
        Assert.Empty(Assert.IsType<DescribeAnswer>(meanwhile).Slopes);
        Assert.Equal(3, answer.Slopes.Count);
        Assert.Contains(Sources.Doubts, answer.Sources);
    }

    [Fact]
    public void An_unbearable_load_refuses_the_whole_unless_it_may_be_left_out()
    {
        var car = DrawnCars.Saloon with { LoadStates = [DrawnCars.Driver, Unbearable] };
        Assert.Throws<RefusedValueException>(() => DescribeStudy.Run(DescribeAsked.Of(car)));
        var answer = DescribeStudy.Run(DescribeAsked.Of(car) with { LeavesOutUnbearable = true });
        Assert.Equal(["empty", "driver alone"], answer.Models.Select(m => m.Load.Name));
        Assert.StartsWith("anvils: ", Assert.Single(answer.Unbearable), StringComparison.Ordinal);
    }

    [Fact]
    public void Words_become_what_is_asked()
    {
        Assert.Equal(3, DescribeStudy.Question.Read(new Given([("car", "hazel")]), new DrawnThings()).Asked!.Loads.Length);
        var asked = DescribeStudy.Question.Read(
            new Given([("car", "hazel"), ("load", "driver alone"), ("modes", Choice.Yes), ("doubt", Choice.Yes), ("samples", "20"), ("seed", "7")]),
            new DrawnThings()).Asked!;
        Assert.Equal(("driver alone", true, 20, 7UL), (asked.Loads.Single().Name, asked.WithModes, asked.Draws, asked.Seed));
    }
}
