using Heaveline.Press.Paper;

namespace Heaveline.Press.Curves;

/// <summary>A curve with gaps where boxes lie over it: the line behind a number.</summary>
internal static class CutOut
{
    /// <summary>The runs outside all boxes.</summary>
    public static List<Spot[]> Of(Spot[] curve, IReadOnlyList<Box> boxes)
    {
        List<Spot[]> runs = [curve];
        foreach (var box in boxes)
        {
            runs = [.. runs.SelectMany(run => Outside(run, box))];
        }

        return runs;
    }

    private static IEnumerable<Spot[]> Outside(Spot[] curve, Box box)
    {
        var run = new List<Spot> { curve[0] };
        for (var i = 1; i < curve.Length; i++)
        {
            // A step of no length on the rim of the box cuts nothing.
            if (Clipped.Of([curve[i - 1], curve[i]], box) is [var inside] && inside[0] != inside[1])
            {
                if (inside[0] != run[^1])
                {
                    run.Add(inside[0]);
                }

                if (run.Count > 1)
                {
                    yield return [.. run];
                }

                run = [inside[1]];
            }

            if (curve[i] != run[^1])
            {
                run.Add(curve[i]);
            }
        }

        if (run.Count > 1)
        {
            yield return [.. run];
        }
    }
}
