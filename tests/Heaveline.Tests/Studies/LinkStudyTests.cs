using System.Text.RegularExpressions;
using CsCheck;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.Cli;
using Heaveline.Tests.House;
using Heaveline.Tuning;

namespace Heaveline.Tests.Studies;

public class LinkStudyTests
{
    private static readonly string Garage = Path.Combine(Checkout.Root, "examples", "garage");

    private static readonly Car Joined = PlainCar.Saloon with { Name = "joined", Interconnection = new ElasticLink { Rate = new(4000.0) } };

    [Fact]
    public void All_that_is_wrong_is_said_at_once()
    {
        var known = new KnownThings(PlainCar.Saloon, Joined);
        var reading = LinkStudy.Question.Read(KnownThings.Words("car", "joined", "load", "five up"), known);
        Assert.Equal(["load"], reading.Objections.Select(o => o.Choice));
        var objection = Assert.Single(LinkStudy.Question.Read(KnownThings.Words("car", "plain saloon"), known).Objections);
        Assert.Equal(("car", false), (objection.Choice, objection.IsUsage));
        Assert.Contains("plain saloon has no interconnection", objection.Sentence, StringComparison.Ordinal);
        Assert.Throws<RefusedValueException>(() => new LinkAsked { Car = LoadedCar.Of(PlainCar.Saloon) });
    }

    [Fact]
    public void A_link_is_tried_on_a_car_that_has_none_and_in_the_place_of_one_that_it_has()
    {
        var known = new KnownThings(PlainCar.Saloon, Joined);
        LinkAnswer Tried(string car, string rate) => LinkStudy.Run(
            LinkStudy.Question.Read(KnownThings.Words("car", car, "link", rate, "link-damping", "250 N s/m", "speed", "30 km/h"), known).Asked!);
        var (none, had) = (Tried("plain saloon", "9 N/mm"), Tried("joined", "9 N/mm"));
        foreach (var answer in new[] { none, had })
        {
            var link = Assert.IsType<ElasticLink>(answer.Asked.Car.Car.Interconnection);
            Assert.Equal((9000.0, 250.0), (link.Rate.Si, link.Damping.Si));
            Assert.Equal([30.0 / 3.6], answer.Crossings.Select(c => c.Speed));
            // Each side's spring of 9 N/mm follows both of its wheels: four times its rate a side in heave.
            var heave = answer.Tables[0].Rows.Single(r => r.Key == "heave-rate").Values;
            Assert.Equal(2.0 * 4.0 * 9.0, heave[1]!.Value - heave[0]!.Value, 1e-9);
        }

        Assert.Equal(
            "link", Assert.Single(LinkStudy.Question.Read(KnownThings.Words("car", "joined", "link", "-1 N/mm"), known).Objections).Choice);
    }

    [Fact]
    public void A_link_that_is_tried_is_held_to_what_no_cure_may_do_under_every_load()
    {
        string[] Said(string rate, string damping) =>
            Spoken.Of("link", Path.Combine(Garage, "fern-saloon.yaml"), "--link", rate, "--link-damping", damping, "--road", "speed-table", "--speed",
                "30 km/h").Results.Split('\n');
        var car = CarFile.Load(Path.Combine(Garage, "fern-saloon.yaml")).Value!;
        var linked = car with { Interconnection = new ElasticLink { Rate = new(6000.0) } };
        var full = car.LoadStates.Single(load => load.Name == "four up with luggage");
        double Rear(Car of) => new CarAtRest(RideModel.Of(of, full)).DampingRatio(AxleEnd.Rear);
        Assert.True(Rear(linked) < 0.20);
        var said = Said("6 N/mm", "0 N s/m");
        var told = FormattableString.Invariant($"the rear's from {Rear(car):F3} to {Rear(linked):F3} under 'four up with luggage'");
        Assert.Contains(said, line => line.Contains("damping ratio out of 0.20 to 0.50", StringComparison.Ordinal)
            && line.Contains(told, StringComparison.Ordinal));
        Assert.Contains(said, line => line.Contains(
            "presses a stop deeper: front wheels: left to the bump stop −3 → −6 mm at 30 km/h", StringComparison.Ordinal));
        Assert.Contains(said, line => line.StartsWith("Changed interconnection: ", StringComparison.Ordinal));
        Assert.Contains(Cautions.All[0], said);
        // What the file itself has is no trial.
        Assert.DoesNotContain(
            Spoken.Of("link", Path.Combine(Garage, "pebble-fluid-car.yaml")).Results.Split('\n'),
            line => line.Contains("with this link", StringComparison.Ordinal));
    }

    [Fact]
    public void The_examples_of_its_help_are_advice_that_one_may_follow()
    {
        var lines = LinkStudy.Question.Says.Replace("\\\n", " ", StringComparison.Ordinal).Split('\n')
            .Where(line => line.TrimStart().StartsWith("heaveline link", StringComparison.Ordinal)).ToArray();
        Assert.Equal(2, lines.Length);
        foreach (var line in lines)
        {
            string[] words = [.. Regex.Matches(line, "\"([^\"]*)\"|(\\S+)").Select(m => m.Groups[1].Success ? m.Groups[1].Value : m.Value)];
            var said = Spoken.Of([.. words.Skip(1).Select(word => word.Replace("examples/garage", Garage, StringComparison.Ordinal))]);
            Assert.Empty(said.Remarks);
            Assert.DoesNotContain("with this link", said.Results, StringComparison.Ordinal);
            Assert.DoesNotContain("damping ratio out of", said.Results, StringComparison.Ordinal);
        }
    }

    // 388 N of a turbulent pipe against 18 N counted, of a wheel that stands with 2396 N: the pass at 80 km/h is that of a wider pipe.
    [Fact]
    public void Nothing_is_told_of_a_pass_whose_pipe_is_not_counted_and_what_is_told_says_how_far_it_holds()
    {
        var answer = LinkStudy.Run(new LinkAsked { Car = LoadedCar.Of(CarFile.Load(Path.Combine(Garage, "pebble-fluid-car.yaml")).Value!) });
        Assert.Equal([true, true, false], answer.Crossings.Select(c => c.IsPipeCounted));
        var hump = answer.Tables[^1];
        Assert.Null(hump.Rows.Single(r => r.Key == "settling-rms-pitch-with").Values[2]);
        Assert.NotNull(hump.Rows.Single(r => r.Key == "settling-rms-pitch-separate").Values[2]);
        var settling = answer.Sentences.Single(s => s.Id == "settling").Text;
        Assert.DoesNotContain("80 km/h", settling, StringComparison.Ordinal);
        Assert.StartsWith("At 80 km/h nothing is told", answer.Sentences.Single(s => s.Id == "not-counted").Text, StringComparison.Ordinal);
        Assert.StartsWith(
            "What is told at 20 and 40 km/h holds as far", answer.Sentences.Single(s => s.Id == "laminar").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pass_whose_pipe_is_not_counted_blames_the_link_for_nothing()
    {
        var car = CarFile.Load(Path.Combine(Garage, "pebble-fluid-car.yaml")).Value!;
        var asked = new LinkAsked { Car = LoadedCar.Of(car), Before = LoadedCar.Of(car with { Interconnection = null }) };
        var answer = LinkStudy.Run(asked);
        Assert.False(answer.Crossings[^1].IsPipeCounted);
        Assert.DoesNotContain(
            LinkGuards.Cautions(asked, answer.Hump, answer.Crossings),
            said => said.StartsWith("Over the", StringComparison.Ordinal) && said.Contains("80 km/h", StringComparison.Ordinal));
    }

    [Fact]
    public void An_axle_that_was_out_of_what_is_common_is_moved_farther_out_and_each_end_has_its_own_advice()
    {
        static LoadedCar With(double rate, double damping) =>
            LoadedCar.Of(PlainCar.Saloon with { Interconnection = new ElasticLink { Rate = new(rate), Damping = new(damping) } });
        static string[] Said(LoadedCar before, LoadedCar after)
        {
            var asked = new LinkAsked { Car = after, Before = before, Speeds = [30.0 / 3.6] };
            return [.. LinkStudy.Run(asked).Cautions.Where(said => said.Contains("damping ratio", StringComparison.Ordinal))];
        }

        string[] all = [.. Said(With(60e3, 0.0), With(90e3, 0.0)), .. Said(LoadedCar.Of(PlainCar.Saloon), With(6e3, 8e3))];
        Assert.Contains(all, said => said.Contains("damping ratio farther out of 0.20 to 0.50", StringComparison.Ordinal));
        Assert.Contains(all, said => said.Contains("damping ratio out of 0.20 to 0.50", StringComparison.Ordinal));
        foreach (var said in all)
        {
            var told = Regex.Matches(said, @"'s from (\d\.\d+) to (\d\.\d+) under").Select(m => (Was: Number(m, 1), Now: Number(m, 2))).ToArray();
            Assert.NotEmpty(told);
            Assert.All(told, one => Assert.Equal(said.Contains("farther out", StringComparison.Ordinal), one.Was is < 0.2 or > 0.5));
            Assert.All(told, one => Assert.Equal(said.Contains("Give it a damper", StringComparison.Ordinal), one.Now < 0.2));
        }

        static double Number(Match match, int group) => double.Parse(match.Groups[group].Value, System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void On_a_page_the_link_is_driven_at_the_speed_in_hand_too_and_that_pass_is_drawn()
    {
        var known = new KnownThings(PlainCar.Saloon, Joined);
        var asked = LinkStudy.OnPage.Read(KnownThings.Words("car", "joined", "road", "hump", "speed", "33 km/h"), known).Asked!;
        Assert.Equal([20.0, 33.0, 40.0, 80.0], asked.Speeds.Select(In.KilometresPerHour.Of).Select(s => Math.Round(s, 9)));
        var answer = LinkStudy.Run(asked);
        Assert.Equal(33.0 / 3.6, answer.Drawn.Speed, 1e-9);
        Assert.Contains("33 km/h", answer.Figure(LinkAnswer.Traces).Title, StringComparison.Ordinal);
        var usual = LinkStudy.OnPage.Read(KnownThings.Words("car", "joined", "road", "hump"), known).Asked!;
        Assert.Equal(LinkAsked.UsualSpeeds.AsEnumerable(), usual.Speeds);
    }

    [Fact]
    public void A_two_wheeler_is_told_no_stiffness_in_roll_and_warp()
    {
        var answer = LinkStudy.Run(new LinkAsked
        {
            Car = LoadedCar.Of(Joined with { Kind = VehicleKind.TwoWheeler, Front = Bare(Joined.Front), Rear = Bare(Joined.Rear) }),
        });
        Assert.DoesNotContain(answer.Tables[0].Rows, row => row.Key is "bench-roll-rate" or "warp-rate");
        Assert.Contains(LinkStudy.Run(new LinkAsked { Car = LoadedCar.Of(Joined) }).Tables[0].Rows, row => row.Key == "bench-roll-rate");

        static Axle Bare(Axle axle) => axle with { AntiRollBar = new(0.0), Track = new(0.0) };
    }

    // A common spring k a side adds 4·k to heave and nothing to pitch: of 90 N/mm for all springs and 2·16 N/mm of the links.
    [Fact]
    public void The_answer_tells_the_links_shares()
    {
        var answer = LinkStudy.Run(new LinkAsked { Car = LoadedCar.Of(Joined) });
        var heave = answer.Tables[0].Rows.Single(r => r.Key == "heave-rate").Values;
        Assert.Equal(2.0 * 4.0 * 4.0, heave[1]!.Value - heave[0]!.Value, 1e-9);
        var shares = answer.Sentences[0];
        Assert.Equal("shares", shares.Id);
        // 32/122 is 26.2 %.
        Assert.Equal("The link carries 26 % of the stiffness in heave and nothing of that in pitch.", shares.Text);
        Assert.Empty(answer.Cautions);
    }

    // Alike corners of k without bars: all four in heave make 4·k, and so do they in warp, whose forces point two up and two down.
    [Fact]
    public void Warp_is_a_force_per_travel_like_heave()
    {
        var bare = Joined with { Front = Joined.Front with { AntiRollBar = new(0.0) }, Rear = Joined.Rear with { AntiRollBar = new(0.0) } };
        var answer = LinkStudy.Run(new LinkAsked { Car = LoadedCar.Of(bare) });
        FactRow Row(string key) => answer.Tables[0].Rows.Single(r => r.Key == key);
        Assert.Equal(Row("heave-rate").Unit, Row("warp-rate").Unit);
        Assert.Equal(Row("heave-rate").Values[0]!.Value, Row("warp-rate").Values[0]!.Value, 1e-9);
    }

    // Equal ends: separate springs stiffer by 2·k a wheel are as stiff in heave, and in pitch by (k_s + 2·k)/k_s, so that the body pitches less.
    [Fact]
    public void The_price_is_that_against_separate_springs_as_stiff_in_heave()
    {
        var bench = LinkStudy.Run(new LinkAsked { Car = LoadedCar.Of(Joined) }).Bench;
        var separate = bench.Separate!;
        Assert.Equal(bench.With.Stiffness.Heave, separate.Stiffness.Heave, 1e-6);
        Assert.True(separate.Stiffness.Pitch > bench.With.Stiffness.Pitch);
        Assert.True(separate.BrakingPitch < 0.95 * bench.With.BrakingPitch);
        Assert.Equal(1.0, bench.With.BrakingPitch / bench.Without.BrakingPitch, 5e-3);
    }

    // A link that works against itself in heave is given nothing by springs: the same car without it is the fair one.
    [Fact]
    public void Ends_that_work_against_each_other_have_the_bare_car_for_a_reference()
    {
        var against = PlainCar.Saloon with { Interconnection = new ElasticLink { Rate = new(4000.0), RearRatio = new(-1.0) } };
        var bench = InterconnectionBench.Of(RideModel.Of(against))!;
        Assert.Equal(bench.Without.Stiffness.Pitch, bench.Separate!.Stiffness.Pitch, 1e-6);
        Assert.Equal("nothing of", LinkWords.Share(bench.HeaveShare));
    }

    // Every sentence is held against the numbers of the same printout.
    [Fact]
    public void No_sentence_is_contradicted_by_a_number_beside_it() =>
        Gen.Select(AnyCar.FourWheeled.Where(c => c.Interconnection is not null), AnyCar.Loads).Sample(
            (car, load) =>
            {
                var answer = LinkStudy.Run(new LinkAsked { Car = LoadedCar.Of(car, load) });
                double Row(int table, string key, int column) => answer.Tables[table].Rows.Single(r => r.Key == key).Values[column]!.Value;
                var price = answer.Sentences.Single(s => s.Id == "price").Text;
                var columns = answer.Tables[0].Columns.Count;
                Assert.Contains($"pitches by {Row(0, "braking-pitch", 1):F2}°", price, StringComparison.Ordinal);
                if (answer.Bench.Separate is not null)
                {
                    var (with, separate) = (Row(0, "braking-pitch", 1), Row(0, "braking-pitch", columns - 1));
                    Assert.Equal(with < 0.995 * separate, price.Split(". ")[1].Contains("the link saves", StringComparison.Ordinal));
                    Assert.Equal(with > 1.005 * separate, price.Contains("the link's price is", StringComparison.Ordinal));
                }

                var settling = answer.Sentences.SingleOrDefault(s => s.Id == "settling")?.Text ?? "";
                var hump = answer.Tables.Count - 1;
                foreach (var (k, crossing) in answer.Crossings.Index().Where(c => c.Item.SettlingRatio is not null))
                {
                    var (with, separate) = (Row(hump, "settling-rms-pitch-with", k), Row(hump, "settling-rms-pitch-separate", k));
                    var clause = settling.Split(';').Single(c => c.Contains($"at {crossing.SpeedWords} km/h", StringComparison.Ordinal));
                    Assert.True(
                        with < 0.995 * separate ? clause.Contains("falls", StringComparison.Ordinal)
                        : with > 1.005 * separate ? clause.Contains("grows", StringComparison.Ordinal)
                        : clause.Contains("same", StringComparison.Ordinal),
                        settling);
                }

                Assert.DoesNotContain(answer.Lines, line => Regex.IsMatch(line, "[-−]0 %"));
            },
            iter: 40,
            threads: 1);
}
