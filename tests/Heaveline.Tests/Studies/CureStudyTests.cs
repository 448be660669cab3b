using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Tuning;

namespace Heaveline.Tests.Studies;

public class CureStudyTests
{
    private static readonly Car Saloon = Known("fern-saloon");

    private static readonly CureAsked Asked = new()
    {
        Car = LoadedCar.Of(Saloon, Saloon.LoadStates.Single(load => load.Name == "four up with luggage")),
        Road = NamedRoads.Find("village-hump").Value!,
        Speed = 40.0 / 3.6,
        Draws = 24,
        Seed = 5,
    };

    private static readonly CureAnswer Answer = CureStudy.Run(Asked);

    [Fact]
    public void All_that_is_wrong_is_said_at_once()
    {
        var reading = CureStudy.Question.Read(
            KnownThings.Words("car", "plain saloon", "load", "five up", "road", "lump", "speed", "fast", "measure", "noise", "samples", "3"),
            new KnownThings(PlainCar.Saloon));
        Assert.Null(reading.Asked);
        Assert.Equal(["speed", "measure", "samples", "road", "load"], reading.Objections.Select(o => o.Choice));
    }

    [Fact]
    public void Words_become_what_is_asked()
    {
        var words = KnownThings.Words("car", "plain saloon", "road", "hump", "speed", "36 km/h", "measure", "hit", "samples", "50", "seed", "3");
        var asked = CureStudy.Question.Read(words, new KnownThings(PlainCar.Saloon)).Asked!;
        Assert.Equal(
            ("plain saloon", KnownThings.Hump, 10.0, CureAim.Hit, 50, 3UL),
            (asked.Car.Name, asked.Road, asked.Speed, asked.Aim, asked.Draws, asked.Seed));
    }

    [Fact]
    public void Every_cure_takes_off_what_is_felt_and_that_which_takes_off_most_comes_first()
    {
        Assert.NotEmpty(Answer.Cures);
        var described = Answer.Measure.Of(Answer.Described[0].Pass);
        var left = Answer.Cures.Select(cure => Answer.Measure.Of(cure.Passes[0].Pass)).ToList();
        Assert.Equal(left.Order(), left);
        Assert.All(left, value => Assert.True(value < (1.0 - (0.9 * MeasureChange.Felt)) * described, $"{value} of {described}"));
        Assert.Equal(Answer.Cures.Select(cure => cure.Words).Distinct(), Answer.Cures.Select(cure => cure.Words));
    }

    /// <summary>By passes one by one of cars made by the settings: the smallest step that reaches four fifths of what is allowed.</summary>
    [Fact]
    public void A_setting_alone_is_turned_no_farther_than_four_fifths_of_what_it_can_take_off()
    {
        var alone = Answer.Cures.Where(cure => cure.Values.Count == 1).ToList();
        Assert.True(alone.Count >= 2);
        foreach (var cure in alone)
        {
            var (key, value) = cure.Values.Single();
            var setting = Settings.All(false).Single(one => one.Key == key);
            var way = CureTurn.Ways(Saloon).Single(way => way[0].Setting == setting && way.Any(turn => turn.Value == value));
            var before = Crossed(Saloon);
            var (gains, damping) = (new List<double>(), DampingRatios(Saloon));
            foreach (var turn in way)
            {
                var car = setting.Apply(Saloon, turn.Value);
                var after = Crossed(car);
                if (!before.Zip(after).All(pair => IsAllowed(pair.First, pair.Second)) || !damping.Zip(DampingRatios(car)).All(IsCommon))
                {
                    break;
                }

                gains.Add(Settling(before[0]) - Settling(after[0]));
            }

            // Why it ends is said, and nothing where the slider ends first.
            Assert.Equal(gains.Count < way.Length, cure.End is not null);
            var chosen = gains.FindIndex(gain => gain >= Math.Max(0.8 * gains.Max(), 0.03 * Settling(before[0])));
            Assert.Equal(value, way[chosen].Value);
        }

        static double Settling(Pass pass) => SettlingCatalogue.RmsPitch.Of(pass);

        static bool IsCommon((double Was, double Now) axle) =>
            axle.Now >= Math.Min(axle.Was, 0.20) - 1e-6 && axle.Now <= Math.Max(axle.Was, 0.50) + 1e-6;
    }

    [Fact]
    public void No_cure_lifts_a_wheel_presses_a_stop_deeper_or_spoils_the_hit_under_any_load() => Assert.All(Answer.Cures, cure =>
        Assert.All(Answer.Described.Zip(cure.Passes), pair => Assert.True(IsAllowed(pair.First.Pass, pair.Second.Pass), cure.Words)));

    [Fact]
    public void A_cure_crosses_the_road_as_the_command_pass_says_of_its_car() => Assert.All(Answer.Cures, cure =>
    {
        var pass = PassStudy.Run(new PassAsked { Car = cure.Car, Road = Asked.Road, Speed = Asked.Speed });
        Assert.Equal(Answer.Measure.Of(pass.Pass), Answer.Measure.Of(cure.Passes[0].Pass));
        Assert.Equal(Settings.Apply(Saloon, cure.Values, false), cure.Car.Car);
    });

    [Fact]
    public void The_price_standing_is_what_the_command_cost_says_under_the_fullest_load()
    {
        Assert.Equal("four up with luggage", Answer.Full.Model.Load.Name);
        var standing = Answer.Tables[^1];
        foreach (var (k, cure) in Answer.Cures.Index())
        {
            var cost = CostStudy.Run(new CostAsked
            {
                Cars = [LoadedCar.Of(Saloon, Answer.Full.Model.Load), new LoadedCar("after", cure.Car.Car, Answer.Full.Model.Load)],
                Draws = 10,
            });
            foreach (var row in cost.Tables[0].Rows)
            {
                // Left and right may need a row each beside another cure.
                var same = standing.Rows.Single(
                    one => one.Key == row.Key || one.Key == $"{row.Key.Split('-')[0]}-left{row.Key[row.Key.IndexOf('-')..]}");
                Assert.Equal(row.Values, [same.Values[0], same.Values[k + 1]]);
            }

            // What is told as the price is worse by what is felt in that table, the largest first.
            var told = Answer.Told[k].Single(said => said.Id.EndsWith("-price", StringComparison.Ordinal)).Text;
            var worse = CostTable.Measures(cost.Cars)
                .Select(measure => new MeasureChange(measure, measure.ShownOf(cost.Cars[0]), measure.ShownOf(cost.Cars[1])))
                .Where(change => change is { Before: not null, After: not null, IsFelt: true, IsBetter: false }).MaxBy(change => change.Share);
            Assert.Equal(worse is not null, told.Contains("standing: ", StringComparison.Ordinal));
            Assert.True(worse is null || told.Contains(
                $"standing: {worse.Measure.Label} {worse.Size.Replace('\u00a0', ' ')}", StringComparison.Ordinal), told);
        }
    }

    /// <summary>By a loop over draws, a pass at a time.</summary>
    [Fact]
    public void The_chance_counts_the_drawn_cars_in_which_it_helps()
    {
        var doubts = JointDoubts.Of([.. Answer.Cures.Select(cure => cure.Car).Prepend(Asked.Car).Select(car => CarDoubts.Of(car.Car, car.Load))]);
        var (helps, harms) = (new int[Answer.Cures.Length], new int[Answer.Cures.Length]);
        for (var draw = 0; draw < Asked.Draws; draw++)
        {
            var passes = JointDraw.Of(doubts, Asked.Seed, draw).Models
                .Select(model => Pass.Of(model, Asked.Road, Asked.Speed, new() { Method = FixedStep.Once })).ToList();
            var nods = passes.ConvertAll(pass => SettlingCatalogue.RmsPitch.Of(pass));
            for (var k = 0; k < helps.Length; k++)
            {
                if (passes[0].Outcome != PassOutcome.Completed)
                {
                    helps[k] += passes[k + 1].Outcome == PassOutcome.Completed ? 1 : 0;
                    continue;
                }

                helps[k] += nods[k + 1] <= 0.97 * nods[0] ? 1 : 0;
                harms[k] += IsAllowed(passes[0], passes[k + 1], isHitToo: false) ? 0 : 1;
            }
        }

        Assert.Equal(helps.Zip(harms, (help, harm) => new CureChance(help, harm, Asked.Draws)), Answer.Cures.Select(cure => cure.Chance!));
        Assert.Contains(helps, count => count is > 0 and < 24);
    }

    [Fact]
    public void The_same_seed_says_the_same_however_many_cores_work()
    {
        var again = CureStudy.Run(Asked, new StudyRun { Degree = 4 });
        Assert.Equal(Answer.Json("v", "cure"), again.Json("v", "cure"));
    }

    [Fact]
    public void The_share_done_rises_to_one()
    {
        var told = new System.Collections.Concurrent.ConcurrentQueue<double>();
        CureStudy.Run(Asked with { Draws = 10 }, new StudyRun { Progress = new Told(told.Enqueue) });
        Assert.Equal(told.Order(), told);
        Assert.Equal(1.0, told.Last(), 1e-12);
    }

    [Fact]
    public void Every_sentence_has_an_id_of_its_own_but_for_the_reminders()
    {
        string[] ids = [.. Answer.Sentences.Select(s => s.Id).Where(id => !Answer.Cost.Reminders.Any(r => r.Reminders.Any(s => s.Id == id)))];
        Assert.Equal(ids.Distinct(), ids);
        Assert.Equal("finding", ids[0]);
        Assert.Contains("cure-1-price", ids);
        Assert.Contains("cure-1-chance", ids);
        Assert.Contains("method", ids);
    }

    [Fact]
    public void A_reader_of_imperial_units_is_told_of_no_millimetre() =>
        Assert.All(Answer.WholeLinesIn(ReaderUnits.Imperial), line => Assert.DoesNotMatch(@"\d (?:mm|N/mm|km/h|kg)\b", line));

    [Fact]
    public void A_change_that_presses_a_stop_lifts_a_wheel_or_spoils_the_hit_is_told_apart()
    {
        var guard = CureGuard.Of(Answer.Full.Model, Asked.Road, CureAim.Settling);
        double[] Numbers(params (string Key, double Value)[] set) =>
            [.. guard.Measured.Select(measure => set.FirstOrDefault(one => one.Key == measure.Key) is { Key: { } } own ? own.Value : 0.01)];
        var before = Numbers(("front-lift-off", 0.0), ("rear-lift-off", 0.02), ("front-bump-margin", -0.004));
        CureBreach After(params (string Key, double Value)[] set) => guard.Breach(
            before, Numbers([.. set, ("front-lift-off", 0.0), ("rear-lift-off", 0.02), ("front-bump-margin", -0.004)]));
        Assert.Equal(CureBreach.None, After());
        Assert.Equal(CureBreach.Lift, After(("front-lift-off", 0.01)));
        Assert.Equal(CureBreach.Lift, After(("rear-lift-off", 0.03)));
        Assert.Equal(CureBreach.None, After(("rear-lift-off", 0.01)));
        Assert.Equal(CureBreach.Stop, After(("front-bump-margin", -0.006)));
        Assert.Equal(CureBreach.None, After(("front-bump-margin", -0.002)));
        Assert.Equal(CureBreach.Stop, After(("rear-rebound-margin", -0.001)));
        Assert.Equal(CureBreach.None, After(("rear-rebound-margin", 0.001)));
        Assert.Equal(CureBreach.None, After((HitCatalogue.PeakPitchAcceleration.Key, 0.0109)));
        Assert.Equal(CureBreach.Spoilt, After((HitCatalogue.PeakPitchAcceleration.Key, 0.0111)));
        Assert.Equal(CureBreach.NoCrossing, After((SettlingCatalogue.RmsPitch.Key, double.NaN)));
    }

    [Fact]
    public void Where_nothing_pitches_there_is_nothing_to_cure()
    {
        var flat = CureStudy.Run(Asked with { Road = Heaveline.Roads.Road.Flat, Draws = 10 });
        Assert.Empty(flat.Cures);
        Assert.StartsWith("There is nothing to cure: the ", flat.Finding.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_without_doubts_has_cures_without_a_chance_and_says_so()
    {
        var answer = CureStudy.Run(Asked with { Car = LoadedCar.Of(PlainCar.Saloon, PlainCar.With(250.0, 2.9)) });
        Assert.NotEmpty(answer.Cures);
        Assert.All(answer.Cures, cure => Assert.Null(cure.Chance));
        Assert.Contains(DoubtAnswer.NotStated, answer.Notes);
        Assert.StartsWith("Cure 1 does most: ", answer.Finding.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_helps_for_sure_is_the_finding_and_where_nothing_does_it_is_said()
    {
        var unsure = new CureChance(12, 0, 24);
        var harmful = new CureChance(24, 3, 24);
        CureAnswer With(params CureChance[] chances) => Answer with
        {
            Cures = [.. Answer.Cures.Take(chances.Length).Zip(chances, (cure, chance) => cure with { Chance = chance })],
        };
        Assert.StartsWith("Nothing helps for sure within the doubts", With(unsure, harmful).Finding.Text, StringComparison.Ordinal);
        Assert.Contains("it helps in 12 of 24 cars", With(unsure, harmful).Finding.Text, StringComparison.Ordinal);
        Assert.StartsWith("Cure 2 does most of what helps for sure: ", With(unsure, new(22, 2, 24)).Finding.Text, StringComparison.Ordinal);
        Assert.StartsWith("Nothing that was tried helps: ", (Answer with { Cures = [] }).Finding.Text, StringComparison.Ordinal);
    }

    /// <summary>The gap between stop and coils by the lengths alone, under every load.</summary>
    [Fact]
    public void No_cure_moves_the_bump_stop_behind_the_coils()
    {
        var bought = Known("fern-saloon-bought");
        var answer = CureStudy.Run(Asked with { Car = Under(bought, "four up with luggage"), Speed = 60.0 / 3.6, Draws = 10 });
        Assert.All(answer.Cures, cure => Assert.All(answer.Described.Zip(cure.Passes), pair =>
        {
            foreach (var end in new[] { AxleEnd.Front, AxleEnd.Rear })
            {
                var (was, now) = (CoilStanding.Of(pair.First.Model, end)!, CoilStanding.Of(pair.Second.Model, end)!);
                Assert.True(now.Block > now.FullBump || now.Block - now.FullBump >= was.Block - was.FullBump - 1e-6, cure.Words);
                Assert.True(now.LooseBy <= Math.Max(was.LooseBy, 1e-9), cure.Words);
            }

            Assert.True(CoilWords.Loose(pair.First.Pass).Any() || !CoilWords.Loose(pair.Second.Pass).Any(), cure.Words);
        }));

        // 15 mm more clearance in front, which the search would otherwise choose, lets them touch first.
        var farther = Settings.Apply(bought, new Dictionary<string, double> { ["front-stop"] = 110.0 }, inertiaGrows: false);
        var load = bought.LoadStates.Single(one => one.Name == "four up with luggage");
        var breach = CureStance.Of(RideModel.Of(farther, load)).Breach(CureStance.Of(RideModel.Of(bought, load)));
        Assert.Equal(CureBreach.Coils, breach);
        Assert.Equal(CureBreach.None, CureStance.Of(RideModel.Of(bought, load)).Breach(CureStance.Of(RideModel.Of(bought, load))));
    }

    [Fact]
    public void No_cure_has_a_car_meet_a_stop_sooner_below_half_a_g_under_any_load()
    {
        var tarn = Known("tarn-off-roader");
        var answer = CureStudy.Run(Asked with { Car = Under(tarn, "two up with camping gear"), Speed = 25.0 / 3.6, Draws = 10 });
        static double[] Stops(RideModel model) =>
        [
            .. new[] { SideEffects.Of(model).Braking.FirstStop, SideEffects.Of(model).Driving.FirstStop }
                .Select(stop => Math.Round((stop?.Acceleration ?? double.PositiveInfinity) / 9.80665, 2)),
        ];
        foreach (var (k, cure) in answer.Cures.Index())
        {
            var pairs = answer.Described.Zip(cure.Passes, (was, now) => (Was: Stops(was.Model), Now: Stops(now.Model))).ToArray();
            Assert.All(pairs, pair => Assert.All(pair.Was.Zip(pair.Now), one => Assert.True(one.Second >= Math.Min(0.5, one.First), cure.Words)));

            // Where it changes it is told, before and after.
            var told = string.Join(' ', answer.Told[k].Where(said => said.Id.EndsWith("-first-stops", StringComparison.Ordinal)).Select(s => s.Text));
            Assert.Equal(pairs.Any(pair => pair.Was[0] != pair.Now[0]), told.Contains("in braking ", StringComparison.Ordinal));
        }

        // Front springs of half the rate brake into a stop at a third of a g.
        var spring = new SpringSetting(AxleEnd.Front);
        var soft = spring.Apply(tarn, 0.5 * spring.ScaleOf(tarn)!.Described);
        var load = tarn.LoadStates.Single(one => one.Name == "two up with camping gear");
        Assert.Equal(CureBreach.FirstStop, CureStance.Of(RideModel.Of(soft, load)).Breach(CureStance.Of(RideModel.Of(tarn, load))));
    }

    [Fact]
    public void What_is_told_as_a_price_is_what_no_cure_may_do_by_the_same_numbers()
    {
        var thimble = Known("thimble-city-car");
        var answer = CureStudy.Run(Asked with { Car = Under(thimble, "driver"), Aim = CureAim.Hit, Draws = 10 });
        Assert.All(answer.Told.SelectMany(told => told), said => Assert.DoesNotMatch(@"off the road [\d.]+ s more", said.Text));
        Assert.All(answer.Cures, cure => Assert.All(answer.Described.Zip(cure.Passes), pair =>
            Assert.True(IsAllowed(pair.First.Pass, pair.Second.Pass, isHitToo: false), cure.Words)));
    }

    [Fact]
    public void What_gets_worse_under_another_load_is_told_or_the_loads_are_named()
    {
        foreach (var (k, cure) in Answer.Cures.Index())
        {
            var told = Answer.Told[k].Single(said => said.Id.EndsWith("-price", StringComparison.Ordinal)).Text;
            var others = Answer.Described.Zip(cure.Passes).Skip(1).SelectMany(pair => MeasureChange.Of(pair.Second, pair.First))
                .Where(change => change is { IsFelt: true, IsBetter: false } && change.Measure.Key != Answer.Measure.Key).ToList();
            Assert.True(others.Count == 0 || Answer.Described.Skip(1).Any(pass =>
                told.Contains($"under '{pass.Model.Load.Name}': ", StringComparison.Ordinal)), told);
            Assert.True(!told.Contains("none found", StringComparison.Ordinal)
                || Answer.Described.All(pass => told.Contains($"'{pass.Model.Load.Name}'", StringComparison.Ordinal)), told);
        }
    }

    [Fact]
    public void A_change_that_helps_in_fewer_than_half_of_the_drawn_cars_or_harms_in_more_is_no_cure()
    {
        Assert.True(new CureChance(12, 12, 24).IsCure);
        Assert.False(new CureChance(11, 0, 24).IsCure);
        Assert.False(new CureChance(20, 21, 24).IsCure);
        Assert.All(Answer.Cures, cure => Assert.True(cure.Chance!.IsCure));
        var left = Answer with { Left = [new("stiffer rear spring", null) { Chance = new(11, 3, 24) }] };
        Assert.Contains(left.Notes, note =>
            note.Text.Contains(
            "stiffer rear spring, which helps in 11 of 24 cars drawn within the doubts and harms in 3.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_cured_bought_spring_is_told_with_its_height()
    {
        var answer = CureStudy.Run(Asked with { Car = Under(Known("fern-saloon-bought"), "four up with luggage"), Speed = 60.0 / 3.6, Draws = 10 });
        foreach (var (k, cure) in answer.Cures.Index())
        {
            var stands = SwapWords.Of([cure.Passes[0].Model]).Select(s => s.Text).Single(s => s.StartsWith("Under '", StringComparison.Ordinal));
            var isMoved = cure.Values.Keys.Any(key => key.EndsWith("-spring", StringComparison.Ordinal));
            Assert.Equal(isMoved, answer.Told[k].Any(said => said.Text == stands));
        }
    }

    [Fact]
    public void A_rate_made_of_a_wire_is_told_with_the_digits_of_its_slider()
    {
        var scale = new SettingScale("N/mm", 20.665, 8.3, 51.7, 0.1);
        Assert.Equal("from 20.7 N/mm to 25.1 N/mm", new CureTurn(new SpringSetting(AxleEnd.Front), scale, 25.1, 3).Reach);
        Assert.Equal("from 38 N/mm to 41 N/mm", new CureTurn(new SpringSetting(AxleEnd.Rear), scale with { Described = 38.0 }, 41.0, 3).Reach);
    }

    private static LoadedCar Under(Car car, string load) => LoadedCar.Of(car, car.LoadStates.Single(one => one.Name == load));

    private static Car Known(string name) => CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", $"{name}.yaml")).Value!;

    private static List<Pass> Crossed(Car car) => [.. Answer.Described.Select(pass => Pass.Of(
        RideModel.Of(car, pass.Model.Load), Asked.Road, Asked.Speed, new() { Method = FixedStep.Once }))];

    private static List<double> DampingRatios(Car car) =>
    [
        .. Answer.Described.Select(pass => new CarAtRest(RideModel.Of(car, pass.Model.Load)))
            .SelectMany(rest => new[] { rest.DampingRatio(AxleEnd.Front), rest.DampingRatio(AxleEnd.Rear) }),
    ];

    // By the numbers that the table of a pass prints.
    private static bool IsAllowed(Pass before, Pass after, bool isHitToo = true)
    {
        foreach (var measure in WheelPlace.Axles(hasSides: true).SelectMany(WheelCatalogue.Of))
        {
            double Printed(Pass pass) => Math.Round(measure.ShownOf(pass) ?? double.PositiveInfinity, measure.Digits);
            var (was, now) = (Printed(before), Printed(after));
            if ((measure.Key.EndsWith("-margin", StringComparison.Ordinal) && now < 0.0 && now < was)
                || (measure.Key.EndsWith("-lift-off", StringComparison.Ordinal) && now > was))
            {
                return false;
            }
        }

        return !isHitToo || HitCatalogue.PeakPitchAcceleration.Of(after) <= 1.1 * HitCatalogue.PeakPitchAcceleration.Of(before);
    }

    private sealed class Told(Action<double> tell) : IProgress<double>
    {
        public void Report(double value) => tell(value);
    }
}
