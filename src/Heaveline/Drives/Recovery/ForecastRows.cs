using System.Collections.Immutable;
using Heaveline.Drives.Comparison;
using Heaveline.Measures;

namespace Heaveline.Drives.Recovery;

/// <summary>Both numbers of all passes before and after a change, as recovered (draw 0) and drawn.</summary>
internal sealed class ForecastRows
{
    /// <summary>The numbers, in their order.</summary>
    public static readonly Measure<Passes.Pass>[] Measured = [.. Enum.GetValues<ComparedNumber>().Select(ComparedMeasure.Of)];

    private readonly ImmutableArray<RecoveredRoad> roads;
    private readonly Func<int, int, bool, double[]> row;
    private readonly int draws;
    private readonly double model;

    /// <param name="roads">The roads, one a pass.</param>
    /// <param name="draws">How many draws besides the first.</param>
    /// <param name="row">The numbers of a draw, a pass, after the change or before it, shape (2).</param>
    /// <param name="model">What a forecast of a difference is off by besides, as a half-width (–).</param>
    public ForecastRows(ImmutableArray<RecoveredRoad> roads, int draws, Func<int, int, bool, double[]> row, double model) =>
        (this.roads, this.draws, this.row, this.model) = (roads, draws, row, model);

    /// <summary>ln of a number after over before, of a draw (0: as recovered) and a pass.</summary>
    public double Log(int draw, int pass, int measure) => Math.Log(row(draw, pass, true)[measure] / row(draw, pass, false)[measure]);

    /// <summary>How far a pass's change of the headline is unsure, as a half-width (–).</summary>
    public double[] Doubts => [.. roads.Select((_, p) => Plain(Changes(p, 0)).HalfWidth)];

    /// <summary>The forecast.</summary>
    /// <param name="car">The car before, in words.</param>
    /// <param name="change">The change, in words.</param>
    /// <param name="ofRoad">How far each pass's change is unsure by its road alone (–).</param>
    public Forecast Of(string car, string change, double[] ofRoad)
    {
        ImmutableArray<ForecastPass> passes =
        [
            .. roads.Select((road, p) => new ForecastPass(road.Event, road.Site, road.Speed, Number(p, 0), Number(p, 1))
            {
                OfRoad = Wider(ofRoad[p], model),
            }),
        ];
        double[] counted = [.. passes.Select(p => p.IsCounted ? 1.0 : 0.0)];
        return new Forecast
        {
            Car = car, Change = change, Passes = passes, Headline = Whole(0, counted), Hit = Whole(1, counted), Draws = draws, Rows = this,
        };
    }

    /// <summary>The change of a number over passes, the weighed mean of its logarithms (–).</summary>
    /// <param name="measure">Which number.</param>
    /// <param name="weights">How much each pass counts, shape (passes).</param>
    public Bracket Whole(int measure, double[] weights)
    {
        return Widened([.. Enumerable.Range(0, draws + 1).Select(draw => Math.Exp(Mean(draw)) - 1.0)], model);

        double Mean(int draw)
        {
            var (sum, all) = (0.0, 0.0);
            for (var p = 0; p < roads.Length; p++)
            {
                if (weights[p] > 0.0 && Log(draw, p, measure) is var log && double.IsFinite(log))
                {
                    (sum, all) = (sum + (weights[p] * log), all + weights[p]);
                }
            }

            return sum / all;
        }
    }

    private ForecastNumber Number(int pass, int measure) => new(
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
