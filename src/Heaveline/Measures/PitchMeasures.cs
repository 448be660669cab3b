using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>Pitch of a pass in numbers. Angles in rad from trim, magnitudes; of the curve through the samples.</summary>
public sealed record PitchMeasures
{
    // A two-wheeler has each of its wheels twice, on one and the same track.
    private static readonly int[] AllWheels = [0, 1, 2, 3];

    /// <summary>From the front wheels' first touch until the rear wheels have left: the hit. Null on a road without an obstacle.</summary>
    public PitchHit? Hit { get; init; }

    /// <summary>What follows. Null on a road without an obstacle.</summary>
    public PitchSettling? Settling { get; init; }

    /// <summary>Largest pitch angle of the whole pass, rad.</summary>
    public required double PeakAngle { get; init; }

    /// <summary>
    /// Root mean square pitch angle of the whole pass, rad: from t = 0; on a road without an obstacle until the rear wheels have left it.
    /// </summary>
    public required double RmsAngle { get; init; }

    /// <summary>Largest pitch acceleration, rad/s².</summary>
    public required double PeakAcceleration { get; init; }

    /// <summary>Root mean square pitch acceleration over the same time, rad/s².</summary>
    public required double RmsAcceleration { get; init; }

    /// <summary>
    /// Root mean square of half the wheelbase times the pitch over that of the heave, from t = 0 (–): 1 when the
    /// ends move as much by pitching as by heaving. Over an obstacle the heave is that above the mean road under the wheels: a change of level
    /// is none.
    /// </summary>
    public required double Share { get; init; }

    /// <summary>The numbers of a pass.</summary>
    public static PitchMeasures Of(Pass pass)
    {
        var obstacle = pass.Road.Event is not null;
        var rms = RmsAngleOf(pass);
        return new PitchMeasures
        {
            Hit = obstacle ? PitchHit.Of(pass) : null,
            Settling = obstacle ? PitchSettling.Of(pass) : null,
            PeakAngle = new Curve(pass, pass.Pitch).Peak(),
            RmsAngle = rms,
            PeakAcceleration = PeakAccelerationOf(pass),
            RmsAcceleration = RmsAccelerationOf(pass),
            Share = ShareOf(pass, rms, Window.OfPass(pass)),
        };
    }

    internal static double PeakAngleOf(Pass pass) => new Curve(pass, pass.Pitch).Peak();

    internal static double RmsAngleOf(Pass pass) => new Curve(pass, pass.Pitch).Rms(Window.OfPass(pass));

    internal static double PeakAccelerationOf(Pass pass) => new Curve(pass, pass.PitchAcceleration).Peak();

    internal static double RmsAccelerationOf(Pass pass) => new Curve(pass, pass.PitchAcceleration).Rms(Window.OfPass(pass));

    /// <summary>
    /// ½·L·θ over the heave, root mean squares in one window. A step up is no heave, so that over an obstacle the mean road under the wheels is taken
    /// off; on other roads it stays, as the road's slope stays in the pitch.
    /// </summary>
    internal static double ShareOf(Pass pass, double rmsAngle, Window window)
    {
        var part = 0.5 * pass.Model.Car.Wheelbase.Si * rmsAngle;
        var whole = (pass.Road.Event is null ? new Curve(pass, pass.Heave) : new Curve(pass, HeaveAboveRoad(pass))).Rms(window);
        return whole > 0.0 ? part / whole : 0.0;
    }

    private static double[] HeaveAboveRoad(Pass pass)
    {
        double[] above = [.. pass.Heave];
        foreach (var corner in AllWheels)
        {
            foreach (var (k, height) in pass.RoadHeight(corner).Index())
            {
                above[k] -= height / AllWheels.Length;
            }
        }

        return above;
    }
}
