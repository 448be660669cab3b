using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Studies;

/// <summary>The numbers of one pass or of several side by side.</summary>
public static class PassTable
{
    /// <summary>The table.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="columns">Headings.</param>
    /// <param name="passes">Passes with their numbers, a column each; the first says which seats and wheels there are.</param>
    public static FactTable Of(string title, IReadOnlyList<string> columns, IReadOnlyList<(Pass Pass, PassMeasures Measures)> passes)
    {
        ArgumentNullException.ThrowIfNull(passes);
        var measures = PassCatalogue.Of(passes[0].Measures.Seats.Select(s => SeatPlace.Of(s.Seat)), Wheels(passes));
        var shown = measures.Where(m => m.IsUsed(passes[0].Pass.Road, MeasureUse.Table));
        return new FactTable(title, columns).Add(shown, [.. passes.Select(p => p.Pass)]);
    }

    /// <summary>Of these numbers the few that matter most: of the worst seat, and of each axle's worse wheel.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="columns">Headings.</param>
    /// <param name="passes">Passes with their numbers, a column each.</param>
    public static FactTable Short(string title, IReadOnlyList<string> columns, IReadOnlyList<(Pass Pass, PassMeasures Measures)> passes)
    {
        ArgumentNullException.ThrowIfNull(passes);
        var first = passes[0].Pass;
        return new FactTable(title, columns).Add(PassCatalogue.For(first.Model, first.Road, MeasureUse.Short), [.. passes.Select(p => p.Pass)]);
    }

    // Where left and right do the same in every column, one row per axle says it.
    private static IReadOnlyList<WheelPlace> Wheels(IReadOnlyList<(Pass Pass, PassMeasures Measures)> passes) =>
        passes.All(p => p.Measures.Wheels is [var a, var b, var c, var d] && Alike(a, b) && Alike(c, d))
            ? WheelPlace.Axles(true)
            : WheelPlace.Each(passes[0].Pass.Model.Rolls);

    private static bool Alike(WheelMeasures a, WheelMeasures b) =>
        Math.Abs(a.Bump - b.Bump) < 1e-9 && Math.Abs(a.Rebound - b.Rebound) < 1e-9 && Math.Abs(a.LeastLoad - b.LeastLoad) < 1e-3;
}
