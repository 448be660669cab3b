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
        IReadOnlyList<Pass> all = [.. passes.Select(p => p.Pass)];
        return new FactTable(title, columns).Add(PassCatalogue.For(first.Model, first.Road, MeasureUse.Short).Select(m => Named(m, all)), all);
    }

    // The worst seat by its name, where it is the same one in every column: it may be an empty one.
    private static Measure<Pass> Named(Measure<Pass> measure, IReadOnlyList<Pass> passes)
    {
        var (key, name) = (SeatPlace.Worst.Key + "-", SeatPlace.Worst.Name);
        if (!measure.Key.StartsWith(key, StringComparison.Ordinal))
        {
            return measure;
        }

        double At(string seat, Pass pass) =>
            SeatCatalogue.Of(SeatPlace.Of(seat)).First(m => m.Key.EndsWith(measure.Key[key.Length..], StringComparison.Ordinal)).Of(pass);
        var worst = passes.Select(pass => pass.Model.Car.Seats.Select(s => s.Name).MaxBy(seat => At(seat, pass))).Distinct().ToList();
        return worst is [{ } seat] ? measure with { Label = measure.Label.Replace(name, $"{name} ({seat})", StringComparison.Ordinal) } : measure;
    }

    // Where left and right do the same in every column, one row per axle says it.
    private static IReadOnlyList<WheelPlace> Wheels(IReadOnlyList<(Pass Pass, PassMeasures Measures)> passes) =>
        passes.All(p => p.Measures.Wheels is [var a, var b, var c, var d] && Alike(a, b) && Alike(c, d))
            ? WheelPlace.Axles(true)
            : WheelPlace.Each(passes[0].Pass.Model.Rolls);

    private static bool Alike(WheelMeasures a, WheelMeasures b) =>
        Math.Abs(a.Bump - b.Bump) < 1e-9 && Math.Abs(a.Rebound - b.Rebound) < 1e-9 && Math.Abs(a.LeastLoad - b.LeastLoad) < 1e-3;
}
