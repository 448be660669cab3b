using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
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
        Assert.Equal("Damped modes, driver alone", answer.Tables[3].Title);
        Assert.Equal(DescribeAnswer.Modes, answer.FigureIds[0]);
    }

    [Fact]
    public void Every_wheel_is_listed_where_it_is_asked_for_and_adds_up_to_the_car()
    {
        var answer = DescribeStudy.Run(DescribeAsked.Of(DrawnCars.Saloon) with { WithWheels = true });
        double At(int table, string key, int load) => answer.Tables[table].Rows.Single(r => r.Key == key).Values[load]!.Value;
        Assert.Equal("Wheels, ride rates and inertias", answer.Tables[3].Title);
        for (var load = 0; load < 3; load++)
        {
            Assert.Equal(At(0, "front-load", load), At(3, "front-left-load", load) + At(3, "front-right-load", load), 1e-9);
            Assert.Equal(At(0, "rear-load", load), At(3, "rear-left-load", load) + At(3, "rear-right-load", load), 1e-9);
            Assert.Equal(1e3 * answer.Models[load].Trim.Travel[2], At(3, "rear-left-sag", load), 1e-9);
            Assert.Equal(answer.Models[load].Body.PitchInertia, At(3, "pitch-inertia", load), 1e-9);
        }

        // Springs and tyre in series: 1/K = 1/k + 1/k_t.
        var tyre = 1e-3 * DrawnCars.Saloon.Front.Tyre.Rate.Si;
        Assert.Equal(1.0 / ((1.0 / At(1, "front-wheel-rate", 0)) + (1.0 / tyre)), At(3, "front-ride-rate", 0), 1e-9);
    }

    /// <summary>A real root is told by its time constant 1/|λ|, an overdamped quarter car's two by the roots of mλ² + cλ + k.</summary>
    [Fact]
    public void What_creeps_back_is_told_by_its_time_and_has_no_frequency()
    {
        var car = DrawnCars.Saloon;
        var stiff = new Damper { Law = new RatioDamper { Ratio = new(1.8) } };
        car = car with { Front = car.Front with { Damper = stiff }, Rear = car.Rear with { Damper = stiff } };
        var model = RideModel.Of(car);
        var tables = ModesTable.Of(model);
        var modes = DampedModes.Of(model);
        Assert.NotEmpty(modes.Creeps);
        Assert.DoesNotContain(tables[0].Columns, name => name.Contains("creeping", StringComparison.Ordinal));
        Assert.Equal(modes.Creeps.Count, tables[1].Columns.Count);
        var row = Assert.Single(tables[1].Rows);
        Assert.Equal(("time-constant", "s"), (row.Key, row.Unit));
        Assert.All(row.Values.Zip(modes.Creeps), pair => Assert.Equal(-1.0 / pair.Second.Root.Real, pair.First!.Value, 1e-12));
    }

    [Fact]
    public void A_table_that_ends_below_the_load_is_said_beside_the_numbers_and_in_the_pass()
    {
        var car = DrawnCars.Saloon;
        var spring = new TableSpring(new ForceTable([0.0, 0.05, 0.08], [0.0, 1000.0, 1700.0]));
        car = car with { Front = car.Front with { Spring = car.Front.Spring with { Law = spring } } };
        var said = Assert.Single(DescribeNotes.Of([new CarAtRest(RideModel.Of(car))]), note => note.Id == "front-spring-table").Text;
        Assert.Contains("ends at 1700 N; standing under 'empty' the spring carries", said, StringComparison.Ordinal);
        var pass = Pass.Of(RideModel.Of(car), Road.From(new RoundTopHump { Height = new(0.05), Length = new(3.7) }), 8.0);
        Assert.Contains(PassStory.Of(pass, PassMeasures.Of(pass)), sentence => sentence.Id == "front-spring-table");
        Assert.Empty(SpringTableEnd.Standing([RideModel.Of(DrawnCars.Saloon)]));
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
