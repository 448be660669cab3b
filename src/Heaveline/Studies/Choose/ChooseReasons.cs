using System.Collections.Immutable;
using Heaveline.Causes;
using Heaveline.Doubts;
using Heaveline.Numerics;
using Heaveline.Parts;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>
/// Why the best setup is the best: which part does how much, what lies one step aside, what bars a better one, whose doubt matters.
/// </summary>
internal static class ChooseReasons
{
    // With more places than this there are too many sets of them to drive.
    private const int MostShared = 6;

    // Differences of the first wishes below this nobody feels.
    private const double Unfelt = 0.01;

    // So many draws tell whether neighbours differ.
    private const int MostDraws = 64;

    /// <summary>The findings with their reasons.</summary>
    public static ChooseFindings Of(ChooseFindings findings, ChooseDoer doer, StudyRun run)
    {
        var barred = findings.Found.Driven.Where(one => !one.IsAllowed && one.Row.IsDriven)
            .OrderBy(one => one.Wishes[0]).ThenBy(one => one.Setup).FirstOrDefault();
        var least = findings.List.IsEmpty ? findings.Least?.Wishes[0] ?? 1.0 : findings.List[0].Entry.Tried.Stated.Wishes[0];
        barred = barred is not null && barred.Wishes[0] < least - Unfelt ? barred : null;
        var where = new ChooseWhere(findings.Asked, findings.Parts, doer, findings.Found);
        findings = findings with { Barred = barred, Where = Told(barred is null ? [] : [(barred, null)]), Instances = where.Instances() };
        if (findings.List.IsEmpty)
        {
            return findings;
        }

        var work = new PieceWork(doer, run.Degree, run.Cancellation);
        var aside = Aside(findings, work);
        var ridden = new ChooseRidden(findings.Asked, findings.Use, findings.Parts, doer, run);
        aside = [.. aside.Zip(ridden.Stated(findings.Found, [.. aside.Select(one => one.Setup)]), (one, now) => (one.Place, now))];
        return findings with
        {
            Where = findings.Where.SetItems(Told(
                aside.Where(one => !one.Setup.IsAllowed).Select(one => (one.Setup, (PartPlace?)findings.Parts.Places[one.Place])))),
            Shares = Shares(findings, work),
            Aside = aside,
            List = Alike(findings, aside, run),
            Doubts = Doubts(findings, doer),
            Sides = ChooseSides.Of(findings, doer, run),
        };

        ImmutableDictionary<long, string> Told(IEnumerable<(DrivenSetup Setup, PartPlace? At)> refused) => refused.DistinctBy(one => one.Setup.Setup)
            .Select(one => (one.Setup.Setup, Words: where.Of(one.Setup, one.At))).Where(one => one.Words is not null)
            .ToImmutableDictionary(one => one.Setup, one => one.Words!);
    }

    private static ImmutableArray<(int Place, double Part)> Shares(ChooseFindings findings, PieceWork work)
    {
        var (space, found, best) = (findings.Parts.Space, findings.Found, findings.List[0].Entry.Setup);
        int[] places = [.. Enumerable.Range(0, space.Places.Length).Where(k => space.OptionAt(best, k) != 0)];
        if (places.Length is < 2 or > MostShared)
        {
            return [];
        }

        // The value of a set of places is what is left of the first wish with their parts taken out again.
        long[] without =
        [
            .. FairShares.AllSets(places.Length).Select(set => places.Index()
                .Aggregate(best, (setup, place) => (set & (1 << place.Index)) == 0 ? setup : space.With(setup, place.Item, 0))),
        ];
        var rows = work.Of(PieceStage.Drive, without, Piece.AsStated);
        double[] values = [.. rows.Select(row => row.IsDriven ? found.Scores.Of(found.Wishes[0], row, found.Present) : double.NaN)];
        return values.All(double.IsFinite)
            ? [.. FairShares.Of(values, places.Length).Select((part, k) => (places[k], part)).OrderBy(one => one.part)]
            : [];
    }

    // Each place of the best setup with the next softer and the next firmer part. Where none is softer than another, the one step is back.
    private static ImmutableArray<(int Place, DrivenSetup Setup)> Aside(ChooseFindings findings, PieceWork work)
    {
        var (space, best) = (findings.Parts.Space, findings.List[0].Entry.Setup);
        (int Place, long Setup)[] beside =
        [
            .. from place in Enumerable.Range(0, space.Places.Length)
               from next in Next(space.Places[place], space.OptionAt(best, place))
               select (place, space.With(best, place, next)),
        ];
        var driven = DrivenSetups.After(findings.Found, work);
        driven.Drive(beside.Select(one => one.Setup));
        driven.Look(beside.Select(one => one.Setup));
        return [.. beside.Select(one => (one.Place, driven.Of(one.Setup)!))];
    }

    private static IEnumerable<int> Next(OpenPlace place, int own)
    {
        var order = place.FromSoftToFirm();
        var at = Array.IndexOf(order, own);
        return at < 0
            ? own == 0 ? [] : [0]
            : new[] { at - 1, at + 1 }.Where(next => next >= 0 && next < order.Length).Select(next => order[next]);
    }

    // Which neighbours and others of the trial nobody could tell from each of the list, driven in the same cars.
    private static ImmutableArray<ChooseTold> Alike(
        ChooseFindings findings, ImmutableArray<(int Place, DrivenSetup Setup)> aside, StudyRun run)
    {
        var draws = Math.Min(MostDraws, findings.Trial.Draws);
        if (draws == 0)
        {
            return findings.List;
        }

        var best = findings.List[0];
        var task = findings.Found.Task with { Progress = null, Cancellation = run.Cancellation };
        var trial = SetupTrial.Of(
            findings.Found with { Task = task },
            [best.Entry.Tried.Stated, .. aside.Select(one => one.Setup).Where(one => one.IsAllowed)], draws, null);
        var own = trial.Tried[1];
        long[] alike =
        [
            .. trial.Tried.Skip(2).Where(one => IsNoMore(one) && !one.IsDropped && Enumerable.Range(0, one.Wishes.Length).All(k =>
            {
                var (mean, deviation, _) = one.Less(own, k);
                return Math.Abs(mean) <= Math.Max(Unfelt, Gaussian.Ninety * deviation);
            })).Select(one => one.Stated.Setup),
        ];
        return findings.List.SetItem(0, best with { Alike = [.. alike] });

        // A part more that nobody can tell from none is money for nothing.
        bool IsNoMore(TriedSetup one) => findings.Parts.Space.Changed(one.Stated.Setup) <= findings.Parts.Space.Changed(best.Entry.Setup);
    }

    // Errors by name are the same under every load.
    private static ImmutableArray<VarianceShare> Doubts(ChooseFindings findings, ChooseDoer doer)
    {
        var best = findings.List[0];
        CarDoubts[] doubts = [.. findings.Asked.Loads.Select(load => CarDoubts.Of(best.Fitted.Car, load))];
        DoubtSource[] sources = [.. doubts.SelectMany(d => d.Sources).DistinctBy(source => source.Name)];
        double[] values = [.. best.Entry.Tried.Wishes.Length > 0 ? best.Entry.Tried.Wishes[0] : []];
        if (values.Length < ErrorFit.Fewest(sources.Length))
        {
            return [];
        }

        double[][] errors =
        [
            .. findings.Trial.Numbers.Take(values.Length).Select(number =>
            {
                var car = doer.CarOf(number);
                var known = doubts.SelectMany(d => d.Sources.Zip(car.ErrorsOf(d))).DistinctBy(one => one.First.Name)
                    .ToDictionary(one => one.First.Name, one => one.Second);
                return sources.Select(source => known[source.Name]).ToArray();
            }),
        ];
        return [.. new ErrorFit(sources, errors).Shares(values).Take(3)];
    }
}
