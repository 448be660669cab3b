using Heaveline.Camera.Frames;
using Heaveline.Quantities;

namespace Heaveline.Camera.Drawn;

/// <summary>
/// A pinhole camera at the roadside: x along the road, y up, z from the camera over the road. It stands at one place and turns: after the car, and
/// as a hand does.
/// </summary>
internal sealed record DrawnCamera
{
    /// <summary>Width of the picture, px.</summary>
    public int Width { get; init; } = 1920;

    /// <summary>Height of the picture, px.</summary>
    public int Height { get; init; } = 1080;

    /// <summary>Angle from the left to the right edge, rad: a phone's main lens.</summary>
    public double FieldOfView { get; init; } = In.Degrees.ToSi(69.0);

    /// <summary>Distance of the car's side from the camera, square to the road, m.</summary>
    public double Distance { get; init; } = 20.0;

    /// <summary>Height of the lens above the road, m.</summary>
    public double Eye { get; init; } = 1.2;

    /// <summary>Place along the road that the middle of the picture shows, m behind the hump's foot.</summary>
    public double LooksAt { get; init; } = 5.0;

    /// <summary>How far the camera looks aslant along the road, rad.</summary>
    public double Slant { get; init; }

    /// <summary>Share of the car's way that the camera turns after it.</summary>
    public double Pan { get; init; }

    /// <summary>Shake of a hand, px.</summary>
    public double Shake { get; init; }

    /// <summary>Whether the car goes to the left.</summary>
    public bool Leftwards { get; init; }

    /// <summary>How long a frame is exposed, s.</summary>
    public double Exposure { get; init; } = 1.0 / 250.0;

    /// <summary>Time from reading the first row to reading the last, s.</summary>
    public double Readout { get; init; }

    /// <summary>Standard deviation of the noise of a pixel, of 255.</summary>
    public double Noise { get; init; } = 3.0;

    /// <summary>Time from one row to the next, s.</summary>
    public double RowTime => Readout / Height;

    /// <summary>Focal length, px.</summary>
    public double Focal => Width / 2.0 / Math.Tan(FieldOfView / 2.0);

    /// <summary>Size of a metre of the car in the middle of the picture, px.</summary>
    public double Scale => Focal / Distance * Math.Cos(Slant);

    private double Side => Leftwards ? -1.0 : 1.0;

    private (double X, double Y) Middle => ((Width - 1) / 2.0, (Height - 1) / 2.0);

    /// <summary>How a plane is seen by the camera that does not turn.</summary>
    /// <param name="origin">A point of the plane, m.</param>
    /// <param name="first">Its first direction.</param>
    /// <param name="second">Its second direction.</param>
    public Homography Still((double X, double Y, double Z) origin, (double X, double Y, double Z) first, (double X, double Y, double Z) second)
    {
        var (u, v) = (Turned(Side * first.X, first.Y, first.Z), Turned(Side * second.X, second.Y, second.Z));
        var o = Turned((Side * (origin.X - LooksAt)) + (Distance * Math.Tan(Slant)), origin.Y - Eye, origin.Z);
        return Lens().After(new Homography(u.X, v.X, o.X, u.Y, v.Y, o.Y, u.Z, v.Z, o.Z));
    }

    /// <summary>What the camera's turning does to the picture of the one that does not turn.</summary>
    /// <param name="time">The instant, s.</param>
    /// <param name="car">Place of the car's middle along the road, m.</param>
    public Homography Turning(double time, double car)
    {
        var pan = Pan * (Math.Atan2((Side * (car - LooksAt)) + (Distance * Math.Tan(Slant)), Distance) - Slant);
        double Wave(double hertz, double phase) => Math.Sin((2.0 * Math.PI * hertz * time) + phase);
        var yaw = pan + (Shake / Focal * (Wave(1.3, 0.0) + (0.5 * Wave(3.1, 1.0)) + (0.1 * Wave(9.0, 2.0))));
        var tilt = Shake / Focal * (Wave(1.1, 1.6) + (0.4 * Wave(2.7, 0.0)) + (0.1 * Wave(8.3, 1.0)));
        var roll = 0.5 * Shake / Focal * (Wave(0.9, 0.5) + (0.4 * Wave(2.3, 2.2)));
        if (yaw == 0.0 && tilt == 0.0 && roll == 0.0)
        {
            return Homography.None;
        }

        var ((sy, cy), (st, ct), (sr, cr)) = (Math.SinCos(yaw), Math.SinCos(tilt), Math.SinCos(roll));
        var turn = new Homography(cr, sr, 0, -sr, cr, 0, 0, 0, 1)
            .After(new Homography(1, 0, 0, 0, ct, -st, 0, st, ct))
            .After(new Homography(cy, 0, -sy, 0, 1, 0, sy, 0, cy));
        return Lens().After(turn).After(Back());
    }

    // x right, y up, z ahead of the lens.
    private (double X, double Y, double Z) Turned(double x, double y, double z)
    {
        var (sin, cos) = Math.SinCos(Slant);
        return ((x * cos) - (z * sin), y, (x * sin) + (z * cos));
    }

    private Homography Lens() => new(Focal, 0, Middle.X, 0, -Focal, Middle.Y, 0, 0, 1);

    private Homography Back() => new(1 / Focal, 0, -Middle.X / Focal, 0, -1 / Focal, Middle.Y / Focal, 0, 0, 1);
}
