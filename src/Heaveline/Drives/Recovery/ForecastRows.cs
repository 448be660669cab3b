using System.Collections.Immutable;
using Heaveline.Measures;

namespace Heaveline.Drives.Recovery;

/// <summary>Both numbers of all passes before and after a change, as recovered (draw 0) and drawn.</summary>
internal sealed class ForecastRows
{
    /// <summary>The numbers, in their order.</summary>
    public static readonly Measure<Passes.Pass>[] Measured = [SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration];

    private readonly ImmutableArray<RecoveredRoad> roads;
    private readonly Func<int, int, bool, double[]> row;
    private readonly int draws;

    /// <param name="roads">The roads, one a pass.</param>
    /// <param name="draws">How many draws besides the first.</param>
    /// <param name="row">The numbers of a draw, a pass, after the change or before it, shape (2).</param>
    public ForecastRows(ImmutableArray<RecoveredRoad> roads, int draws, Func<int, int, bool, double[]> row) =>
        (this.roads, this.draws, this.row) = (roads, draws, row);

    /// <summary>How far a pass's change of the headline is unsure, as a half-width (–).</summary>
    public double[] Doubts => [.. roads.Select((_, p) => Plain(Changes(p, 0)).HalfWidth)];

    /// <summary>The forecast.</summary>
    /// <param name="car">The car before, in words.</param>
    /// <param name="change">The change, in words.</param>
    /// <param name="model">What a forecast of a difference is off by besides, as a half-width (–).</param>
    /// <param name="ofRoad">How far each pass's change is unsure by its road alone (–).</param>
    public Forecast Of(string car, string change, double model, double[] ofRoad)
    {
        ImmutableArray<ForecastPass> passes =
        [
            .. roads.Select((road, p) => new ForecastPass(road.Event, road.Site, road.Speed, Number(p, 0, model), Number(p, 1, model))
            {
                OfRoad = Wider(ofRoad[p], model),
            }),
        ];
        int[] counted = [.. Enumerable.Range(0, roads.Length).Where(p => passes[p].IsCounted)];
        Bracket Whole(int measure) => Widened(
            [.. Enumerable.Range(0, draws + 1).Select(d => Math.Exp(counted
                .Select(p => Math.Log(row(d, p, true)[measure] / row(d, p, false)[measure]))
                .Where(double.IsFinite).DefaultIfEmpty(double.NaN).Average()) - 1.0)],
            model);
        return new Forecast { Car = car, Change = change, Passes = passes, Headline = Whole(0), Hit = Whole(1), Draws = draws };
    }

    private ForecastNumber Number(int pass, int measure, double model) => new(
        Measured[measure].Key, Plain(Column(pass, measure, false)), Plain(Column(pass, measure, true)), Widened(Changes(pass, measure), model));

    private double[] Column(int pass, int measure, bool isAfter) => [.. Enumerable.Range(0, draws + 1).Select(d => row(d, pass, isAfter)[measure])];

    private double[] Changes(int pass, int measure) =>
        [.. Column(pass, measure, false).Zip(Column(pass, measure, true), (before, after) => (after / before) - 1.0)];

    // The first is that of the road itself.
    private static Bracket Plain(double[] values) => Bracket.Of(values[0], [.. values.Skip(1).Where(double.IsFinite)]);

    private static Bracket Widened(double[] values, double model)
    {
        var plain = Plain(values);
        return new(plain.Value, plain.Value - Wider(plain.Value - plain.Low, model), plain.Value + Wider(plain.High - plain.Value, model));
    }

    private static double Wider(double half, double model) => Math.Sqrt((half * half) + (model * model));
}
