using Heaveline.Quantities;

namespace Heaveline.Films;

/// <summary>What a person marks on one frame of a film, px; everything else is found.</summary>
public sealed record FilmMarks
{
    /// <summary>Shortest distance of the hubs, px, that is followed: below, a pixel is more than half a degree.</summary>
    public const double ShortestWheelbase = 60.0;

    /// <summary>The time of the marked frame, s since the film's first; the nearest frame is taken.</summary>
    public required double Time { get; init => field = Checked.Within(value, 0.0, 36000.0); }

    /// <summary>The front hub.</summary>
    public required PicturePoint Front { get; init; }

    /// <summary>The rear hub.</summary>
    public required PicturePoint Rear { get; init; }

    /// <summary>Upper left corner of the box round the body's side.</summary>
    public required PicturePoint BoxFrom { get; init; }

    /// <summary>Lower right corner of the box.</summary>
    public required PicturePoint BoxTo { get; init; }

    /// <summary>How far a hub's mark may be off, px: half the width of the interval that holds it nine times in ten.</summary>
    public double Doubt { get; init => field = Checked.Within(value, 0.0, 100.0); } = 2.0;

    /// <summary>Distance of the hubs, px.</summary>
    public double Wheelbase =>
        Math.Sqrt(((Front.X - Rear.X) * (Front.X - Rear.X)) + ((Front.Y - Rear.Y) * (Front.Y - Rear.Y)));

    /// <summary>Whether the car goes to the right in the picture: its front hub lies there.</summary>
    public bool GoesRight => Front.X > Rear.X;
}
