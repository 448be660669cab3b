using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>Tolerances in sentences, the finding first.</summary>
/// <param name="answer">The answer.</param>
internal sealed class ToleranceWords(ToleranceAnswer answer)
{
    // Below this a test parts cars hardly better than a coin: a choice of words.
    private const double Parting = 0.5;

    private readonly ToleranceAsked asked = answer.Asked;

    /// <summary>What is said.</summary>
    public IReadOnlyList<Sentence> All => answer.IsDesigned
        ?
        [
            Finding,
            .. answer.Chosen is { } chosen ? Looser(chosen) : [],
            .. answer.Perfect.Holds(asked.Share) ? new[] { Perfect } : [],
            .. Tested,
            .. answer.Fallen > 0 ? new[] { Fallen } : [],
            .. SomePrices,
            Meaning,
        ]
        : [NotDesigned];

    // A sum of which a part is missing is no price of a kit.
    private IEnumerable<Sentence> SomePrices
    {
        get
        {
            (string Name, IReadOnlyList<ToleranceLevel> Levels)[] all =
                [("springs", asked.Springs), ("dampers", asked.Dampers), ("heights", asked.Heights)];
            string[] without = [.. all.Where(part => part.Levels.Any(level => level.Price is null)).Select(part => part.Name)];
            return without.Length is 0 or 3
                ? []
                : [new("some-prices", $"No price is counted: those of {SpeedRanges.And(without)} are not given, and a kit costs "
                    + "the sum of all three.")];
        }
    }

    private Sentence Perfect => new(
        "perfect",
        $"With parts exactly as designed {Of(answer.Perfect)} keep it: the rest is how the cars differ that the kit is fitted to.");

    private string Wanted => Text($"{In.Percent.Of(asked.Share):0.#} of 100 fitted cars");

    private Sentence NotDesigned
    {
        get
        {
            var broken = asked.Promises.Zip(answer.Designed).Where(p => !p.First.Holds(p.Second)).Select(p => double.IsFinite(p.Second)
                ? $"{p.First.Measure.Name} is {p.First.Print(p.Second)}, promised is {p.First.Words}"
                : $"it has no {p.First.Measure.Name}, promised is {p.First.Words}");
            return new("not-designed", $"The car as designed does not keep the promise itself: {string.Join("; ", broken)}. No tolerance helps: "
                + "change the design, or promise less.");
        }
    }

    private Sentence Finding
    {
        get
        {
            if (answer.Chosen is { } chosen)
            {
                return new("holds", $"{Wanted} surely keep it with {Parts(chosen)}: {Of(chosen)} do{Which(chosen)}.");
            }

            if (!answer.Perfect.Holds(asked.Share))
            {
                return answer.Perfect.Share >= asked.Share
                    ? new("not-sure", Text($"{asked.Draws} cars do not tell whether {Wanted} keep it even with parts exactly as designed ")
                        + $"({Of(answer.Perfect)} do): draw more, or promise less.")
                    : new("cars-differ", $"No tolerance makes {Wanted} keep it: with parts exactly as designed {Of(answer.Perfect)} do, since the "
                        + "cars themselves differ by more. Promise less, or narrow for which cars the kit is sold.");
            }

            var best = answer.All.MaxBy(k => k.Share)!;
            return new("tighter", $"None of the tolerances asked about surely makes {Wanted} keep it: at best {Of(best)} do, with {Parts(best)}"
                + (best.Share >= asked.Share ? "; more drawn cars may tell." : ". Tighter ones would be needed."));
        }
    }

    private string Which(ToleranceKept chosen) => (asked.HasPrices, answer.Loosest.Length) switch
    {
        (true, _) => Text($"; of the {answer.All.Count(k => k.Holds(asked.Share))} that hold it costs least, {chosen.Price:0.##} a kit"),
        (_, > 1 and var mixes) => Text($"; {mixes} mixes hold that are looser in one only by being tighter in another"),
        _ when chosen == answer.All[^1] => "; these are the loosest asked about, and looser ones may hold too",
        _ => "",
    };

    // What one step more of each costs.
    private IEnumerable<Sentence> Looser(ToleranceKept chosen)
    {
        string?[] steps =
        [
            Step("springs", asked.Springs, chosen.Tolerance.Springs, k => k.Tolerance.Springs, Percent),
            Step("dampers", asked.Dampers, chosen.Tolerance.Dampers, k => k.Tolerance.Dampers, Percent),
            Step("heights", asked.Heights, chosen.Tolerance.Heights, k => k.Tolerance.Heights, Millimetres),
        ];
        return steps.OfType<string>().ToArray() is { Length: > 0 } all
            ? [new("one-step-looser", $"One step looser: {string.Join("; ", all)}.")]
            : [];

        string? Step(string what, IReadOnlyList<ToleranceLevel> levels, double now, Func<ToleranceKept, double> of, Func<double, string> words)
        {
            if (levels.FirstOrDefault(l => l.HalfWidth > now) is not { HalfWidth: var next })
            {
                return null;
            }

            var kept = answer.All.Single(k => of(k) == next && Others(k));
            return $"{what} ± {words(next)}, {Share(kept)}";

            bool Others(ToleranceKept k) =>
                (what == "springs" || k.Tolerance.Springs == chosen.Tolerance.Springs)
                && (what == "dampers" || k.Tolerance.Dampers == chosen.Tolerance.Dampers)
                && (what == "heights" || k.Tolerance.Heights == chosen.Tolerance.Heights);
        }
    }

    private IEnumerable<Sentence> Tested
    {
        get
        {
            var loosest = Parts(answer.All[^1]);
            if (answer.Test is not { } test)
            {
                return
                [
                    new("no-test", $"With {loosest} too few cars break the promise, or keep it, to make a test of a fitted car: fewer than one in "
                        + "twenty."),
                ];
            }

            var parts = Text($"It turns away {In.Percent.Of(test.Caught):F0} of 100 cars that break the promise and ")
                + Text($"{In.Percent.Of(test.Mistaken):F0} of 100 that keep it, of cars with {loosest}; of those that pass ")
                + Text($"{In.Percent.Of(test.Passed):F0} of 100 keep it.");
            return test.Caught - test.Mistaken >= Parting
                ?
                [
                    new("test", "Two minutes with a fitted car, empty, pushed down and let go: pass it where "
                        + $"{string.Join(" and ", test.Windows.Select(Where))}. {parts}"),
                    new("test-errors", $"Heights are against the car as it was weighed. {WorkshopReadingWords.Errors} How well the test does is told "
                        + "of other cars than those it was made of."),
                ]
                : [new("test-weak", $"No two-minute test of heights and swings tells well whether a fitted car keeps the promise. {parts}")];
        }
    }

    private Sentence Fallen => new("fallen", Text(
        $"{answer.Fallen} of the {asked.Draws} cars cannot stand as described with {Parts(answer.All[^1])}: there they keep nothing, and nothing is ")
        + "read off them: no test is made of them, or told of them.");

    private Sentence Meaning
    {
        get
        {
            var lengths = asked.Car.Car.Axles.Any(axle => axle.Spring.Swap is null && axle.Spring.Law is not GasSpring)
                ? " A spring whose lengths are not given keeps the height whatever its rate: what a stiffer one lifts is the heights' tolerance."
                : "";
            return new("meaning", "A tolerance is meant as every ± here: 19 of 20 parts lie within it, scattered normally about the design; both "
                + "sides of an axle are alike, the two ends not. What is sure is what the lower end of its interval says, so that mixes just above "
                + $"the share asked for may need more drawn cars.{lengths}");
        }
    }

    private static string Parts(ToleranceKept kept) =>
        $"spring rates ± {Percent(kept.Tolerance.Springs)}, damper forces ± {Percent(kept.Tolerance.Dampers)} and heights "
        + $"± {Millimetres(kept.Tolerance.Heights)}";

    private static string Of(ToleranceKept kept) =>
        $"{Share(kept)} (nine times out of ten really {Hundred(kept.Interval.Low)} to {Hundred(kept.Interval.High)})";

    private static string Share(ToleranceKept kept) => $"{Hundred(kept.Share)} of 100";

    private static string Hundred(double share) => Text($"{In.Percent.Of(share):F1}");

    private static string Percent(double share) => Text($"{In.Percent.Of(share):0.##} %");

    private static string Millimetres(double height) => Text($"{In.Millimetres.Of(height):0.##} mm");

    private static string Where(ToleranceWindow window) => window.Reading switch
    {
        WorkshopReading.FrontHeight => $"its front stands {Height(window)}",
        WorkshopReading.RearHeight => $"its rear stands {Height(window)}",
        WorkshopReading.RearOverFront => $"its rear has risen {Height(window)} against its front",
        WorkshopReading.FrontSwings => $"its front swings on {Count(window)}",
        WorkshopReading.RearSwings => $"its rear swings on {Count(window)}",
        _ => throw new ArgumentOutOfRangeException(nameof(window), window.Reading, null),
    };

    private static string Height(ToleranceWindow window) => (double.IsFinite(window.Low), double.IsFinite(window.High)) switch
    {
        (true, true) => $"between {Changed(window.Low)} and {Changed(window.High)} mm",
        (true, _) => $"at {Changed(window.Low)} mm or above",
        _ => $"at {Changed(window.High)} mm or below",
    };

    private static string Count(ToleranceWindow window) => ((double.IsFinite(window.Low), double.IsFinite(window.High)) switch
    {
        (true, true) => Text($"between {window.Low:F1} and {window.High:F1} times"),
        (true, _) => Text($"at least {window.Low:F1} times"),
        _ => Text($"at most {window.High:F1} times"),
    }) + " until a tenth is left";

    private static string Changed(double height) => Numeral.Change(In.Millimetres.Of(height), 0);
}
