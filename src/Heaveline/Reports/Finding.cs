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
            return
            [
                new("matter", $"What is the matter: {drive} does not get across. {passes[0].Pass.OutcomeSentence}"),
                .. Bought(work),
                .. Measured(work),
            ];
        }

        var heads = PassCatalogue.PitchOver(passes[0].Pass.Road);
        return
        [
            new("matter", $"What is the matter: {drive}: {string.Join("; ", heads.Select(m => $"{m.Name} is {Print(m, m.Of(passes[0].Pass))}"))}."),
            Why(work.Why!),
            .. passes.Skip(1).SelectMany((_, k) => Change(work, heads, k + 1)),
            Sureness(work, heads),
            .. Bought(work),
            .. Measured(work),
        ];
    }

    // A fault is only looked for where there is one: a car that pitches less than one without its causes has none by this measure.
    private static Sentence Why(WhyAnswer answer)
    {
        var ranking = answer.Why.Settling;
        var (maker, taker) = (
            ranking.Causes.FirstOrDefault(c => c.Share > 0.0 && c.Relative >= Slight), ranking.Causes.FirstOrDefault(c => c.Relative <= -Slight));
        var opening = answer.Settling.Opening.Text;
        if (ranking.Value < (1.0 - Slight) * ranking.NeutralValue)
        {
            return new("why", $"Why: by this measure nothing is the matter, it pitches less than with every cause neutral. {opening}"
                + (taker is null ? "" : $" {taker.Sentence}") + (maker is null ? "" : $" Against that: {maker.Sentence}"));
        }

        return new("why", (maker is null
            ? $"Why: none of the causes tried makes {Percent(Slight)} of it."
            : $"Why: the largest cause found: {maker.Sentence}") + $" {opening}" + (taker is null ? "" : $" Against that: {taker.Sentence}"));
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
        var driven = Driven(before, after).Except(heads).Select(m => new Move(m, m.Of(before.Pass), m.Of(after.Pass))).Where(m => m.IsWorse);
        var standing = Standing(work.Cost, k).Where(m => m.IsWorse);
        var handling = work.Cost.Reminders.Where(r => r.After == work.Cars[k]).SelectMany(r => r.Reminders).Where(r => r.Id == "roll-balance");
        string[] said =
        [
            .. driven.Take(1).Any() ? [string.Join("; ", driven.Select(m => m.Words))] : Array.Empty<string>(),
            .. standing.Take(1).Any() ? [$"standing, {string.Join("; ", standing.Select(m => m.Words))}"] : Array.Empty<string>(),
        ];
        yield return new("price", (said.Length > 0
            ? $"What that costs: {string.Join("; ", said)}."
            : $"What that costs: of the numbers that matter most here none is worse by {Percent(Slight)} or more.")
            + string.Concat(handling.Select(h => $" {h.Text}")));
    }

    // At the seats that both cars have, each by its name: the worst seat of one may be none of the other, or an empty one.
    private static IEnumerable<Measure<Pass>> Driven(PassAnswer before, PassAnswer after)
    {
        var seats = before.Model.Car.Seats.Select(s => s.Name).Intersect(after.Model.Car.Seats.Select(s => s.Name)).Select(SeatPlace.Of);
        return PassCatalogue.Of(seats, WheelPlace.Axles(before.Model.Rolls)).Where(m => m.IsUsed(before.Pass.Road, MeasureUse.Short));
    }

    // Where the beam points standing is set anew after a change: no cost by itself.
    private static IEnumerable<Move> Standing(CostAnswer cost, int k) =>
        CostTable.Measures(cost.Cars).Where(m => m.Uses.HasFlag(MeasureUse.Short) && m != SideEffectCatalogue.LampDrop)
            .Select(m => new Move(m, m.Of(cost.Cars[0]), m.Of(cost.Cars[k])));

    // The study of it may be of another car, of other loads and bumps: its own sentence says so.
    private static IEnumerable<Sentence> Bought(ReportWork work) => work.Asked(PartKind.Choose)
        ? [new("buy", $"What to buy for {work.Choices.Study!.Car.Name}: {FirstLetter.Lowered(work.Choice.Finding.Text)}")]
        : [];

    // What two drives measured stands in the same half page, unless it was measured on another car.
    private static IEnumerable<Sentence> Measured(ReportWork work) =>
        !work.Asked(PartKind.Prove) || work.Choices.Pair is not var (before, after) ? []
        : DriveCautions.OfStrangers(work.Choices.Cars, before, after).Any()
            ? [new("measured", $"What was measured before a change and after it, in {before.Name} and {after.Name}, was measured on another car "
                + "and is said with those drives only.")]
        : [new("measured", $"Measured on the road, {Loads(work, before, after)}, before the change and after it: {work.Proof.Head[0].Text}")];

    // What was computed above is of one load; the drives have their own.
    private static string Loads(ReportWork work, RecordedDrive before, RecordedDrive after)
    {
        string[] known = [.. new[] { before, after }.Select(d => d.Car?.Load.Name).OfType<string>().Distinct()];
        var (driven, computed) = (string.Join(" and ", known.Select(name => $"'{name}'")), work.Cars[0].Load.Name);
        return known.Length == 0 ? "under a load that is not written down"
            : known is [var one] && one == computed ? $"load {driven} too"
            : $"load {driven}, not '{computed}' as computed above";
    }

    private static Sentence Sureness(ReportWork work, Measure<Pass>[] heads)
    {
        var computed = !work.Choices.Read.Any() ? "All of it is computed, none of it measured on a road."
            : $"All of this is computed; what was measured on a road stands {(work.Asked(PartKind.Prove) ? "below and " : "")}with the drives.";
        CarDoubts[] doubts = [.. work.Cars.Select(c => CarDoubts.Of(c.Car, c.Load))];
        if (!doubts.Any(d => d.AreStated) || work.Passes.Any(p => !p.IsWhole))
        {
            return new("sureness", doubts.Any(d => d.AreStated)
                ? $"How sure: without every pass there is no interval. {computed}"
                : $"How sure: the car files state no doubts, so that cannot be said. {computed}");
        }

        var asked = work.Choices;
        var study = JointStudy.OfPasses(
            doubts, asked.Road, asked.Speed, heads, asked.Draws, asked.Seed, degree: work.Run.Degree, cancellation: work.Run.Cancellation);
        var lies = heads.SelectMany((head, j) => study.Changes
            .Select((c, k) => $"its change to {work.Passes[k + 1].Name} between {Interval(head, c[j])}")
            .Prepend($"{head.Name} of {work.Passes[0].Name} between {Interval(head, study.Cars[0][j])}"));
        return new("sureness", string.Create(
            CultureInfo.InvariantCulture,
            $"How sure: nine times out of ten {string.Join("; ", lies)} ({asked.Draws} draws within the stated doubts, seed {asked.Seed}). ")
            + computed);
    }

    private static string Interval(Measure<Pass> head, DoubtResult result) =>
        result.Central90 is var band && double.IsFinite(band.Low)
            ? $"{Print(head, band.Low)} and {Print(head, band.High)}"
            : "no two values: no drawn car got across";

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
