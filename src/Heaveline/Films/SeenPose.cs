namespace Heaveline.Films;

/// <summary>
/// How something stiff has moved in the picture since the marked frame: a point p of the marked frame lies at
/// pivot + shift + scale · R(turn) · (p − pivot), R = [cos −sin; sin cos] in x to the right and y down, so a positive turn is clockwise as seen.
/// </summary>
public sealed record SeenPose
{
    /// <summary>Shift of the pivot to the right, px.</summary>
    public required double X { get; init; }

    /// <summary>Shift of the pivot down, px.</summary>
    public required double Y { get; init; }

    /// <summary>Turn, clockwise as seen, rad.</summary>
    public required double Turn { get; init; }

    /// <summary>Size beside that of the marked frame.</summary>
    public double Scale { get; init; } = 1.0;

    /// <summary>Standard deviation of each shift from frame to frame, px.</summary>
    public double ShiftDoubt { get; init; }

    /// <summary>Standard deviation of the turn from frame to frame, rad.</summary>
    public double TurnDoubt { get; init; }

    /// <summary>Points that were followed and move as one.</summary>
    public int Kept { get; init; }

    /// <summary>Points that were lost, or do not move as the others do.</summary>
    public int Dropped { get; init; }

    /// <summary>Where a point of the marked frame lies now.</summary>
    /// <param name="p">The point in the marked frame.</param>
    /// <param name="pivot">The pivot.</param>
    public PicturePoint Of(PicturePoint p, PicturePoint pivot)
    {
        var (sin, cos) = Math.SinCos(Turn);
        var (x, y) = (p.X - pivot.X, p.Y - pivot.Y);
        return new PicturePoint(pivot.X + X + (Scale * ((cos * x) - (sin * y))), pivot.Y + Y + (Scale * ((sin * x) + (cos * y))));
    }

    /// <summary>Where a point of this frame lay in the marked one.</summary>
    /// <param name="p">The point in this frame.</param>
    /// <param name="pivot">The pivot.</param>
    public PicturePoint Back(PicturePoint p, PicturePoint pivot)
    {
        var (sin, cos) = Math.SinCos(Turn);
        var (x, y) = ((p.X - pivot.X - X) / Scale, (p.Y - pivot.Y - Y) / Scale);
        return new PicturePoint(pivot.X + (cos * x) + (sin * y), pivot.Y - (sin * x) + (cos * y));
    }
}
