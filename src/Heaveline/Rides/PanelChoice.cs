using Heaveline.Models;
using Heaveline.Passes;

namespace Heaveline.Rides;

/// <summary>
/// Which panels of a random ride's frequencies must be narrow: those whose halves tell another mean square than the whole, round the modes that are
/// hardly damped. They are halved until no halving changes more than its share of what the sum may leave.
/// </summary>
/// <param name="model">The car.</param>
/// <param name="ridden">The road.</param>
/// <param name="asked">The signals whose mean squares must be right.</param>
/// <param name="tolerance">Relative error of their roots that the sum may leave (–).</param>
internal sealed class PanelChoice(RideModel model, RideRoad ridden, RideSignal[] asked, double tolerance)
{
    // No panel is narrower than one of so many equal ones.
    private const int Narrowest = 512;

    /// <summary>Relative change of the root mean squares at the last halving of panels, and which panels are too wide still.</summary>
    /// <param name="panels">The panels, from slow to fast.</param>
    /// <param name="lines">The car on the road there.</param>
    /// <param name="ride">The linear car.</param>
    public (double Change, RidePanel[] Wide) Change(RidePanel[] panels, RandomLines lines, LinearRide ride)
    {
        int[] first = [.. Enumerable.Range(0, panels.Length - 1).Where(i => panels[i].Index % 2 == 0 && panels[i + 1] == panels[i].Whole.Faster)];
        var (halves, wholes) = (Sums(lines), Sums([.. first.Select(i => panels[i].Whole)], ride));
        var (change, miss) = (0.0, new double[first.Length]);
        for (var k = 0; k < asked.Length; k++)
        {
            var (all, net) = (halves[k].Sum(), 0.0);
            for (var p = 0; p < first.Length && all > 0.0; p++)
            {
                var by = 0.5 * (halves[k][first[p]] + halves[k][first[p] + 1] - wholes[k][p]) / all;
                net += by;
                miss[p] = Math.Max(miss[p], Math.Abs(by));
            }

            change = Math.Max(change, Math.Abs(net));
        }

        return (change, [.. first.Where((_, p) => IsMuch(miss[p], panels)).SelectMany(i => new[] { panels[i], panels[i + 1] }).Where(CanBeHalved)]);
    }

    /// <summary>The panels with the too wide ones halved, again and again where need be, for one linear car.</summary>
    /// <param name="panels">The panels, from slow to fast.</param>
    /// <param name="lines">The car on the road there.</param>
    /// <param name="ride">The linear car.</param>
    /// <param name="wide">Those to be halved.</param>
    /// <param name="cancellation">Stops the work.</param>
    public RidePanel[] Narrowed(RidePanel[] panels, RandomLines lines, LinearRide ride, RidePanel[] wide, CancellationToken cancellation)
    {
        var (found, own) = (new HashSet<RidePanel>(panels), Sums(lines));
        var all = Array.ConvertAll(own, sums => sums.Sum());
        var sums = Array.ConvertAll(own, of => Array.ConvertAll(wide, panel => of[Array.IndexOf(panels, panel)]));
        while (wide.Length > 0)
        {
            cancellation.ThrowIfCancellationRequested();
            RidePanel[] halves = [.. wide.SelectMany(panel => new[] { panel.Slower, panel.Faster })];
            found.ExceptWith(wide);
            found.UnionWith(halves);
            var finer = Sums(halves, ride);
            int[] next = [.. Enumerable.Range(0, halves.Length).Where(i => CanBeHalved(halves[i]) && IsMuch(Miss(i / 2), panels))];
            sums = Array.ConvertAll(finer, of => Array.ConvertAll(next, i => of[i]));
            wide = Array.ConvertAll(next, i => halves[i]);

            double Miss(int p) => Enumerable.Range(0, asked.Length)
                .Max(k => all[k] > 0.0 ? 0.5 * Math.Abs(finer[k][2 * p] + finer[k][(2 * p) + 1] - sums[k][p]) / all[k] : 0.0);
        }

        return [.. found.OrderBy(panel => (double)panel.Index / panel.Of)];
    }

    private static bool CanBeHalved(RidePanel panel) => panel.Of < Narrowest;

    private bool IsMuch(double miss, RidePanel[] panels) => miss > 0.5 * tolerance / panels.Length;

    private double[][] Sums(RandomLines lines) => Array.ConvertAll(asked, signal => lines.PanelSquares(signal));

    private double[][] Sums(RidePanel[] panels, LinearRide ride) => Sums(RandomLines.Of(model, ridden.In(panels)).Under(ride));
}
