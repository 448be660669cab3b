using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Search;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

/// <summary>What a setup changes besides, with how sure that is.</summary>
public class ChooseSidesTests
{
    private static readonly ChooseAnswer Answer = ChooseStudy.Run(VillageParts.Asked, new StudyRun { Degree = 2 });

    private static ChooseFindings Findings => Answer.Findings;

    [Fact]
    public void Every_number_of_the_price_is_told_with_an_interval()
    {
        string[] keys = ["roll-per-g", "roll-stiffness-front-share", "braking-pitch-per-g", "lamp-drop", "worst-load-variation-1"];
        Assert.All(keys, key => Assert.Contains(Findings.Sides, side => side.Key == key));
        Assert.Contains(Findings.Sides, side => side.Key.EndsWith("bump-left", StringComparison.Ordinal));
        Assert.Equal(
            Findings.Asked.Car.Seats.Count * Findings.Asked.RideSpeeds.Length,
            Findings.Sides.Count(side => side.Key.Contains("vertical-wk", StringComparison.Ordinal)));
        Assert.All(Findings.Sides, side => Assert.Equal(Findings.List.Length, side.Changes.Length));
    }

    [Fact]
    public void A_change_is_that_of_the_same_drawn_cars_with_and_without_the_parts()
    {
        var side = Findings.Sides.Single(one => one.Key == "braking-pitch-per-g");
        var doer = new ChooseDoer(Findings.Asked, Findings.Use, Findings.Parts);
        double Pitch(int draw, Car car) => SideEffects.Of(doer.CarOf(draw).ModelOf(car, Findings.Full.Model.Load)).Braking.Angle;
        double[] all =
        [
            .. Findings.Trial.Numbers.Take(ChooseSides.MostDraws)
                .Select(draw => Pitch(draw, Findings.List[0].Fitted.Car) - Pitch(draw, Findings.Asked.Car)),
        ];
        Assert.Equal(all.Average(), side.Changes[0].Mean, 1e-12);
        Assert.Equal(all.Length, side.Changes[0].Draws);
        Assert.Equal(Pitch(Piece.AsStated, Findings.Asked.Car), side.Present, 1e-12);
    }

    [Fact]
    public void Paired_draws_scatter_less_than_the_cars_themselves()
    {
        var side = Findings.Sides.Single(one => one.Key == "braking-pitch-per-g");
        var doer = new ChooseDoer(Findings.Asked, Findings.Use, Findings.Parts);
        double[] alone =
        [
            .. Findings.Trial.Numbers.Take(ChooseSides.MostDraws)
                .Select(draw => SideEffects.Of(doer.CarOf(draw).ModelOf(Findings.Asked.Car, Findings.Full.Model.Load)).Braking.Angle),
        ];
        var mean = alone.Average();
        var deviation = Math.Sqrt(alone.Sum(value => (value - mean) * (value - mean)) / (alone.Length - 1));
        Assert.All(side.Changes, change => Assert.True(change.HalfWidth < 1.645 * deviation));
    }

    [Fact]
    public void A_load_under_which_a_side_effect_is_worse_than_under_the_one_told_is_named_with_it()
    {
        var named = 0;
        foreach (var (k, one) in Findings.List.Index())
        {
            var told = Answer.Sentences.Single(s => s.Id == $"besides-{one.Letter.ToLowerInvariant()}").Text;
            foreach (var side in Findings.Sides.Where(side => side.Measure.Better != Better.Neither && side.Measure is Measure<CarAtRest>))
            {
                var measure = (Measure<CarAtRest>)side.Measure;
                double Change(LoadState load) => measure.Of(new CarAtRest(RideModel.Of(one.Fitted.Car, load)))
                    - measure.Of(new CarAtRest(RideModel.Of(Findings.Asked.Car, load)));
                var changes = Findings.Asked.Loads.Concat(Findings.Stood.Others).Select(load => (By: Change(load), load.Name));
                var worst = measure.Better == Better.More ? changes.MinBy(c => c.By) : changes.MaxBy(c => c.By);
                Assert.Equal(worst.By, side.Worst[k]!.Value.Change, 1e-12);
                if (side.WorseWords(k) is not { } words)
                {
                    continue;
                }

                named++;
                Assert.NotEqual(Findings.Full.Model.Load.Name, worst.Name);
                Assert.Contains($"under the load '{worst.Name}' as stated", words, StringComparison.Ordinal);
                Assert.Contains(words, told[told.IndexOf(side.Label, StringComparison.Ordinal)..], StringComparison.Ordinal);
            }
        }

        Assert.True(named > 0);
    }

    [Fact]
    public void A_seat_is_told_as_a_seat_and_a_load_as_a_load() => Assert.All(
        Answer.Sentences.Where(s => s.Id.StartsWith("besides-", StringComparison.Ordinal)), s =>
        {
            Assert.Contains("under the load 'four up with luggage'", s.Text, StringComparison.Ordinal);
            Assert.Contains("at the seat 'driver'", s.Text, StringComparison.Ordinal);
        });

    [Fact]
    public void Better_worse_and_the_same_within_the_doubt_are_said_of_every_setup_and_stand_in_the_table()
    {
        for (var k = 0; k < Findings.List.Length; k++)
        {
            var told = Answer.Sentences.Single(s => s.Id == $"besides-{Findings.List[k].Letter.ToLowerInvariant()}").Text;
            foreach (var side in Findings.Sides.Where(side => side.Measure.Better != Better.Neither && !side.IsFurther))
            {
                var change = side.Changes[k];
                var at = told.IndexOf(side.Label, StringComparison.Ordinal);
                Assert.True(at > 0, side.Label);
                var before = told[..at];
                var word = before[(before.LastIndexOf(';') + 1)..];
                var turn = (change.Mean > 0.0) == (side.Measure.Better == Better.More) ? "better" : "worse";
                Assert.Contains(side.IsTold(k) ? turn : "the same within the doubt", word, StringComparison.Ordinal);
            }
        }

        var table = Answer.Tables.Single(table => table.Title.StartsWith("Change besides", StringComparison.Ordinal));
        Assert.Equal(1 + (2 * Findings.List.Length), table.Columns.Count);
        Assert.All(table.Rows, row => Assert.All(Enumerable.Range(0, Findings.List.Length), k =>
            Assert.True(!(row.Values[1 + (2 * k)] > row.Values[2 + (2 * k)]))));
    }
}
