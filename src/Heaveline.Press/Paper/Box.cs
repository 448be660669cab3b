namespace Heaveline.Press.Paper;

/// <summary>A rectangle on the sheet, points; y grows downwards.</summary>
internal readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    public double Width => Right - Left;

    public double Height => Bottom - Top;

    public Spot Centre => new((Left + Right) / 2.0, (Top + Bottom) / 2.0);

    public bool Overlaps(Box other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    public bool Holds(Box other) => other.Left >= Left && other.Right <= Right && other.Top >= Top && other.Bottom <= Bottom;

    public Box Grown(double by) => new(Left - by, Top - by, Right + by, Bottom + by);
}
