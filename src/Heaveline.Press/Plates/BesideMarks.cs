using Heaveline.Figures;
using Heaveline.Press.Curves;
using Heaveline.Press.Paper;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>
/// Finds a place for the label of each mark: beside its symbol, inside the plot, off the other labels and symbols, off the curves where it can.
/// </summary>
internal static class BesideMarks
{
    private static readonly Anchor[] Tried =
    [
        Anchor.Left, Anchor.Right, Anchor.BottomLeft, Anchor.TopLeft, Anchor.BottomRight, Anchor.TopRight, Anchor.Bottom, Anchor.Top,
    ];

    /// <summary>The room of each label, in the order given.</summary>
    /// <param name="marks">Place and label of each mark; a blank label takes no room.</param>
    /// <param name="curves">The runs of points the labels should keep off.</param>
    /// <param name="plot">The box the labels should stay in.</param>
    /// <param name="lettering">How they are set.</param>
    /// <param name="occupied">Rooms taken already.</param>
    /// <param name="broken">Lines that are broken where a label stands: better kept off, but not at the price of a curve.</param>
    public static Box[] Of(
        IReadOnlyList<(Spot At, string Label)> marks,
        IReadOnlyList<Spot[]> curves,
        Box plot,
        Lettering lettering,
        IEnumerable<Box> occupied,
        IReadOnlyList<Spot[]>? broken = null)
    {
        List<Box> taken = [.. occupied, .. marks.Select(mark => new Box(mark.At.X, mark.At.Y, mark.At.X, mark.At.Y).Grown(Symbols.Reach))];
        var rooms = new Box[marks.Count];
        for (var i = 0; i < marks.Count; i++)
        {
            if (marks[i].Label.Length == 0)
            {
                continue;
            }

            // Farther out on the next rings: a crowded label then still stands free, at the price of distance.
            rooms[i] = (from away in new[] { 4.2, 9.0, 15.0, 20.0 }
                        from anchor in Tried
                        let room = Anchored.RoomOf(marks[i].Label, marks[i].At, anchor, lettering, away)
                        orderby Price(room, away, curves, broken ?? [], plot, taken)
                        select room).First();
            taken.Add(rooms[i]);
        }

        return rooms;
    }

    // LINQ's ordering is stable, so that equal prices go to the anchor tried first.
    private static double Price(Box room, double away, IReadOnlyList<Spot[]> curves, IReadOnlyList<Spot[]> broken, Box plot, List<Box> taken)
    {
        var price = plot.Holds(room) ? 0.0 : 1000.0;
        price += 1000.0 * taken.Count(room.Overlaps);
        price += (30.0 * curves.Count(curve => Crosses(curve, room))) + (2.0 * broken.Count(line => Crosses(line, room)));
        return price + (away > 5.0 ? away : 0.0);
    }

    private static bool Crosses(Spot[] curve, Box room) => Clipped.Of(curve, room.Grown(1.2)).Count > 0;
}
