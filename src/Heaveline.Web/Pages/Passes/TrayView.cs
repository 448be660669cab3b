using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// The tray of a state: its pinned trials over the road, at the speed and under the load that are looked at, and what is set now under every load.
/// </summary>
/// <param name="Drive">Road, speed, load and car that it is of, as an address says them.</param>
/// <param name="Trials">The pinned trials by their words.</param>
/// <param name="Loads">What is set now under every load, by the load's name, in the order of the car.</param>
/// <param name="Nod">Name of the number of the loads.</param>
public sealed record TrayView(
    string Drive, IReadOnlyDictionary<string, TrayTrial> Trials, IReadOnlyList<(string Load, TrayTrial Trial)> Loads, string Nod)
{
    /// <summary>Most loads that are shown.</summary>
    public const int MostLoads = 8;

    /// <summary>Road, speed, load and car of a state, whatever is tried and pinned.</summary>
    public static string DriveOf(PassState state) => PassPin.AsDescribed.On(state with { Pins = [], AsFrequencies = false }).Query;

    /// <summary>Lays out the tray.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="state">The state.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    internal static TrayView Of(GarageView garage, PassState state, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(state);
        var trial = new PassTrial(garage);
        var pins = state.Pins.Select(pin => (pin.Word, Seen: See(pin.On(state)))).ToList();
        var now = See(state);
        var described = pins.Select(pin => pin.Seen).Append(now).FirstOrDefault(seen => seen.View is not null).View?.Described;
        var loads = described is null ? []
            : described.LoadStates.Append(LoadState.Reference).DistinctBy(load => load.Name).Take(MostLoads)
                .Select(load => (load.Name, Seen: load.Name == now.View?.Load.Name ? now : See(state with { Load = load.Name }))).ToList();
        var views = pins.Select(pin => pin.Seen.View).Append(now.View).OfType<PassView>().ToList();
        var shared = Shared(views);

        // A load that breaks off takes the number from no other.
        List<PassView> everyLoad = [.. loads.Select(load => load.Seen.View).OfType<PassView>()];
        var headline = Shared(everyLoad).Take(1).ToList();
        var (curves, all) = (Scale.Of(views), Scale.Of(everyLoad));
        return new TrayView(
            DriveOf(state),
            pins.ToDictionary(pin => pin.Word, pin => Trial(
                described is null ? "" : state.Pins.First(one => one.Word == pin.Word).Words(described), pin.Seen, shared, curves)),
            [.. loads.Select(load => (load.Name, Trial(load.Name, load.Seen, headline, all)))],
            headline is [var nod] ? nod.Label : "");

        (PassView? View, string? Problem) See(PassState asked)
        {
            stop.ThrowIfCancellationRequested();
            try
            {
                var (view, objections) = trial.See(asked with { Pins = [] }, full: false);
                return (view, view is null ? string.Join(' ', objections.Select(one => one.Sentence)) : null);
            }
            catch (NoAnswerException refused)
            {
                return (null, refused.Message);
            }
        }
    }

    // The headline, the hit, and the room to the bump stops of the axle that has least of it; without stops what the table has next.
    private static IReadOnlyList<Measure<Pass>> Shared(List<PassView> views)
    {
        var whole = views.Where(view => view.Now.IsWhole).ToList();
        if (whole is not [var first, ..])
        {
            return [];
        }

        var headlines = PassCatalogue.PitchOver(first.Now.Pass.Road);
        var stop = WheelPlace.Axles(first.Now.Model.Rolls)
            .Select(place => WheelCatalogue.Of(place).Single(one => one.Key == $"{place.Key}-bump-margin"))
            .Select(measure => (Measure: measure, Least: whole.Min(view => measure.ShownOf(view.Now.Pass))))
            .Where(one => one.Least is not null).OrderBy(one => one.Least).Select(one => one.Measure).FirstOrDefault();
        var next = stop ?? PassCatalogue.For(first.Now.Model, first.Now.Pass.Road, MeasureUse.BeforeAfter)
            .FirstOrDefault(measure => !headlines.Contains(measure) && measure.ShownOf(first.Now.Pass) is not null);
        return [headlines[0], headlines[1], .. next is null ? Array.Empty<Measure<Pass>>() : [next]];
    }

    private static TrayTrial Trial(
        string words, (PassView? View, string? Problem) seen, IReadOnlyList<Measure<Pass>> measures, Scale scale)
    {
        if (seen.View is not { } view)
        {
            return new TrayTrial(words, "", [], "", "", seen.Problem, BreaksOff: false);
        }

        var (now, former) = (view.Now, view.Former);
        var changes = now.IsWhole
            ? measures.Select(one => new MeasureChange(
                one, former is { IsWhole: true } ? one.ShownOf(former.Pass) : null, one.ShownOf(now.Pass))).ToList()
            : [];
        var effect = changes is [{ Before: > 0.0 and var before, After: { } after }, ..] ? PassVerdict.Said(before, after) : "";
        return new TrayTrial(
            words,
            effect,
            [.. changes.Select(change => (change.Measure.Label, change.PrintWithUnit(change.After)))],
            scale.Points(TrayCurve.Of(now)),
            former is null ? "" : scale.Points(TrayCurve.Of(former)),
            now.IsWhole ? null : $"The crossing breaks off. {now.Pass.OutcomeSentence}",
            !now.IsWhole);
    }

    // One scale for curves that stand side by side.
    private sealed record Scale(double From, double To, double Most)
    {
        public static Scale Of(IReadOnlyList<PassView> views)
        {
            var crossings = views.SelectMany(view => new[] { view.Now, view.Former }).OfType<PassAnswer>()
                .Where(one => one.Pass.Count > 1).ToList();
            if (crossings.Count == 0)
            {
                return new(0.0, 1.0, 1.0);
            }

            var axis = EventBands.TimeOf([.. crossings.Select(one => one.Pass)]);
            return new(axis.From!.Value, axis.To!.Value, TrayCurve.Most(crossings.Select(TrayCurve.Of)));
        }

        public string Points(Trace? curve) => TrayCurve.Points(curve, From, To, Most);
    }
}
