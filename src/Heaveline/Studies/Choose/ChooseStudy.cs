using System.Collections.Immutable;
using Heaveline.Causes;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Parts;
using Heaveline.Pieces;
using Heaveline.Quantities;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>
/// Which parts to buy: of all setups that lists of parts allow, the few that make a car pitch less over the roads that it is used on.
/// </summary>
public static class ChooseStudy
{
    // Shares of the work.
    private const double Tried = 0.8;

    // Of free ranges: what is done in the steps that were asked for.
    private const double FirstSteps = 0.45;

    /// <summary>The question as a command offers it.</summary>
    public static Question<ChooseAsked, ChooseAnswer> Question { get; } = new()
    {
        Word = "choose",
        Says =
            """
            Say what to buy: of every setup that a list of parts allows the few that make a car pitch less over the roads it is used on, with what
            each takes off, its price, how sure it is, and what else changes; or leave it as it is. Nothing is told that, under any load of the
            car, lifts a wheel for longer or presses a stop deeper over these roads at these speeds, lets coils touch or brings a spring loose,
            as far as lengths are known, meets a stop too soon in braking, accelerating or cornering, or takes an axle's damping ratio out of
            0.20 to 0.50.

            Examples:
              heaveline choose examples/garage/fern-saloon.yaml --parts examples/parts/village-autumn.yaml
              heaveline choose examples/garage/fern-saloon.yaml --parts examples/parts/village-autumn.yaml --budget "400 EUR" --draws 60
              heaveline choose examples/studies/fern-four-up.yaml
            """,
        Choices = ChooseChoices.All,
        IsShortened = true,
        Reads = ChooseChoices.Read,
        Answers = Run,
        Pieces = Pieces,
    };

    /// <summary>What is driven over where nothing else is said, a line each.</summary>
    public static IReadOnlyList<string> UsualUse => ChooseChoices.UsualUse;

    /// <summary>Chooses.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">The car cannot stand or does not get across as it is; no part fits.</exception>
    /// <exception cref="OperationCanceledException">Stopped before anything was found.</exception>
    public static ChooseAnswer Run(ChooseAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        asked = ChooseUse.Crossed(asked);
        if (!asked.HasRanges)
        {
            return Once(asked, run, isReasoned: true);
        }

        // First in the steps that were asked for, then finer about what came of them: other setups under the same numbers, which nobody keeps.
        var first = Once(asked, run.Between(0.0, FirstSteps), isReasoned: false);
        return first.Findings.List.IsEmpty || first.Failure is not null
            ? first with { Findings = Reasoned(first.Findings, new ChooseDoer(asked, first.Findings.Use, first.Findings.Parts), run) }
            : Once(Finer(first.Findings), run.Between(FirstSteps, 1.0) with { Through = null }, isReasoned: true);
    }

    // The middle of the gaps to either side of what stands on the shortlist.
    private static ChooseAsked Finer(ChooseFindings found) => found.Asked with
    {
        Filters =
        [
            .. found.Asked.Filters.Select(filter => filter.Range is not { } range ? filter : filter with
            {
                Range = range.Finer(
                [
                    .. found.List.SelectMany(one => one.Fitted.Parts).Where(part => part.Place == filter.Place)
                        .Select(part => ChooseFree.ValueOf(found.Asked.Car, part.Place, part.Option)).OfType<double>(),
                ]),
            }),
        ],
    };

    private static ChooseAnswer Once(ChooseAsked asked, StudyRun run, bool isReasoned)
    {
        var (parts, use) = (new ChooseParts(asked), new ChooseUse(asked));
        var doer = new ChooseDoer(asked, use, parts);
        var searched = Searched(asked, parts, use);
        var found = SetupSearch.Of(TaskOf(asked, use, parts, PiecesByBytes.Through(doer, run.Through), run.Between(0.0, searched)));
        var candidates = Shortlist.Candidates(found);
        // A part that fits beside another alone states its doubts in a setup.
        var stated = asked.Loads.Any(load => CarDoubts.Of(asked.Car, load).AreStated) || parts.StatesDoubts(asked.Loads[0])
            || candidates.Any(one => CarDoubts.Of(((Fitted)parts.Fit(one.Setup)).Car, asked.Loads[0]).AreStated);
        var trial = TrialOf(found, candidates, stated && !found.IsStopped && candidates.Length > 0 ? asked.Draws : 0, run.Between(searched, Tried));
        (trial, var entries, var isRidden) = Ridden(trial, new ChooseRidden(asked, use, parts, doer, run));
        var full = NeutralLoad.Heaviest(asked.Loads);
        var own = new Lazy<ImmutableArray<double>>(() => doer.SeatPeaks(asked.Car));
        ImmutableArray<ChooseTold> list =
        [
            .. entries.Select((entry, k) =>
            {
                var fitted = (Fitted)parts.Fit(entry.Setup);
                return new ChooseTold(((char)('A' + k)).ToString(), entry, fitted, new CarAtRest(RideModel.Of(fitted.Car, full)))
                {
                    Harder = ChooseHarder.Of(entry.Tried.Stated.Row, found, doer.SeatPeaks(fitted.Car), own.Value, use),
                    Grip = ChooseGrip.Of(doer, fitted.Car, use),
                };
            }),
        ];
        var findings = new ChooseFindings
        {
            Asked = asked,
            Use = use,
            Parts = parts,
            Found = found,
            Trial = trial,
            AreDoubtsStated = stated,
            Stood = doer.Stood,
            Full = new CarAtRest(RideModel.Of(asked.Car, full)),
            List = list,
            IsRidden = isRidden,
            Grip = ChooseGrip.Of(doer, asked.Car, use),
        };
        run.Progress?.Report(Tried);
        return new ChooseAnswer(isReasoned ? Reasoned(findings, doer, run) : findings);
    }

    // Where every setup is driven that is soon done beside the drawn cars; a fit that is made anew again and again takes longer (own runs).
    private static double Searched(ChooseAsked asked, ChooseParts parts, ChooseUse use) =>
        parts.Space.LoudCount <= asked.DrivenWhole / Math.Max(1, use.Crossings.Length) ? 0.2 : 0.5;

    /// <summary>Does pieces of a study's work, as they are asked for through <see cref="StudyRun.Through"/>.</summary>
    /// <param name="asked">What is asked.</param>
    /// <exception cref="RefusedValueException">As <see cref="Run"/>.</exception>
    public static IPieceDoer Pieces(ChooseAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        asked = ChooseUse.Crossed(asked);
        return new PiecesByBytes(new ChooseDoer(asked, new ChooseUse(asked), new ChooseParts(asked)));
    }

    // What is stopped before its reasons are found is told without them.
    private static ChooseFindings Reasoned(ChooseFindings findings, ChooseDoer doer, StudyRun run)
    {
        try
        {
            return findings.Found.IsStopped || findings.Trial.Found.IsStopped ? findings : ChooseReasons.Of(findings, doer, run);
        }
        catch (OperationCanceledException)
        {
            return findings with { Found = findings.Found with { IsStopped = true } };
        }
    }

    // Whose ride is the least is known once it is ridden. Of what is stopped no ride is told: the search went by another number.
    private static (SetupTrial Trial, ImmutableArray<ShortlistEntry> List, bool IsRidden) Ridden(SetupTrial trial, ChooseRidden ridden)
    {
        try
        {
            var own = ridden.Of(trial);
            return (own, ridden.Of(own, Shortlist.Of(own)), true);
        }
        catch (OperationCanceledException)
        {
            var ride = trial.Found.Wishes.IndexOf(WishKind.Ride);
            return (trial, [.. Shortlist.Of(trial).Select(one => Unridden(one, ride)).Where(one => !one.Reasons.IsEmpty)], false);
        }
    }

    private static ShortlistEntry Unridden(ShortlistEntry one, int ride) => ride < 0 ? one : new ShortlistEntry(
        one.Tried with
        {
            Stated = one.Tried.Stated with { Wishes = one.Tried.Stated.Wishes.SetItem(ride, double.NaN) },
            Wishes = one.Tried.Wishes.SetItem(ride, [.. one.Tried.Wishes[ride].Select(_ => double.NaN)]),
        },
        one.Reasons.Remove(ShortlistReason.LeastRide));

    // Stopped here, too, the best so far is told, as stated.
    private static SetupTrial TrialOf(FoundSetups found, ImmutableArray<DrivenSetup> setups, int draws, StudyRun run)
    {
        try
        {
            return SetupTrial.Of(found, setups, draws, run.Progress);
        }
        catch (OperationCanceledException)
        {
            return SetupTrial.Of(found with { IsStopped = true }, setups, 0, null);
        }
    }

    // What can be told, as far as it is wished; those that are driven for first.
    private static ImmutableArray<WishKind> Wishes(ChooseAsked asked, ChooseParts parts) =>
    [
        .. Enum.GetValues<ChooseWish>().Where((asked.Wishes.IsEmpty ? ChooseWishes.Usual : asked.Wishes).Contains).Where(wish => wish switch
        {
            ChooseWish.Ride or ChooseWish.Grip => asked.RideSpeeds.Length > 0,
            ChooseWish.Money => parts.HasPrices,
            _ => true,
        }).Select(ChooseWishes.KindOf),
    ];

    private static SearchTask TaskOf(ChooseAsked asked, ChooseUse use, ChooseParts parts, IPassDoer doer, StudyRun run)
    {
        var scores = new Lazy<UseScores>(() => new UseScores(
            use.Columns, doer.Do(new Piece(PieceStage.Drive, [0L], Piece.AsStated), CancellationToken.None)[0]));
        var axles = ChooseAxles.Of(asked, parts, run.Degree);
        return new SearchTask
        {
            Space = parts.Space,
            Wishes = Wishes(asked, parts),
            Columns = use.Columns,
            Limits =
            [
                new SetupLimit(WishKind.WorstRoad, ChooseLimitWords.WorstRoad(asked.Limits), asked.Limits.WorstRoadShare, (row, present) =>
                    scores.Value.Of(WishKind.WorstRoad, row, present) - 1.0 - asked.Limits.WorstRoad),
                new SetupLimit(WishKind.Hit, ChooseLimitWords.Hit(asked.Limits), asked.Limits.HitShare, (row, present) =>
                    scores.Value.Of(WishKind.Hit, row, present) - 1.0 - asked.Limits.Hit),
                .. asked.Limits.Grip is { } grip
                    ? new[]
                    {
                        new SetupLimit(WishKind.Grip, ChooseLimitWords.Grip(grip), asked.Limits.GripShare, (row, present) =>
                            scores.Value.Of(WishKind.Grip, row, present) - 1.0 - grip),
                    }
                    : [],
                .. asked.Limits.LeastLoad is { } least
                    ? new[]
                    {
                        new SetupLimit(WishKind.LoadLost, ChooseLimitWords.LeastLoad(least), asked.Limits.LeastLoadShare, (row, present) =>
                            use.LoadLost.Max(at => row.Numbers[at] - Math.Max(1.0 - least, present.Numbers[at]))),
                    }
                    : [],
                .. ChooseTravel.Limits(asked.Limits, use.FirstTravel),
                .. asked.Limits.NeverMetal is { } never
                    // What does not get across is no row to ask, and keeps no limit.
                    ? new[] { new SetupLimit(WishKind.Settling, ChooseLimitWords.NeverMetal, never, (_, _) => -1.0) { IsAlone = true } }
                    : [],
            ],
            Doer = doer,
            Standing = axles is not null
                ? setup => (int)axles.Of(setup)
                : setup => asked.Limits.Cost is { } most && (decimal)parts.Space.Price(setup) > most.Value ? (int)ChooseRefusal.Cost
                    : parts.Fit(setup) is Misfit ? (int)ChooseRefusal.Misfit
                    : SetupRow.None,
            Unsure = setup => parts.Fit(setup) is Fitted fitted && ChooseSprings.Unknown(fitted).Count > 0,
            DrivenWhole = asked.DrivenWhole,
            Seed = asked.Seed,
            Degree = run.Degree,
            PiecesAtOnce = run.PiecesAtOnce,
            Progress = run.Progress,
            Cancellation = run.Cancellation,
        };
    }
}
