using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rules;
using Heaveline.Studies;
using Heaveline.Web.Pages.Parts;

namespace Heaveline.Web.Pages.Rules;

/// <summary>Computes maps for all readers, a coarse one first, one map at a time, and keeps the latest.</summary>
/// <param name="fineValues">Values of the fine map; like every count of values here one more than a multiple of three, so that the plain car is among them.</param>
/// <param name="fineSpeeds">Speeds of the fine map.</param>
internal sealed class RuleDesk(int fineValues = 49, int fineSpeeds = 81) : IDisposable
{
    // A few more than a hundred passes, so that something is seen at once.
    private const int CoarseValues = 13;
    private const int CoarseSpeeds = 11;
    private const int LoadValues = 25;
    private const int LoadSpeeds = 15;

    // A fine map holds some 50 kB.
    private const int MostKept = 40;

    private readonly Kept<RuleView> kept = new(MostKept);
    private readonly Turn turn = new();

    /// <summary>The finished answer, if it is still kept.</summary>
    public RuleView? Find(RuleQuestion question) => kept.Find(question.Key);

    /// <summary>Answers a question.</summary>
    /// <param name="question">A question without refusals.</param>
    /// <param name="show">Told each better answer: the coarse map, the same with all loads, the fine one.</param>
    /// <param name="progress">Told the share done.</param>
    /// <param name="cancellation">Stops the work; what was shown stands.</param>
    /// <exception cref="RefusedValueException">The car cannot be judged so.</exception>
    public Task<RuleView> Answer(RuleQuestion question, Action<RuleView>? show, IProgress<double>? progress, CancellationToken cancellation) => turn.Take(
        () =>
        {
            if (Find(question) is { } known)
            {
                show?.Invoke(known);
                return known;
            }

            progress ??= new Progress<double>();
            var model = question.Model(question.Load);
            var coarse = MapOf(question, model, CoarseValues, CoarseSpeeds, new Span(progress, 0.0, 0.03), cancellation);
            show?.Invoke(View(question, coarse, [MapLoad.Of(coarse, question.IsRatio)], null, isFine: false));

            var (others, cautions) = OtherLoads(question, new Span(progress, 0.03, 0.2), cancellation);
            (DampingOptima, string)? damping = question.Rule == "damping" ? Damping(question, model, coarse, cancellation) : null;
            MapLoad[] Loads(RuleMap map) => [.. question.Car!.LoadStates.Prepend(LoadState.Reference).Select(l => l.Name == question.Load.Name ? MapLoad.Of(map, question.IsRatio) : others.GetValueOrDefault(l.Name)).OfType<MapLoad>()];
            show?.Invoke(View(question, coarse, Loads(coarse), damping, isFine: false) with { Cautions = cautions });

            var fine = MapOf(question, model, fineValues, fineSpeeds, new Span(progress, 0.25, 1.0), cancellation);
            var view = View(question, fine, Loads(fine), damping, isFine: true) with { Cautions = cautions };
            kept.Keep(question.Key, view);
            show?.Invoke(view);
            return view;
        },
        cancellation);

    public void Dispose() => turn.Dispose();

    private static RuleView View(RuleQuestion question, RuleMap map, IReadOnlyList<MapLoad> loads, (DampingOptima, string)? damping, bool isFine) =>
        new(question, new MapAnswer { Map = map, Loads = loads, Damping = damping }, isFine);

    private static RuleMap MapOf(RuleQuestion question, RideModel model, int values, int speeds, IProgress<double> progress, CancellationToken cancellation)
    {
        var map = RuleMap.Of(
            model, question.Road!, MapRule.Of(question.Rule, model, values), Even(question.Speeds, speeds), [MapRule.Measure(question.Measure)],
            degree: Environment.ProcessorCount, progress: progress, cancellation: cancellation)[0];
        return map.Best.Any(b => b is not null)
            ? map
            : throw new RefusedValueException("map", "without a single computed place", "at least one pass that runs to its end", map.Refusals.FirstOrDefault(r => r.Length > 0) ?? "Every pass left the model's range: take a lower bump or lower speeds.");
    }

    // Another load asks for a map of its own, since masses and rates change with it; a coarse one tells the speed.
    private static (Dictionary<string, MapLoad> Loads, IReadOnlyList<string> Cautions) OtherLoads(RuleQuestion question, IProgress<double> progress, CancellationToken cancellation)
    {
        var loads = new Dictionary<string, MapLoad>(StringComparer.Ordinal);
        var cautions = new List<string>();
        var others = question.Car!.LoadStates.Prepend(LoadState.Reference).Where(l => l.Name != question.Load.Name).ToList();
        for (var k = 0; k < others.Count; k++)
        {
            var load = others[k];
            try
            {
                var model = question.Model(load);
                loads[load.Name] = question.IsRatio
                    ? MapLoad.Of(MapOf(question, model, LoadValues, LoadSpeeds, new Span(progress, k / (double)others.Count, (k + 1.0) / others.Count), cancellation), isRatio: true)
                    : new MapLoad(load.Name, MapRule.Of(question.Rule, model, 2).Own(model), null, null, null);
            }
            catch (Exception e) when (e is RefusedValueException or RunFailedException)
            {
                cautions.Add($"{load.Name}: not marked. {e.Message}");
            }
        }

        return (loads, cautions);
    }

    private static (DampingOptima, string) Damping(RuleQuestion question, RideModel model, RuleMap map, CancellationToken cancellation)
    {
        var stretch = RoughStretch.Between(question.Speeds.From, question.Speeds.To);
        return (DampingOptima.Of(model, stretch.Road, stretch.Speed, map.Axis.Values, degree: Environment.ProcessorCount, cancellation: cancellation), stretch.Words);
    }

    private static double[] Even((double From, double To) speeds, int count) =>
        [.. Enumerable.Range(0, count).Select(i => speeds.From + ((speeds.To - speeds.From) * i / (count - 1)))];
}
