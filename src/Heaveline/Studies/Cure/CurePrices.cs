using Heaveline.Answers;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>What gets worse by a cure under every load, over the road and standing: the sentence of a price names the worst alone.</summary>
internal static class CurePrices
{
    /// <summary>A table a cure, with a row for each number that gets worse and is felt; without rows where nothing does.</summary>
    /// <param name="answer">The answer.</param>
    public static IReadOnlyList<FactTable> Of(CureAnswer answer) => [.. answer.Cures.Select((cure, k) =>
    {
        var table = new FactTable($"Price of {CureAnswer.Named(k)} under every load", [CureAnswer.AsDescribed, CureAnswer.Named(k)]);
        foreach (var (was, now) in answer.Described.Zip(cure.Passes))
        {
            var load = was.Model.Load.Name;
            foreach (var change in Worse(answer, was, now, standing: true))
            {
                var measure = change.Measure;
                table.Add(
                    $"{measure.Key}-{load.Replace(' ', '-')}", $"{load}: {measure.Label}", measure.Unit.Symbol, measure.Format,
                    [change.Before, change.After]);
            }
        }

        return table;
    })];

    /// <summary>What gets worse from one crossing to another by as much as is felt, that which does by most first.</summary>
    /// <param name="answer">The answer: what is to be less is no price.</param>
    /// <param name="was">The car as described under a load.</param>
    /// <param name="now">The car with the cure under the same.</param>
    /// <param name="standing">Whether standing counts too.</param>
    public static IEnumerable<MeasureChange> Worse(CureAnswer answer, PassAnswer was, PassAnswer now, bool standing) =>
        MeasureChange.Of(now, was).Where(change => change.Measure.Key != answer.Measure.Key)
            .Concat(standing ? Standing(new CarAtRest(was.Model), new CarAtRest(now.Model)) : [])
            .Where(change => change is { IsFelt: true, IsBetter: false }).OrderByDescending(change => change.Share);

    /// <summary>What changes of the standing car.</summary>
    public static IEnumerable<MeasureChange> Standing(CarAtRest was, CarAtRest now) =>
        CostTable.Measures([was, now])
            .Select(measure => new MeasureChange(measure, measure.ShownOf(was), measure.ShownOf(now)))
            .Where(change => change is { Before: not null, After: not null });
}
