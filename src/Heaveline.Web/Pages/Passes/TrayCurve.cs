using System.Globalization;
using System.Text;
using Heaveline.Figures;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Passes;

/// <summary>The pitch of a crossing over time as a small line: no axes, its scale shared by all that stand beside it.</summary>
internal static class TrayCurve
{
    /// <summary>Width of the box that it is drawn in.</summary>
    public const double Width = 120.0;

    /// <summary>Height of that box, level in its middle.</summary>
    public const double Height = 46.0;

    private const string Pitch = "pitch";

    /// <summary>The pitch of a crossing; null where it broke off at once.</summary>
    /// <param name="crossing">The crossing.</param>
    public static Trace? Of(PassAnswer crossing) => crossing.Pass.Count > 1
        ? PassPanels.Of(crossing.Pass, crossing.Measures).OfType<ChartPanel>().FirstOrDefault(panel => panel.Id == Pitch)?.Traces[^1]
        : null;

    /// <summary>The greatest height of some curves, either way.</summary>
    public static double Most(IEnumerable<Trace?> curves) =>
        curves.OfType<Trace>().SelectMany(curve => curve.Ys).Select(Math.Abs).Where(double.IsFinite).DefaultIfEmpty(1.0).Max();

    /// <summary>The points of a line as browsers take them; empty for none.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="from">Time at the left edge.</param>
    /// <param name="to">Time at the right edge.</param>
    /// <param name="most">Height at the edges above and below.</param>
    public static string Points(Trace? curve, double from, double to, double most)
    {
        if (curve is null || !(to > from) || !(most > 0.0))
        {
            return "";
        }

        var thin = ThinCurve.Of(curve, to);
        var text = new StringBuilder();
        for (var i = 0; i < thin.Xs.Length; i++)
        {
            if (thin.Xs[i] >= from && thin.Xs[i] <= to && double.IsFinite(thin.Ys[i]))
            {
                text.Append(CultureInfo.InvariantCulture, $"{Width * (thin.Xs[i] - from) / (to - from):0.#},")
                    .Append(CultureInfo.InvariantCulture, $"{0.5 * Height * (1.0 - (0.94 * thin.Ys[i] / most)):0.#} ");
            }
        }

        return text.ToString().TrimEnd();
    }
}
