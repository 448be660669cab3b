using Heaveline.Answers;

namespace Heaveline.Studies;

/// <summary>What is to be less, with each cure under each load.</summary>
internal static class CureTable
{
    /// <summary>The table: a row for the car as described and for each cure, a column a load.</summary>
    /// <param name="answer">The answer.</param>
    public static FactTable Of(CureAnswer answer)
    {
        var measure = answer.Measure;
        var table = new FactTable(measure.Name, [.. answer.Described.Select(pass => pass.Model.Load.Name)]);
        void Add(string key, string label, IReadOnlyList<PassAnswer> passes) => table.Add(
            key, label, measure.Unit.Symbol, measure.Format, passes.Select(pass => measure.ShownOf(pass.Pass)));
        Add("described", CureAnswer.AsDescribed, answer.Described);
        foreach (var (k, cure) in answer.Cures.Index())
        {
            Add($"cure-{k + 1}", $"{CureAnswer.Named(k)}: {cure.Act}", cure.Passes);
        }

        return table;
    }
}
