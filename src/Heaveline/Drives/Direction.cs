namespace Heaveline.Drives;

/// <summary>A direction along the axes of the phone; of length 1 where it names an axis of the car.</summary>
/// <param name="X">Along the phone's first axis.</param>
/// <param name="Y">Along its second.</param>
/// <param name="Z">Along its third.</param>
public readonly record struct Direction(double X, double Y, double Z)
{
    /// <summary>Its length.</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y) + (Z * Z));

    /// <summary>The same direction, of length 1.</summary>
    public Direction Unit => this * (1.0 / Length);

    /// <summary>Scaled.</summary>
    public static Direction operator *(Direction a, double by) => new(a.X * by, a.Y * by, a.Z * by);

    /// <summary>The sum.</summary>
    public static Direction operator +(Direction a, Direction b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>The difference.</summary>
    public static Direction operator -(Direction a, Direction b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The inner product.</summary>
    public double Dot(Direction other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>The outer product, right-handed.</summary>
    public Direction Cross(Direction other) =>
        new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));

    /// <summary>The angle to another direction, rad.</summary>
    public double AngleTo(Direction other) => Math.Atan2(Cross(other).Length, Dot(other));
}
