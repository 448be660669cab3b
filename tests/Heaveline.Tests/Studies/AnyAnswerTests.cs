using System.Collections.Concurrent;
using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

/// <summary>
/// Whatever car drives over whatever road, how fast it may be: what is printed, for people or for machines, is a number or is said in words.
/// </summary>
public partial class AnyAnswerTests
{
    private static readonly Gen<Road> Bumps = Gen.OneOf(
        Gen.Select(Gen.Double[0.02, 0.3], Gen.Double[1.2, 10.0]).Select(s =>
            Road.From(new RoundTopHump { Height = new(s.Item1), Length = new(s.Item2) })),
        Gen.Select(Gen.Double[-0.3, 0.3], Gen.Double[0.05, 2.0]).Select(s => Road.From(new Step { Height = new(s.Item1), Edge = new(s.Item2) })),
        Gen.Select(Gen.Double[-0.2, 0.3], Gen.Double[0.3, 30.0]).Select(s =>
            Road.From(new Versine { Height = new(s.Item1), Length = new(s.Item2) }, Tracks.Left)));

    private static readonly Gen<Road> Any = Gen.OneOf(
        Bumps,
        Bumps,
        Gen.Select(Gen.Double[0.002, 0.1], Gen.Double[1.0, 30.0], Gen.Double[0.5, 6.0]).Select(s =>
            Road.From(new SineRoad { Amplitude = new(s.Item1), Wavelength = new(s.Item2), Waves = s.Item3 })),
        Gen.Const(Road.Flat));

    private static readonly Gen<double> Speeds = Gen.OneOf(Gen.Double[1.0, 40.0], Gen.Double[40.0, 120.0]);

    private static readonly Gen<LoadedCar> Cars = Gen.Select(AnyCar.Any, AnyCar.Loads, Gen.Bool).Select(
        c => LoadedCar.Of(c.Item1 with { LoadStates = [c.Item2] }, c.Item3 ? c.Item2 : null));

    [Fact]
    public void Every_number_of_a_pass_is_a_number() => Say(Gen.Select(Cars, Any, Speeds), 60, c =>
        PassStudy.Run(new() { Car = c.Item1, Road = c.Item2, Speed = c.Item3 }));

    [Fact]
    public void Every_number_of_a_description_is_a_number() => Say(Cars, 40, car =>
        DescribeStudy.Run(new() { Car = car.Car, Loads = [LoadState.Reference, car.Load], WithModes = true, WithWheels = true }));

    [Fact]
    public void Every_number_of_a_comparison_is_a_number() => Say(Gen.Select(Cars, Cars, Any, Speeds), 30, c =>
        CompareStudy.Run(new() { Cars = [c.Item1, c.Item2 with { Name = "other" }], Road = c.Item3, Speeds = [0.5 * c.Item4, c.Item4] }));

    [Fact]
    public void Every_number_of_a_ride_is_a_number() => Say(Gen.Select(Cars, Speeds, Gen.Int[0, 7]), 12, c =>
        RideStudy.Run(new() { Cars = [c.Item1], Road = NamedSpectrum.Of(RoadClass.All[c.Item3]), Speeds = [c.Item2] }));

    [Fact]
    public void Every_number_of_a_road_is_a_number() => Say(Any, 20, road => RoadStudy.Run(new() { Road = road }));

    [Fact]
    public void Every_number_of_the_causes_is_a_number() => Say(Gen.Select(Cars, Any, Speeds), 6, c =>
        WhyStudy.Run(new() { Car = c.Item1, Road = c.Item2, Speed = c.Item3 }));

    [Fact]
    public void Every_number_of_the_cures_is_a_number() => Say(Gen.Select(Cars, Any, Speeds), 6, c =>
        CureStudy.Run(new() { Car = c.Item1, Road = c.Item2, Speed = c.Item3, Draws = 10 }));

    // A few parts of a small list: which, the bits of a number say.
    [Fact]
    public void Every_number_of_a_choice_is_a_number() => Say(Gen.Select(Cars, Bumps, Speeds, Gen.Int[1, 255]), 3, c =>
        ChooseStudy.Run(VillageParts.Asked with
        {
            Car = c.Item1.Car,
            Lists = [VillageParts.List with { Parts = [.. VillageParts.List.Parts.Where((_, k) => (c.Item4 >> k & 1) == 1)] }],
            Roads = [new("bump", c.Item2, [c.Item3])],
            Loads = [c.Item1.Load],
            Draws = 8,
        }));

    [Fact]
    public void Every_number_of_a_rule_is_a_number() => Say(Gen.Select(Cars, Bumps, Speeds, Gen.Int[0, TradeRule.All.Length - 1]), 6, c =>
        RuleStudy.Run(new()
        {
            Car = c.Item1, Road = c.Item2, Rule = TradeRule.All[c.Item4], Slowest = 0.5 * c.Item3, Fastest = c.Item3,
            Detail = new() { Values = 4, Speeds = 3, LoadSpeeds = 3 },
        }));

    [Fact]
    public void Every_number_of_the_doubts_is_a_number() => Say(Gen.Select(Cars, Any, Speeds), 6, c =>
        DoubtStudy.Run(new() { Car = c.Item1, Road = c.Item2, Speed = c.Item3, Draws = 10 }));

    [Fact]
    public void Every_number_of_a_change_is_a_number() => Say(Gen.Select(Cars, Cars), 12, c =>
        CostStudy.Run(new() { Cars = [c.Item1, c.Item2 with { Name = "other" }], Draws = 10 }));

    [Fact]
    public void Every_number_of_the_years_is_a_number() => Say(Gen.Select(Cars, Any, Speeds, Gen.Double[0.0, 0.01]), 6, c =>
        YearsStudy.Run(new()
        {
            Car = c.Item1, Road = c.Item2, Speed = c.Item3, Draws = 50, Years = 3,
            Wear = new() { FrontSag = new(c.Item4), RearSag = new(2.0 * c.Item4), DamperLoss = new(0.05) },
        }));

    [Fact]
    public void Every_number_of_the_tolerances_is_a_number() => Say(Gen.Select(Cars, Any, Speeds), 5, c =>
        ToleranceStudy.Run(new()
        {
            Car = c.Item1, Road = c.Item2, Speed = c.Item3, Draws = 100,
            Springs = [new(0.02)], Dampers = [new(0.05), new(0.1)], Heights = [new(0.003)],
            Promises = [new() { Measure = AxleCatalogue.FrequencyRatio, IsLeast = true, Limit = 0.9 },
                new() { Measure = SettlingCatalogue.RmsPitch, IsLeast = false, Limit = 0.01 }],
        }));

    [Fact]
    public void Every_number_of_an_interconnection_is_a_number() => Say(Cars.Where(c => c.Car.Interconnection is not null), 8, car =>
        LinkStudy.Run(new() { Car = car }));

    // A refusal is an answer in words.
    private static void Say<T>(Gen<T> asked, long times, Func<T, Answer> answers)
    {
        var wrong = new ConcurrentDictionary<string, int>();
        asked.Sample(
            one =>
            {
                Answer answer;
                try
                {
                    answer = answers(one);
                }
                catch (NoAnswerException refused)
                {
                    Look("refused", refused.Message);
                    return;
                }

                Look("text", string.Join('\n', answer.WholeLinesIn(ReaderUnits.Metric).Concat(answer.LinesIn(ReaderUnits.Imperial))));
                Look("JSON", answer.Json("0", "test"));
                Look("CSV", Encoding.UTF8.GetString(answer.Csv()));
                Look("failure", answer.Failure ?? "");
                Assert.All(answer.FigureIds, id => Assert.NotNull(answer.Figure(id)));
            },
            iter: times);
        Assert.True(wrong.IsEmpty, string.Join('\n', wrong.Keys));

        void Look(string where, string text)
        {
            foreach (var line in text.Split('\n').Where(line => NotANumber().IsMatch(line)))
            {
                wrong.TryAdd($"{where}: {line}", 0);
            }
        }
    }

    [GeneratedRegex(@"NaN|Infinity|∞")]
    private static partial Regex NotANumber();
}
