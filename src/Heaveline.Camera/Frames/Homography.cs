namespace Heaveline.Camera.Frames;

/// <summary>How a plane is seen in a picture: three rows of a matrix that takes (a, b, 1) to (x·w, y·w, w).</summary>
internal readonly record struct Homography(
    double A, double B, double C,
    double D, double E, double F,
    double G, double H, double I)
{
    /// <summary>First the other, then this.</summary>
    public Homography After(Homography o) => new(
        (A * o.A) + (B * o.D) + (C * o.G), (A * o.B) + (B * o.E) + (C * o.H), (A * o.C) + (B * o.F) + (C * o.I),
        (D * o.A) + (E * o.D) + (F * o.G), (D * o.B) + (E * o.E) + (F * o.H), (D * o.C) + (E * o.F) + (F * o.I),
        (G * o.A) + (H * o.D) + (I * o.G), (G * o.B) + (H * o.E) + (I * o.H), (G * o.C) + (H * o.F) + (I * o.I));

    /// <summary>The same picture seen from another corner.</summary>
    /// <param name="x">To the right of the old corner, px.</param>
    /// <param name="y">Below the old corner, px.</param>
    public Homography From(double x, double y) => new Homography(1, 0, -x, 0, 1, -y, 0, 0, 1).After(this);

    /// <summary>Where a point of the plane is seen.</summary>
    public (double X, double Y) Of(double a, double b)
    {
        var w = (G * a) + (H * b) + I;
        return (((A * a) + (B * b) + C) / w, ((D * a) + (E * b) + F) / w);
    }

    /// <summary>What leaves everything where it is.</summary>
    public static Homography None { get; } = new(1, 0, 0, 0, 1, 0, 0, 0, 1);

    /// <summary>The way back, but for the size of w.</summary>
    public Homography Back() => new(
        (E * I) - (F * H), (C * H) - (B * I), (B * F) - (C * E),
        (F * G) - (D * I), (A * I) - (C * G), (C * D) - (A * F),
        (D * H) - (E * G), (B * G) - (A * H), (A * E) - (B * D));

    /// <summary>The same of a picture in which every length is so many times as long.</summary>
    public Homography Sized(double by) => new(A, B, C * by, D, E, F * by, G / by, H / by, I);

    /// <summary>How far a point is moved, to the side or up and down, whichever is more, px.</summary>
    public double Moves(double x, double y)
    {
        var (u, v) = Of(x, y);
        return Math.Max(Math.Abs(u - x), Math.Abs(v - y));
    }

    /// <summary>As OpenCV takes it; whoever asks lets go of it.</summary>
    public Mat ToMat() => Mat.FromPixelData(3, 3, MatType.CV_64FC1, new[] { A, B, C, D, E, F, G, H, I }).Clone();
}
