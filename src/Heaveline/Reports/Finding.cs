using System.Globalization;
using Heaveline.Answers;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>A report in half a page: what is the matter, why, what another car does to it, what that costs, how sure it is.</summary>
internal static class Finding
{
    // Less than this is no change worth a word, as in the maps of the rules.
    private const double Slight = 0.03;

    /// <summary>The sentences, in order.</summary>
    public static IReadOnlyList<Sentence> Of(ReportWork work)
    {
        var passes = work.Passes;
        var drive = $"{passes[0].Name}, {work.Cars[0].Load.Name}, {work.Drive}";
        if (!passes[0].IsWhole)
        {
            return [new("matter", $"What is the matter: {drive} does not get across. {passes[0].Pass.OutcomeSentence}")];
        }

        Measure<Pass>[] heads = passes[0].Pass.Road.Event is null
            ? [WholePassCatalogue.RmsPitch, WholePassCatalogue.RmsPitchAcceleration]
            : [SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration];
        return
        [
            new("matter", $"What is the matter: {drive}: {string.Join("; ", heads.Select(m => $"{m.Name} is {Print(m, m.Of(passes[0].Pass))}"))}."),
            Why(work.Why!),
            .. passes.Skip(1).SelectMany((other, k) => Change(work, heads, k + 1)),
            Sureness(work, heads[0]),
        ];
    }

    private static Sentence Why(WhyAnswer answer)
    {
        var ranking = answer.Why.Settling;
        return new("why", ranking.Causes.FirstOrDefault(c => c.Share > 0.0 && c.Relative >= Slight) is { } cause
            ? $"Why: the largest cause found: {cause.Sentence} {answer.Settling.Opening.Text}"
            : $"Why: none of the causes tried makes {Percent(Slight)} of it. {answer.Settling.Opening.Text}");
    }

    private static IEnumerable<Sentence> Change(ReportWork work, Measure<Pass>[] heads, int k)
    {
        var (before, after) = (work.Passes[0], work.Passes[k]);
        if (!after.IsWhole)
        {
            yield return new("change", $"{after.Name} instead: it does not get across. {after.Pass.OutcomeSentence}");
            yield break;
        }

        var moves = heads.Select(m => new Move(m, m.Of(before.Pass), m.Of(after.Pass))).ToList();
        yield return new("change", $"{after.Name} instead, {work.Cars[k].Load.Name}: {string.Join("; ", moves.Select(m => m.Words))}.");
        Move[] prices =
        [
            .. PassCatalogue.For(before.Model, before.Pass.Road, MeasureUse.Short).Except(heads)
                .Select(m => new Move(m, m.Of(before.Pass), m.Of(after.Pass))).Where(m => m.IsWorse),
        ];
        Move[] standing = [.. Standing(work.Cost, k).Where(m => m.IsWorse)];
        string[] said =
        [
            .. prices.Length > 0 ? [string.Join("; ", prices.Select(m => m.Words))] : Array.Empty<string>(),
            .. standing.Length > 0 ? [$"standing, {string.Join("; ", standing.Select(m => m.Words))}"] : Array.Empty<string>(),
        ];
        yield return new("price", said.Length > 0
            ? $"What that costs: {string.Join("; ", said)}."
            : $"What that costs: of the numbers that matter most here none is worse by {Percent(Slight)} or more.");
    }

    private static IEnumerable<Move> Standing(CostAnswer cost, int k) =>
        CostTable.Measures(cost.Cars).Where(m => m.Uses.HasFlag(MeasureUse.Short))
            .Select(m => new Move(m, m.Of(cost.Cars[0]), m.Of(cost.Cars[k])));

    private static Sentence Sureness(ReportWork work, Measure<Pass> head)
    {
        const string computed = "All of it is computed, none of it measured on a road.";
        CarDoubts[] doubts = [.. work.Cars.Select(c => CarDoubts.Of(c.Car, c.Load))];
        if (!doubts.Any(d => d.AreStated) || work.Passes.Any(p => !p.IsWhole))
        {
            return new("sureness", doubts.Any(d => d.AreStated)
                ? $"How sure: without every pass there is no interval. {computed}"
                : $"How sure: the car files state no doubts, so that cannot be said. {computed}");
        }

        var asked = work.Choices;
        var study = JointStudy.OfPasses(
            doubts, asked.Road, asked.Speed, [head], asked.Draws, asked.Seed, degree: work.Run.Degree, cancellation: work.Run.Cancellation);
        string Interval(DoubtResult result) =>
            result.Central90 is var band && double.IsFinite(band.Low)
                ? $"{Print(head, band.Low)} and {Print(head, band.High)}"
                : "no two values: no drawn car got across";
        var changes = study.Changes.Select((c, k) => $"the change to {work.Passes[k + 1].Name} between {Interval(c[0])}");
        var lies = string.Join("; ", changes.Prepend($"{head.Name} of {work.Passes[0].Name} between {Interval(study.Cars[0][0])}"));
        return new("sureness", string.Create(
            CultureInfo.InvariantCulture,
            $"How sure: nine times out of ten {lies} ({asked.Draws} draws within the stated doubts, seed {asked.Seed}). {computed}"));
    }

    // With its unit each time: that is what turns a number for readers of other units.
    private static string Print(Measure measure, double si) => measure.Print(measure.Unit.Of(si)) + measure.Unit.Suffix;

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{In.Percent.Of(share):0} %");

    // One number before and after.
    private sealed record Move(Measure Measure, double Before, double After)
    {
        private double Growth => (After - Before) / Math.Abs(Before);

        // Worse by more than a hair, and to be seen in the digits that are printed.
        public bool IsWorse =>
            Measure.Better != Better.Neither && double.IsFinite(Before) && double.IsFinite(After)
            && (Measure.Better == Better.More ? Before - After : After - Before) >= Slight * Math.Abs(Before)
            && Print(Measure, Before) != Print(Measure, After);

        public string Words
        {
            get
            {
                var share = Before > 0.0 && After > 0.0 && Measure.Unit.Symbol is not "%"
                    ? string.Create(CultureInfo.InvariantCulture, $" ({Math.Abs(In.Percent.Of(Growth)):0} % {(Growth < 0.0 ? "less" : "more")})")
                    : "";
                return Print(Measure, Before) == Print(Measure, After)
                    ? $"{Measure.Name} stays {Print(Measure, After)}"
                    : $"{Measure.Name} {Print(Measure, After)} instead of {Print(Measure, Before)}{share}";
            }
        }
    }
}
