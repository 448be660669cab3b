using Heaveline.Figures;

namespace Heaveline.Web.Pages.Passes;

/// <summary>Curves with no more points than a screen shows: of every stretch its lowest and its highest point, so that no peak is lost.</summary>
internal static class ThinCurve
{
    /// <summary>Most points of a curve.</summary>
    public const int Most = 400;

    /// <summary>The curve, thinned within a span of x.</summary>
    /// <param name="trace">The curve, its x rising.</param>
    /// <param name="to">Nothing is kept past this x.</param>
    public static Trace Of(Trace trace, double to)
    {
        var xs = trace.Xs.AsSpan();
        var ys = trace.Ys.AsSpan();
        var count = xs.Length;
        while (count > 2 && xs[count - 2] > to)
        {
            count--;
        }

        if (count <= Most)
        {
            return count == xs.Length ? trace : Trace.From(trace.Name, xs[..count], ys[..count], trace.Pen);
        }

        const int Stretches = (Most / 2) - 1;
        var (thinX, thinY) = (new List<double>(Most) { xs[0] }, new List<double>(Most) { ys[0] });
        for (var i = 0; i < Stretches; i++)
        {
            var (from, end) = (1 + (int)((long)i * (count - 2) / Stretches), 1 + (int)((long)(i + 1) * (count - 2) / Stretches));
            var (low, high) = (from, from);
            for (var k = from; k < end; k++)
            {
                low = ys[k] < ys[low] ? k : low;
                high = ys[k] > ys[high] ? k : high;
            }

            foreach (var k in low == high ? [low] : low < high ? new[] { low, high } : [high, low])
            {
                thinX.Add(xs[k]);
                thinY.Add(ys[k]);
            }
        }

        thinX.Add(xs[count - 1]);
        thinY.Add(ys[count - 1]);
        return Trace.From(trace.Name, [.. thinX], [.. thinY], trace.Pen);
    }
}
