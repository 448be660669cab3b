using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Rules;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

/// <summary>
/// What a map says, read back from its sentences and held against the points of the same answer's CSV, over random cars, loads, humps and speeds;
/// humps high enough that some cars bottom out.
/// </summary>
public partial class RuleWordsTests
{
    private static readonly string[] Words =
    [
        "true for some values and false for others", "true", "false", "of no consequence", "undecided, since both bottom out,", "not computed",
    ];

    private static readonly Gen<RuleAsked> Questions = Gen.Select(
        AnyCar.FourWheeled, AnyCar.Loads, Gen.Double[0.03, 0.16], Gen.Double[1.0, 4.0], Gen.Int[20, 60], Gen.Int[1, 12], Gen.Int[0, 3],
        Gen.Double[0.04, 0.12])
        .Select((car, load, high, along, from, step, kind, travel) => new RuleAsked
        {
            Car = LoadedCar.Of(Stopped(car, travel) with { LoadStates = [load] }, load),
            Road = Road.From(new RoundTopHump { Height = new(high), Length = new(along) }),
            Rule = TradeRule.All[kind % 2],
            Measure = kind < 2 ? SettlingCatalogue.RmsPitch : HitCatalogue.PeakPitchAcceleration,
            Slowest = In.KilometresPerHour.ToSi(from),
            Fastest = In.KilometresPerHour.ToSi(from + (6 * step)),
            Detail = new RuleDetail { Values = 7, Speeds = 4 },
            MapAlone = true,
        });

    [Fact]
    public void No_sentence_contradicts_the_points_of_its_own_map() => Questions.Sample(
        asked =>
        {
            if (Answered(asked) is not { } answer)
            {
                return;
            }

            var points = Points(answer);
            var said = Verdicts(answer);
            Assert.Equal(points.Select(p => p.Speed).Distinct().Order(), said.Keys.Order());
            foreach (var row in points.GroupBy(p => p.Speed))
            {
                var judged = row.Where(p => p.Value > (answer.Map.Axis.Reference ?? answer.Map.Own) + 1e-9).ToList();
                Assert.Equal(Verdict(judged), said[row.Key]);
            }

            foreach (var (id, verdict) in new[]
            {
                ("neither-passes", "NeitherPasses"), ("not-computed", "NotComputed"), ("only-this-passes", "OnlyThisPasses"),
            })
            {
                var expected = points.Count(p => p.Value > (answer.Map.Axis.Reference ?? answer.Map.Own) + 1e-9 && p.Verdict == verdict);
                var sentence = answer.Sentences.SingleOrDefault(s => s.Id == id)?.Text;
                Assert.Equal(expected > 0, sentence is not null);
                Assert.True(sentence is null || Counts().Matches(sentence).Any(m => m.Groups[1].Value == Text(expected)), sentence);
            }

            // What bottoms out is called so, and only what has no value in the CSV is called not computed.
            Assert.All(points.Where(p => p.Verdict is "NotComputed"), p => Assert.True(double.IsNaN(p.Relative)));
            Assert.All(points.Where(p => p.Verdict is "OnlyThisPasses"), p => Assert.True(double.IsFinite(p.Measured)));
            Assert.Equal(asked.Measure != HitCatalogue.PeakPitchAcceleration, answer.Sentences.Any(s => s.Id == "hit"));
        },
        iter: 120, threads: 2);

    [Fact]
    public void More_or_less_is_called_better_only_where_a_point_of_the_map_is_and_every_speed_is_told_once() => Questions.Sample(
        asked =>
        {
            if (asked.Rule.Kind != RuleKind.FrequencyRatio || Answered(asked) is not { } answer)
            {
                return;
            }

            var (map, text) = (answer.Map, answer.Sentences.Single(s => s.Id == "load").Text);
            var told = new List<double>();
            for (var i = 0; i < map.Speeds.Count; i++)
            {
                var speed = Rounded(In.KilometresPerHour.Of(map.Speeds[i]));
                var own = map.OwnMeasured[i];
                var tried = Enumerable.Range(0, map.Axis.Values.Count).Where(j => double.IsFinite(map.Measured[i][j])).ToList();
                bool Better(int j) => !(map.Measured[i][j] > own * (1.0 - RuleMap.Threshold));
                void Check(string words, Func<bool> holds)
                {
                    if (Ranges(text, words, map).Contains(speed))
                    {
                        told.Add(speed);
                        Assert.True(holds(), $"{text} at {speed} km/h");
                    }
                }

                Check("more would be better", () => tried.Any(j => map.Axis.Values[j] > map.Own && Better(j)));
                Check("less would be better", () => tried.Any(j => map.Axis.Values[j] < map.Own && Better(j)));
                Check("speeds computed,", () => double.IsFinite(own) && !tried.Any(j => map.Measured[i][j] < own * (1.0 - RuleMap.Threshold)));
                Check("not computed", () => tried.Count == 0 && !double.IsFinite(own));
            }

            Assert.Equal(map.Speeds.Select(v => Rounded(In.KilometresPerHour.Of(v))).Order(), told.Order());
        },
        iter: 100, threads: 2);

    [Fact]
    public void Where_the_best_value_passes_the_cars_own_the_table_has_the_speeds_of_the_sentence() => Questions.Sample(
        asked =>
        {
            if (asked.Rule.Kind != RuleKind.FrequencyRatio || Answered(asked) is not { } answer)
            {
                return;
            }

            var text = answer.Sentences.Single(s => s.Id == "load").Text;
            var rows = RuleTables.Loads(answer.Map, answer.Loads).Rows.ToDictionary(r => r.Key, r => Numeral.Of(r.Values[0]!.Value, r.Format));
            var passings = answer.Loads[0].Standing?.Passings ?? [];
            foreach (var (passing, k) in passings.Select((p, k) => (p, k)))
            {
                var key = k == 0 ? "suited" : $"suited-{k + 1}";
                if (passing.Near is null)
                {
                    Assert.Contains($"between {rows[key + "-above"]} and {rows[key + "-below"]} km/h", text, StringComparison.Ordinal);
                    Assert.DoesNotContain(key, rows.Keys);
                }
                else
                {
                    Assert.Contains(
                        passing.From == passing.To ? $"at {SpeedRanges.Number(passing.From)} km/h" : $"near {rows[key]} km/h",
                        text, StringComparison.Ordinal);
                    Assert.InRange(In.KilometresPerHour.ToSi(Number(rows[key])), passing.From - 0.15, passing.To + 0.15);
                    Assert.DoesNotContain(key + "-above", rows.Keys);
                }
            }
        },
        iter: 60, threads: 2);

    [Fact]
    public void Every_point_without_a_number_is_accounted_for() => Questions.Sample(
        asked =>
        {
            if (Answered(asked) is not { } answer)
            {
                return;
            }

            var blank = Points(answer).Where(p => double.IsNaN(p.Relative)).ToList();
            var said = RuleSentences.Dashes(answer.Map);
            Assert.Equal(blank.Count > 0, said is not null);
            Assert.Equal(blank.Any(p => p.Verdict == "NotComputed"), said?.Contains("nothing could be computed", StringComparison.Ordinal) ?? false);
            Assert.Equal(blank.Any(p => p.Verdict != "NotComputed"), said?.Contains("bottoms out", StringComparison.Ordinal) ?? false);
            Assert.Contains(said ?? "", answer.Head[1].Text, StringComparison.Ordinal);
        },
        iter: 60, threads: 2);

    [Fact]
    public void Between_more_speeds_the_verdict_of_the_old_ones_stays_and_more_values_never_turn_true_into_false() => Questions.Sample(
        asked =>
        {
            if (Answered(asked) is not { } answer)
            {
                return;
            }

            var coarse = Verdicts(answer);
            var finer = Verdicts(RuleStudy.Run(asked with { Detail = asked.Detail with { Speeds = 7 } }));
            Assert.All(coarse, p => Assert.Equal(p.Value, finer[p.Key]));
            // Finer steps end nearer to the car's own value: of the old values those beyond that end are not tried again, and say nothing here.
            var more = Tried(asked, 13);
            var shared = Points(answer).Where(p => more.Any(value => Math.Abs(value - p.Value) < 1e-6)).ToList();
            if (Answered(asked with { Detail = asked.Detail with { Values = 13 } }) is not { } full)
            {
                Assert.All(shared, p => Assert.False(double.IsFinite(p.Measured), $"{p} had a number"));
                return;
            }

            Assert.Equal(more, full.Map.Axis.Values);
            var fuller = Verdicts(full);
            foreach (var row in shared.GroupBy(p => p.Speed))
            {
                var judged = row.Where(p => p.Value > (answer.Map.Axis.Reference ?? answer.Map.Own) + 1e-9).ToList();
                Assert.False((Verdict(judged), fuller[row.Key]) is ("true", "false") or ("false", "true"));
            }
        },
        iter: 60, threads: 2);

    // Hard ends of the travel, so that one car bottoms out where the next does not.
    private static Car Stopped(Car car, double travel)
    {
        Stop stop = new() { Clearance = new(0.5 * travel), Rate = new(6e4), SolidAfter = new(0.5 * travel) };
        return car with { Front = car.Front with { BumpStop = stop }, Rear = car.Rear with { BumpStop = stop } };
    }

    // The values of a map of so many, as the study reaches past the car under each load that it can stand under.
    private static IReadOnlyList<double> Tried(RuleAsked asked, int count)
    {
        var own = asked.Rule.Axis(asked.Car.Model, 2).Own;
        var owns = new List<double> { own(asked.Car.Model) };
        try
        {
            owns.Add(own(RideModel.Of(asked.Car.Car)));
        }
        catch (RefusedValueException)
        {
            // It cannot stand empty: no value for the map to reach past.
            Assert.NotEmpty(owns);
        }

        return asked.Rule.Axis(asked.Car.Model, count, owns).Values;
    }

    private static RuleAnswer? Answered(RuleAsked asked)
    {
        try
        {
            return RuleStudy.Run(asked);
        }
        catch (RunFailedException)
        {
            return null;
        }
        catch (RefusedValueException)
        {
            return null;
        }
    }

    private static string Verdict(IReadOnlyList<Point> judged)
    {
        var better = judged.Any(p => p.Relative <= 0.97 || (double.IsNaN(p.Relative) && double.IsFinite(p.Measured)));
        var worse = judged.Any(p => p.Relative >= 1.03 || p.Verdict == "OnlyReferencePasses");
        return (better, worse) switch
        {
            (true, true) => Words[0],
            (true, false) => Words[1],
            (false, true) => Words[2],
            _ => judged.Any(p => double.IsFinite(p.Relative)) ? Words[3] : judged.Any(p => p.Verdict == "NeitherPasses") ? Words[4] : Words[5],
        };
    }

    // Every speed of the verdict sentence with its words; a speed said twice is an error.
    private static Dictionary<double, string> Verdicts(RuleAnswer answer)
    {
        var text = answer.Sentences.Single(s => s.Id == "verdict").Text;
        var clauses = text[(text.IndexOf("that is ", StringComparison.Ordinal) + 8)..].TrimEnd('.').Split("; ");
        var said = new Dictionary<double, string>();
        foreach (var clause in clauses)
        {
            var words = Words.First(w => clause.StartsWith(w + " ", StringComparison.Ordinal));
            foreach (var speed in Speeds(clause[words.Length..], answer.Map))
            {
                said.Add(speed, words);
            }
        }

        return said;
    }

    private static IEnumerable<double> Ranges(string text, string words, RuleMap map)
    {
        var at = text.IndexOf(words, StringComparison.Ordinal);
        return at < 0 ? [] : Speeds(text[(at + words.Length)..].Split(" km/h")[0], map);
    }

    private static IEnumerable<double> Speeds(string ranges, RuleMap map)
    {
        var all = map.Speeds.Select(v => Rounded(In.KilometresPerHour.Of(v))).ToList();
        foreach (Match range in Range().Matches(ranges))
        {
            var from = Number(range.Groups[1].Value);
            var to = range.Groups[2].Success ? Number(range.Groups[2].Value) : from;
            foreach (var speed in all.Where(v => v >= from && v <= to))
            {
                yield return speed;
            }
        }
    }

    private static List<Point> Points(RuleAnswer answer) =>
    [
        .. Encoding.UTF8.GetString(answer.Csv()).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(line => line.Split(','))
            .Select(p => new Point(Rounded(Number(p[0])), Number(p[1]), Number(p[2]), Number(p[3]), p[4])),
    ];

    private static double Rounded(double speed) => Math.Round(speed, 1);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static double Number(string text) => text.Length > 0 ? double.Parse(text, CultureInfo.InvariantCulture) : double.NaN;

    [GeneratedRegex(@"(?:from|at) (\d+(?:\.\d)?)(?: to (\d+(?:\.\d)?))?")]
    private static partial Regex Range();

    [GeneratedRegex(@"\b(\d+)(?: of \d+)? points")]
    private static partial Regex Counts();

    private sealed record Point(double Speed, double Value, double Measured, double Relative, string Verdict);
}
