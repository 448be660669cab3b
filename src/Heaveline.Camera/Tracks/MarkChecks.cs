using System.Globalization;
using Heaveline.Camera.Frames;
using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>Whether what was marked can be what it says.</summary>
internal static class MarkChecks
{
    /// <summary>Refuses marks that lie outside, on each other, or on a car that is not whole in the picture.</summary>
    /// <exception cref="FilmRefusedException">Why.</exception>
    public static void Of(FilmMarks marks, int width, int height)
    {
        foreach (var (name, p) in new[] { ("front hub", marks.Front), ("rear hub", marks.Rear) })
        {
            if (!(p.X >= 0.0 && p.Y >= 0.0 && p.X <= width - 1 && p.Y <= height - 1))
            {
                throw new FilmRefusedException(
                    string.Create(CultureInfo.InvariantCulture,
                        $"The {name} is marked at {p.X:F0}, {p.Y:F0}, outside the picture of {width} × {height} pixels."),
                    "Mark it where it is seen, in pixels of the film itself.");
            }
        }

        var wheelbase = marks.Wheelbase;
        if (wheelbase < FilmMarks.ShortestWheelbase)
        {
            throw new FilmRefusedException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The hubs are marked {wheelbase:F0} pixels apart, at least {FilmMarks.ShortestWheelbase:F0} are needed."),
                wheelbase < 1.0 ? "Mark the front hub and the rear one, not one of them twice." : "Film nearer, or with more pixels.");
        }

        var (from, to) = (marks.BoxFrom, marks.BoxTo);
        if (to.X - from.X < 0.5 * wheelbase || to.Y - from.Y < 0.1 * wheelbase)
        {
            throw new FilmRefusedException("The box round the body's side is too small.",
                "Draw it from the tail to the nose and from the roof to the sill.");
        }

        if (from.X < 1.0 || from.Y < 1.0 || to.X > width - 2.0 || to.Y > height - 2.0)
        {
            throw new FilmRefusedException(
                "The box round the body's side reaches the picture's edge: the car is not whole in view in the marked frame.",
                "Mark a frame in which the whole car is seen; where there is none, stand further back.");
        }

        // A box above the wheels may end short of them.
        var (left, right) = (Math.Min(marks.Front.X, marks.Rear.X), Math.Max(marks.Front.X, marks.Rear.X));
        if (Math.Min(right, to.X) - Math.Max(left, from.X) < 0.5 * (right - left))
        {
            throw new FilmRefusedException("A hub is marked beside the box round the body's side.",
                "Draw the box round the car whose hubs are marked.");
        }
    }
}
