using Heaveline.Figures;
using Heaveline.Press.Paper;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>A line of text set against a place by one of its nine anchors.</summary>
internal static class Anchored
{
    /// <summary>The room the text takes, points.</summary>
    /// <param name="text">The text.</param>
    /// <param name="place">The place.</param>
    /// <param name="anchor">Which point of the text stands there.</param>
    /// <param name="lettering">How it is set.</param>
    /// <param name="away">How far from the place it keeps, points.</param>
    public static Box RoomOf(string text, Spot place, Anchor anchor, Lettering lettering, double away)
    {
        var width = lettering.WidthOf(text);
        var slant = away * 0.7;
        var (left, centre) = anchor switch
        {
            Anchor.Left => (place.X + away, place.Y),
            Anchor.Right => (place.X - away - width, place.Y),
            Anchor.Centre => (place.X - width / 2.0, place.Y),
            Anchor.Top => (place.X - width / 2.0, place.Y + away + lettering.Size / 2.0),
            Anchor.Bottom => (place.X - width / 2.0, place.Y - away - lettering.Size / 2.0),
            Anchor.TopLeft => (place.X + slant, place.Y + slant + lettering.Size / 2.0),
            Anchor.TopRight => (place.X - slant - width, place.Y + slant + lettering.Size / 2.0),
            Anchor.BottomLeft => (place.X + slant, place.Y - slant - lettering.Size / 2.0),
            Anchor.BottomRight => (place.X - slant - width, place.Y - slant - lettering.Size / 2.0),
            _ => throw new ArgumentOutOfRangeException(nameof(anchor), anchor, "No such anchor."),
        };
        return lettering.RoomOf(text, left, centre);
    }

    /// <summary>Draws the text in a room measured before.</summary>
    public static void Draw(ISheet sheet, string text, Box room, Lettering lettering) =>
        sheet.TextCentredOn(text, room.Left, room.Centre.Y, lettering);
}
