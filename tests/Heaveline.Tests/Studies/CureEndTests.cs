using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Tuning;

namespace Heaveline.Tests.Studies;

/// <summary>How far a cure may be taken, and what ends it.</summary>
public class CureEndTests
{
    private static readonly Car Saloon = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;

    private static readonly CureAsked Asked = new()
    {
        Car = LoadedCar.Of(Saloon, Load("four up with luggage")),
        Road = NamedRoads.Find("village-hump").Value!,
        Speed = 40.0 / 3.6,
        Draws = 24,
        Seed = 5,
    };

    [Fact]
    public void What_is_told_to_end_a_cure_does_so_a_step_of_its_slider_past_what_is_told_and_under_that_load()
    {
        var ended = CureStudy.Run(Asked).Cures.Where(cure => cure.Values.Count == 1 && cure.End is not null).ToList();
        Assert.NotEmpty(ended);
        foreach (var cure in ended)
        {
            var (key, value) = cure.Values.Single();
            var (setting, end) = (Settings.All(false).Single(one => one.Key == key), cure.End!);
            var scale = setting.ScaleOf(Saloon)!;
            var last = double.Parse(end.Last.Split(' ')[0], CultureInfo.InvariantCulture);
            var way = Math.Sign(value - scale.Described);
            Assert.True(way * (last - value) >= 0.0, $"{cure.Words}: {end.Last}");
            Assert.All(Loads, load => Assert.Equal(CureBreach.None, Met(setting, last, load).FirstOrDefault(CureBreach.None)));
            var told = $"{cure.Words}: past {end.Last}, {end.Breach} under {end.Load}";
            Assert.True(Met(setting, scale.OnStep(last + (way * scale.Step)), Load(end.Load)).Contains(end.Breach), told);
        }
    }

    [Fact]
    public void A_way_that_leads_to_no_crossing_is_told_with_what_gave_out_over_what_how_fast_and_under_which_load()
    {
        var told = 0;
        foreach (var speed in new[] { 60.0, 90.0 })
        {
            var asked = Asked with { Speed = speed / 3.6 };
            foreach (var way in CureTurn.Ways(Saloon))
            {
                var (trial, load) = (new CureTrial([way[^1]]), Load("four up with luggage"));
                if (trial.ModelOf(Saloon, load) is not { } model)
                {
                    continue;
                }

                var end = CureCrossing.Told(asked, trial, new CureEnd(CureBreach.NoCrossing, load.Name, ""), Loads, Unstopped);
                var isAcross = Pass.Of(model, asked.Road, asked.Speed).Outcome == PassOutcome.Completed;
                Assert.Equal(isAcross, end.Why is null);
                if (!isAcross)
                {
                    told++;
                    var where = FormattableString.Invariant($"does not get across '{asked.Road.Caption}' at {speed:0.#} km/h (");
                    Assert.StartsWith(where, end.Why, StringComparison.Ordinal);
                    Assert.Contains(GaveOut.In(model, asked.Road, asked.Speed), end.Why, StringComparison.Ordinal);
                }
            }
        }

        Assert.True(told > 0);
        var stop = new CureEnd(CureBreach.Stop, "driver", "41 N/mm");
        Assert.Equal(stop, CureCrossing.Told(Asked, new CureTrial([CureTurn.Ways(Saloon)[0][0]]), stop, Loads, Unstopped));
    }

    [Fact]
    public void A_way_whose_own_pass_is_refused_ends_without_a_reason_and_one_that_is_stopped_stops()
    {
        // So stiff a damper is stepped more finely than any pass may be.
        var law = (TableDamper)Saloon.Front.Damper.Law;
        var stiff = new TableDamper(
            new ForceTable(law.Bump.At, [.. law.Bump.Force.SkipLast(1), 62e6]), new ForceTable(law.Rebound.At, law.Rebound.Force));
        var car = Saloon with { Front = Saloon.Front with { Damper = Saloon.Front.Damper with { Law = stiff } } };
        var asked = Asked with { Car = LoadedCar.Of(car, Load("four up with luggage")) };
        var trial = new CureTrial([CureTurn.Ways(car).First(way => way[0].Setting.Key == "front-spring")[0]]);
        var load = asked.Car.Load;
        Assert.Throws<RefusedValueException>(() => Pass.Of(trial.ModelOf(car, load)!, asked.Road, asked.Speed, cancellation: Unstopped));
        var end = new CureEnd(CureBreach.NoCrossing, load.Name, "");
        Assert.Null(CureCrossing.Told(asked, trial, end, Loads, Unstopped).Why);
        Assert.Contains("number of steps", GaveOut.In(trial.ModelOf(car, load)!, asked.Road, asked.Speed, Unstopped), StringComparison.Ordinal);
        Assert.ThrowsAny<OperationCanceledException>(() => CureCrossing.Told(Asked, trial, end, Loads, new CancellationToken(true)));
    }

    private static CancellationToken Unstopped => TestContext.Current.CancellationToken;

    private static IEnumerable<LoadState> Loads => Saloon.LoadStates.Append(LoadState.Reference);

    private static LoadState Load(string name) => Loads.First(load => load.Name == name);

    private static IEnumerable<CureBreach> Met(Setting setting, double value, LoadState load)
    {
        var (was, now) = (RideModel.Of(Saloon, load), RideModel.Of(setting.Apply(Saloon, value), load));
        return CureStance.Of(now).Breaches(CureStance.Of(was)).Append(CureGuard.Of(was, Asked.Road, Asked.Aim).Breach(
            Pass.Of(was, Asked.Road, Asked.Speed), Pass.Of(now, Asked.Road, Asked.Speed))).Where(breach => breach != CureBreach.None);
    }
}
