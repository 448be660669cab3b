using Heaveline.Press.Colours;
using Heaveline.Press.Curves;
using Heaveline.Press.Paper;

namespace Heaveline.Press.Plates;

/// <summary>
/// Bands of a map as nested outlines, filled from the largest to the smallest. Each level is outlined once and painted over the one around it,
/// so that no seam shows between bands in any format, and a file grows with the lines of the map, not with its cells.
/// </summary>
internal static class MapShading
{
    // Where noise breaks a map into thousands of specks, the smallest are left out, so that a file stays below 400 kB; a smooth map of ten
    // levels needs a third of this. An element costs about as much as so many points.
    private const int MostPoints = 7000, ElementAsPoints = 4;

    /// <summary>Fills the bands; what has no value stays white.</summary>
    public static void Draw(ISheet sheet, ContourField field, MapScale scale)
    {
        double[] levels = [double.NegativeInfinity, .. scale.Levels.Select(scale.Inner)];
        var loops = from level in Enumerable.Range(0, levels.Length)
                    from loop in field.Regions(levels[level])
                    where loop.Area > 0.02
                    orderby loop.Area descending, loop.IsHole, loop.IsHole ? -level : level
                    select (loop, level);
        var points = 0;
        foreach (var (loop, level) in loops)
        {
            if (points > MostPoints)
            {
                break;
            }

            var corners = Thinned.Of(loop.Corners);
            points += corners.Length + ElementAsPoints;
            var band = loop.IsHole ? level - 1 : level;
            sheet.Area(corners, band < 0 ? Colour.White : scale.ShadeOf(band));
        }
    }

    /// <summary>Draws the lines of all levels, with gaps behind the boxes.</summary>
    public static void DrawLines(ISheet sheet, IEnumerable<MapLine> lines, MapScale scale, IReadOnlyList<Box> gaps)
    {
        foreach (var level in lines.GroupBy(line => line.Level).OrderBy(level => level.Key))
        {
            sheet.Lines([.. level.SelectMany(line => CutOut.Of(line.Way, gaps))], scale.LineOf(scale.Levels[level.Key]));
        }
    }

    /// <summary>The lines of all levels, thinned, the longest first.</summary>
    public static List<MapLine> Lines(ContourField field, MapScale scale)
    {
        var all = from level in Enumerable.Range(0, scale.Levels.Length)
                  from way in field.Lines(scale.Inner(scale.Levels[level]))
                  let line = new MapLine(level, Thinned.Of(way))
                  where line.Length > 1.0
                  orderby line.Length descending
                  select line;
        var points = 0;
        return [.. all.TakeWhile(line => (points += line.Way.Length + ElementAsPoints) <= MostPoints + line.Way.Length + ElementAsPoints)];
    }

    /// <summary>Slanting lines over the places that satisfy a condition, 45°, none under the boxes.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="box">Where to look.</param>
    /// <param name="stroke">The line.</param>
    /// <param name="apart">From line to line along x, points.</param>
    /// <param name="falls">Whether the lines fall to the right.</param>
    /// <param name="gaps">Boxes left free.</param>
    /// <param name="belongs">The condition.</param>
    public static void Hatch(ISheet sheet, Box box, Stroke stroke, double apart, bool falls, IReadOnlyList<Box> gaps, Func<Spot, bool> belongs)
    {
        const double Step = 0.5, Shortest = 1.8;
        var runs = new List<Spot[]>();
        for (var c = box.Left - box.Height + (apart / 2.0); c < box.Right; c += apart)
        {
            Spot At(double t) => new(c + t, falls ? box.Top + t : box.Bottom - t);
            var (first, last) = (Math.Max(0.0, box.Left - c), Math.Min(box.Height, box.Right - c));
            double? since = null;
            for (var t = first; t <= last + Step; t += Step)
            {
                var inside = t <= last && belongs(At(t));
                if (inside && since is null)
                {
                    since = t;
                }
                else if (!inside && since is { } start)
                {
                    if (t - start > Shortest)
                    {
                        runs.AddRange(CutOut.Of([At(start), At(t - Step)], gaps));
                    }

                    since = null;
                }
            }
        }

        sheet.Lines(runs, stroke);
    }
}
