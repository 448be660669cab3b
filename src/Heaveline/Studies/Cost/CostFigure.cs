using Heaveline.Doubts;
using Heaveline.Figures;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>What a change costs, drawn: each side effect before and after it, with intervals where doubts are stated.</summary>
internal static class CostFigure
{
    public const string Id = "cost";

    public static Figure Of(IReadOnlyList<string> names, string load, IReadOnlyList<CarAtRest> cars, JointStudy? doubts)
    {
        var last = cars.Count - 1;
        var measures = CostTable.Measures(cars);
        CategoryValue? At(int car, int measure)
        {
            var of = measures[measure];
            var value = of.Unit.Of(of.Of(cars[car]));
            if (!double.IsFinite(value))
            {
                return null;
            }

            var spread = doubts?.Cars[car][measure].Shown();
            return spread is { Count: > 0, StandardDeviation: > 0.0 }
                ? new CategoryValue
                {
                    Value = value,
                    Low = spread.Central90.Low,
                    High = Math.Min(spread.Central90.High, of.Unit.Of(of.NoneAbove ?? double.MaxValue)),
                }
                : new CategoryValue { Value = value };
        }

        var values = from j in Enumerable.Range(0, measures.Count)
                     let before = At(0, j)
                     let after = last > 0 ? At(last, j) : null
                     where before is not null && (last == 0 || after is not null)
                     select new PairedValue(measures[j].Label, measures[j].Unit.Symbol, before, after, measures[j].Better switch
                     {
                         Better.Less => true,
                         Better.More => false,
                         _ => null,
                     });
        return PairedFigure.Of(
            last > 0 ? $"What it costs: {names[0]} becomes {names[last]}" : $"{names[0]}: roll, dive, travel, headlamp",
            $"At rest, {load}.",
            names[0],
            last > 0 ? names[last] : null,
            [.. values]);
    }
}
