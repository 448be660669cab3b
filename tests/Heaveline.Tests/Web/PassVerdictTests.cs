using System.Globalization;
using Heaveline.Measures;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

public class PassVerdictTests
{
    private static readonly GarageView Demo = new(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });
    private static readonly PassState Laden = new() { Car = "fern-saloon", Load = "four up with luggage" };

    [Theory]
    [InlineData(0.30, "More than half of the nodding is gone")]
    [InlineData(0.50, "Half of the nodding is gone")]
    [InlineData(0.60, "Two fifths less nodding")]
    [InlineData(0.67, "A third less nodding")]
    [InlineData(0.75, "A quarter less nodding")]
    [InlineData(0.80, "A fifth less nodding")]
    [InlineData(0.90, "A tenth less nodding")]
    [InlineData(0.95, "A little less nodding")]
    [InlineData(1.05, "A little more nodding")]
    [InlineData(1.10, "A tenth more nodding")]
    [InlineData(1.20, "A fifth more nodding")]
    [InlineData(1.25, "A quarter more nodding")]
    [InlineData(1.33, "A third more nodding")]
    [InlineData(1.40, "Two fifths more nodding")]
    [InlineData(1.50, "Half as much nodding again")]
    [InlineData(1.80, "More than half as much nodding again")]
    [InlineData(2.50, "More than twice the nodding")]
    public void A_change_is_said_by_its_size(double ratio, string words) => Assert.Equal(words, PassVerdict.Size(ratio));

    [Fact]
    public void An_unchanged_car_is_told_by_what_it_does()
    {
        var (verdict, changes) = VerdictOn(Laden);
        var nod = Row(changes, SettlingCatalogue.RmsPitch.Key);
        Assert.Equal(
            $"Four up with luggage, it nods by {nod.PrintWithUnit(nod.After)} after it, and lands on the bump stops of the rear wheels.",
            verdict.Headline);
        Assert.DoesNotContain("Price", verdict.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_that_stands_on_its_stops_does_not_land_on_them()
    {
        var standing = Laden.With("rear-stop", 0.0).With("speed", 20.0);
        var view = new PassTrial(Demo).See(standing, full: true).View!;
        Assert.True(view.Now.Model.Trim.BumpLeft[2] < 0.0, "it stands clear of its stops");
        var (verdict, _) = VerdictOn(standing);
        Assert.Contains("The rear wheels stand on their bump stops", verdict.Detail, StringComparison.Ordinal);
        Assert.DoesNotContain("land on", verdict.Headline + verdict.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Wheels_that_leave_the_road_are_in_the_price_only_where_they_did_not_before_or_for_less_long()
    {
        var fast = (Laden with { Load = "driver" }).With("speed", 60.0);
        var (verdict, changes) = VerdictOn(fast.With("rear-damping", 4.0));
        var lift = Row(changes, "rear-lift-off");
        Assert.Equal("0.00", lift.Print(lift.Before));
        Assert.Contains($"Price: {lift.Measure.Label} {lift.Size}", verdict.Detail, StringComparison.Ordinal);

        // A car that lifts them anyway, by as much.
        var (still, rows) = VerdictOn(fast.With("speed", 110.0).With("front-damping", 1.04));
        var same = Row(rows, "rear-lift-off");
        Assert.True(same.Before > 0.0 && same.IsHardlyAny, $"{same.Before} s, {same.After} s");
        Assert.Contains("The rear wheels still leave the road.", still.Detail, StringComparison.Ordinal);
        Assert.DoesNotContain(same.Measure.Label, still.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unchanged_car_that_leaves_the_road_or_stands_on_its_stops_says_so_in_its_headline()
    {
        var (verdict, changes) = VerdictOn((Laden with { Load = "driver" }).With("speed", 110.0));
        Assert.True(Row(changes, "rear-lift-off").After > 0.0);
        Assert.Contains("off the road", verdict.Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(new int[0], true, "")]
    [InlineData(new[] { 0 }, true, "the front left wheel")]
    [InlineData(new[] { 2, 3 }, true, "the rear wheels")]
    [InlineData(new[] { 1, 3 }, true, "the front right and rear right wheels")]
    [InlineData(new[] { 0, 1, 3 }, true, "the front wheels and the rear right wheel")]
    [InlineData(new[] { 0, 1, 2, 3 }, true, "all four wheels")]
    [InlineData(new[] { 2 }, false, "the rear wheel")]
    [InlineData(new[] { 0, 2 }, false, "both wheels")]
    public void Wheels_are_counted(int[] wheels, bool hasSides, string words) => Assert.Equal(words, SaidWheels.Of(wheels, hasSides));

    [Fact]
    public void Of_a_car_that_carries_its_driver_on_one_side_only_the_wheels_that_do_it_are_named()
    {
        var state = new PassState { Car = "thimble-city-car", Load = "driver", Road = "village-hump" }.With("speed", 55.0);
        var view = new PassTrial(Demo).See(state, full: true).View!;
        string Named(string key, Func<double, bool> does) => SaidWheels.Of(
            [
                .. WheelPlace.Each(true).Where(place => WheelCatalogue.Of(place).Single(one => one.Key == $"{place.Key}-{key}") is var measure
                    && does(Math.Round(measure.ShownOf(view.Now.Pass)!.Value, measure.Digits))).Select(place => place.Corners[0]),
            ],
            hasSides: true);
        var (lands, lifts) = (Named("bump-margin", left => left < 0.0), Named("lift-off", time => time > 0.0));
        Assert.NotEqual(("the front wheels", "all four wheels"), (lands, lifts));
        var headline = PassVerdict.Of(view).Headline;
        Assert.EndsWith($", and lifts {lifts} off the road.", headline, StringComparison.Ordinal);
        Assert.Equal(lands.Length > 0, headline.Contains($" of {lands}, and lifts", StringComparison.Ordinal));
    }

    [Fact]
    public void What_nobody_would_feel_is_said_to_be_so()
    {
        var (verdict, _) = VerdictOn(Laden.With("rear-spring", 38.3));
        Assert.StartsWith("Four up with luggage, nobody would feel the change: ", verdict.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void A_crossing_that_breaks_off_has_no_number_and_its_headline_says_where_and_why()
    {
        var broken = (Laden with { Road = "village-hump" }).With("height", 400.0).With("speed", 60.0);
        var pass = new PassTrial(Demo).See(broken, full: true).View!.Now.Pass;
        var (verdict, _) = VerdictOn(broken);
        Assert.Matches(
            @"^Four up with luggage, it does not get across: with the front wheels \d+\.\d\d m past where the obstacle begins, "
            + "(a wheel ran past the end of its travel|the body turned past 20°)\\.$",
            verdict.Headline);
        var along = double.Parse(verdict.Headline.Split("front wheels ")[1].Split(' ')[0], CultureInfo.InvariantCulture);
        Assert.Equal(pass.Speed * (pass.Time[^1] + pass.SampleStep), along, 0.006);
        Assert.Equal("", verdict.Number);
        Assert.Contains("its height made 400 mm", verdict.Detail, StringComparison.Ordinal);
        Assert.Contains("60 km/h", verdict.Detail, StringComparison.Ordinal);
        Assert.EndsWith(pass.OutcomeSentence, verdict.Detail, StringComparison.Ordinal);
    }

    /// <summary>Whatever is set, every sentence agrees with its row of the table, and the price is named.</summary>
    [Theory]
    [InlineData("fern-saloon", "four up with luggage", "village-hump", "rear-spring", 52.0)]
    [InlineData("fern-saloon", "four up with luggage", "village-hump", "rear-spring", 30.0)]
    [InlineData("fern-saloon", "driver", "village-hump", "front-spring", 17.0)]
    [InlineData("fern-saloon", "driver", "pothole-left", "front-damping", 1.6)]
    [InlineData("fern-saloon", "four up with luggage", "village-hump", "rear-damping", 0.6)]
    [InlineData("drover-van", "laden", "village-hump", "rear-damping", 1.5)]
    [InlineData("drover-van", "empty", "village-hump", "front-damping", 0.7)]
    [InlineData("plover-motorcycle", "two up", "village-hump", "rear-damping", 1.4)]
    [InlineData("sprig-kit-car", "two up", "village-hump", "front-spring", 20.0)]
    [InlineData("tarn-off-roader", "driver", "village-hump", "rear-damping", 1.5)]
    public void No_sentence_contradicts_the_table_and_the_price_is_never_left_out(
        string car, string load, string road, string key, double value)
    {
        var (verdict, changes) = VerdictOn(new PassState { Car = car, Load = load, Road = road }.With(key, value));
        var nod = Row(changes, SettlingCatalogue.RmsPitch.Key);
        var hit = Row(changes, HitCatalogue.PeakPitchAcceleration.Key);
        Assert.Equal(nod.PrintWithUnit(nod.After), verdict.Number);
        Assert.EndsWith($"where it was {nod.PrintWithUnit(nod.Before)}.", verdict.Headline, StringComparison.Ordinal);
        bool Says(params string[] words) => words.Any(word => verdict.Lead.Contains(word, StringComparison.Ordinal));
        Assert.True(nod.After < nod.Before || !Says("less", "gone"), verdict.Headline);
        Assert.True(nod.After > nod.Before || !Says("more nodding", "again", "twice"), verdict.Headline);

        var percent = Math.Abs((hit.After!.Value / hit.Before!.Value) - 1.0) * 100.0;
        var size = percent < 3.0
            ? "as hard as before"
            : $"{percent.ToString("F0", CultureInfo.InvariantCulture)}\u00a0% {(hit.After < hit.Before ? "softer" : "harder")}";
        Assert.Contains($"The hit is {size}.", verdict.Detail, StringComparison.Ordinal);

        // What is named as better or as the price says so in the table, too; and a price that the table holds is named.
        var (gains, prices) = (Told(verdict.Detail, "Better too: "), Told(verdict.Detail, "Price: "));
        Assert.NotEmpty(prices);
        Check(gains, "better: ");
        var worse = changes.Where(change => change != nod && change != hit && IsFelt(change)
            && change.Words.StartsWith("worse: ", StringComparison.Ordinal)).ToArray();
        if (worse.Length == 0)
        {
            Assert.Equal(["none found among the measures below"], prices);
        }
        else
        {
            Check(prices, "worse: ");
            Assert.Equal(Math.Min(worse.Length, 2), prices.Count(told => !told.EndsWith("more below", StringComparison.Ordinal)));
        }

        void Check(string[] told, string kind) => Assert.All(
            told.Where(one => !one.EndsWith("more below", StringComparison.Ordinal)),
            one => Assert.Contains(changes, change => $"{kind}{one}" == $"{kind}{change.Measure.Label} {Stripped(change, kind)}"));
    }

    private static string Stripped(MeasureChange change, string kind) =>
        change.Words.StartsWith(kind, StringComparison.Ordinal) ? change.Words[kind.Length..] : "(not so in the table)";

    private static bool IsFelt(MeasureChange change) =>
        !change.IsHardlyAny && change is { Before: { } before, After: { } after } && Math.Abs(after - before) >= 0.03 * Math.Abs(before);

    private static string[] Told(string detail, string opening)
    {
        var at = detail.IndexOf(opening, StringComparison.Ordinal);
        if (at < 0)
        {
            return [];
        }

        // A sentence ends where the next begins, or with the text.
        var told = detail[(at + opening.Length)..];
        var next = told.IndexOf(". Price: ", StringComparison.Ordinal);
        return (next < 0 ? told.TrimEnd('.') : told[..next]).Split("; ");
    }

    private static MeasureChange Row(IEnumerable<MeasureChange> changes, string key) => changes.Single(change => change.Measure.Key == key);

    private static (PassVerdict Verdict, IReadOnlyList<MeasureChange> Changes) VerdictOn(PassState state)
    {
        var view = new PassTrial(Demo).See(state, full: true).View!;
        return (PassVerdict.Of(view), view.Changes);
    }
}
