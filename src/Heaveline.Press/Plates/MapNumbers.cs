using Heaveline.Press.Curves;
using Heaveline.Press.Paper;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>
/// Finds a place for the number of each contour line: on the line, off everything else, nearest the middle of the plot where lines allow.
/// </summary>
internal static class MapNumbers
{
    /// <summary>How the numbers are set.</summary>
    public static Lettering Lettering => Lettering.Tick with { Size = 6.5 };

    private const double LeastLength = 26.0, PerLevel = 2;

    /// <summary>The numbers that found a place.</summary>
    /// <param name="lines">All lines.</param>
    /// <param name="numbers">The number of each level.</param>
    /// <param name="plot">The plot.</param>
    /// <param name="taken">Rooms taken already.</param>
    /// <param name="curves">Curves over the map, which no number may touch.</param>
    public static List<(string Text, Box Room)> Of(
        IReadOnlyList<MapLine> lines, string[] numbers, Box plot, IEnumerable<Box> taken, IReadOnlyList<Spot[]> curves)
    {
        List<Box> rooms = [.. taken];
        var placed = new List<(string, Box)>();
        foreach (var level in lines.GroupBy(line => line.Level))
        {
            var longest = level.Where(line => line.Length > LeastLength).OrderByDescending(line => line.Length).Take((int)PerLevel).ToArray();
            foreach (var line in longest)
            {
                var found = (from place in line.Places(3.0)
                             let room = RoomAt(numbers[line.Level], place)
                             where plot.Grown(-2.0).Holds(room) && !rooms.Any(room.Grown(1.5).Overlaps) && !curves.Any(curve => Touches(curve, room))
                             let crossed = lines.Count(other => other != line && Touches(other.Way, room))
                             orderby crossed, Away(place, plot)
                             select (room, crossed)).FirstOrDefault((default, 9));
                if (found.crossed < 2)
                {
                    rooms.Add(found.room);
                    placed.Add((numbers[line.Level], found.room));
                }
            }
        }

        return placed;
    }

    private static Box RoomAt(string text, Spot place) => Lettering.RoomOf(text, place.X - (Lettering.WidthOf(text) / 2.0), place.Y).Grown(0.8);

    private static bool Touches(Spot[] curve, Box room) => Clipped.Of(curve, room.Grown(0.8)).Count > 0;

    private static double Away(Spot place, Box plot) =>
        (Math.Abs(place.X - plot.Centre.X) / plot.Width) + (Math.Abs(place.Y - plot.Centre.Y) / plot.Height);
}
