using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Passes;

/// <summary>
/// Something that is read off a moving car: y = Σ a·p + Σ b·ṗ + Σ c·p̈ with p the positions z, θ, φ, four wheels and two line flows, all from trim;
/// or the change of a tyre's load. The same reading serves transfer functions, random responses and passes in time. Signs by ISO 8855.
/// </summary>
public sealed class RideSignal
{
    internal const int Positions = 9;

    private RideSignal(string name, string unit) => (Name, Unit) = (name, unit);

    /// <summary>Vertical motion of the loaded centre of gravity, m, up.</summary>
    public static RideSignal Heave { get; } = At("heave", "m", (0, 1.0));

    /// <summary>Pitch angle, rad, nose-down.</summary>
    public static RideSignal Pitch { get; } = At("pitch", "rad", (1, 1.0));

    /// <summary>Roll angle, rad, right-side-down.</summary>
    public static RideSignal Roll { get; } = At("roll", "rad", (2, 1.0));

    /// <summary>Heave acceleration, m/s².</summary>
    public static RideSignal HeaveAcceleration { get; } = Heave.Turned("heave acceleration", "m/s²", 2);

    /// <summary>Pitch acceleration, rad/s².</summary>
    public static RideSignal PitchAcceleration { get; } = Pitch.Turned("pitch acceleration", "rad/s²", 2);

    /// <summary>Roll acceleration, rad/s².</summary>
    public static RideSignal RollAcceleration { get; } = Roll.Turned("roll acceleration", "rad/s²", 2);

    /// <summary>What it is, in words.</summary>
    public string Name { get; }

    /// <summary>Its unit.</summary>
    public string Unit { get; }

    /// <summary>a, per position.</summary>
    internal double[] Place { get; private init; } = new double[Positions];

    /// <summary>b, per rate.</summary>
    internal double[] Speed { get; private init; } = new double[Positions];

    /// <summary>c, per acceleration.</summary>
    internal double[] Acceleration { get; private init; } = new double[Positions];

    /// <summary>Per road height under each wheel.</summary>
    internal double[] RoadPlace { get; private init; } = new double[4];

    /// <summary>Per rate of the road under each wheel.</summary>
    internal double[] RoadSpeed { get; private init; } = new double[4];

    /// <summary>The corner whose tyre load it is, and how many corners make one wheel.</summary>
    internal (int Corner, double Whole)? Tyre { get; private init; }

    /// <summary>Height of a wheel centre, m.</summary>
    /// <param name="corner">0 to 3.</param>
    public static RideSignal WheelHeight(int corner) => At("wheel height", "m", (3 + Checked(corner), 1.0));

    /// <summary>Suspension travel from trim, m, bump positive.</summary>
    /// <param name="model">The car.</param>
    /// <param name="corner">0 to 3.</param>
    public static RideSignal Travel(RideModel model, int corner) =>
        At($"{CornerNames.Of(Checked(corner), model.Rolls)} travel", "m", (0, -1.0), (1, model.X[corner]), (2, -model.Y[corner]), (3 + corner, 1.0));

    /// <summary>Rate of suspension travel, m/s, bump positive.</summary>
    /// <param name="model">The car.</param>
    /// <param name="corner">0 to 3.</param>
    public static RideSignal TravelRate(RideModel model, int corner) =>
        Travel(model, corner).Turned($"{CornerNames.Of(corner, model.Rolls)} travel rate", "m/s", 1);

    /// <summary>Change of a tyre's load on the road, N; of the whole wheel for a two-wheeler.</summary>
    /// <param name="model">The car.</param>
    /// <param name="corner">0 to 3.</param>
    public static RideSignal TyreLoad(RideModel model, int corner)
    {
        var whole = model.Rolls ? 1.0 : 2.0;
        var (rate, damping) = (whole * model.Numbers.TyreRate[Checked(corner)], whole * model.Numbers.TyreDamping[corner]);
        return new RideSignal($"{CornerNames.Of(corner, model.Rolls)} tyre load", "N")
        {
            Place = Row((3 + corner, -rate)),
            Speed = Row((3 + corner, -damping)),
            RoadPlace = [.. Row((corner, rate)).Take(4)],
            RoadSpeed = [.. Row((corner, damping)).Take(4)],
            Tyre = (corner, whole),
        };
    }

    /// <summary>Height of a rigid point of the body from trim, m: z − x·θ + y·φ.</summary>
    /// <param name="model">The car.</param>
    /// <param name="behindFrontAxle">Behind the front axle, m.</param>
    /// <param name="leftOfMiddle">Left of the middle, m.</param>
    public static RideSignal BodyHeight(RideModel model, double behindFrontAxle, double leftOfMiddle) =>
        At("body height", "m", (0, 1.0), (1, behindFrontAxle - model.Body.BehindFrontAxle), (2, leftOfMiddle - model.Body.LeftOfMiddle));

    /// <summary>Vertical acceleration of a rigid point of the body, m/s²: z̈ − x·θ̈ + y·φ̈.</summary>
    /// <param name="model">The car.</param>
    /// <param name="behindFrontAxle">Behind the front axle, m.</param>
    /// <param name="leftOfMiddle">Left of the middle, m.</param>
    public static RideSignal VerticalAcceleration(RideModel model, double behindFrontAxle, double leftOfMiddle) =>
        BodyHeight(model, behindFrontAxle, leftOfMiddle).Turned("vertical acceleration", "m/s²", 2);

    /// <summary>Fore-aft specific force felt at a height above the pitch axis, m/s²: h·θ̈ − g·θ (forward positive).</summary>
    /// <param name="height">h, m.</param>
    public static RideSignal ForeAftForce(double height) => new("fore-aft specific force", "m/s²")
    {
        Place = Row((1, -Gravity.Standard)),
        Acceleration = Row((1, height)),
    };

    /// <summary>Lateral specific force felt at a height above the roll axis, m/s²: −h·φ̈ + g·φ (left positive).</summary>
    /// <param name="height">h, m.</param>
    public static RideSignal LateralForce(double height) => new("lateral specific force", "m/s²")
    {
        Place = Row((2, Gravity.Standard)),
        Acceleration = Row((2, -height)),
    };

    /// <summary>Any combination of positions or, turned, of their rates: what an element between them sees.</summary>
    internal static RideSignal Along(double[] row, int derivative = 0)
    {
        var place = new RideSignal("travel of an element", "m") { Place = row };
        return derivative == 0 ? place : place.Turned("rate of an element", "m/s", derivative);
    }

    /// <summary>The reading of one recorded sample.</summary>
    internal double Read(ReadOnlySpan<double> sample)
    {
        var sum = 0.0;
        for (var i = 0; i < Positions; i++)
        {
            sum += (Place[i] * sample[i]) + (Speed[i] * sample[Channel.Rates + i]) + (Acceleration[i] * sample[Channel.Accelerations + i]);
        }

        return sum;
    }

    private static int Checked(int corner) =>
        corner is >= 0 and < 4 ? corner : throw new ArgumentOutOfRangeException(nameof(corner), corner, "A car has corners 0 to 3.");

    private static RideSignal At(string name, string unit, params ReadOnlySpan<(int Position, double Share)> parts) =>
        new(name, unit) { Place = Row(parts) };

    private static double[] Row(params ReadOnlySpan<(int Position, double Share)> parts)
    {
        var row = new double[Positions];
        foreach (var (position, share) in parts)
        {
            row[position] = share;
        }

        return row;
    }

    // The first or second derivative of a reading of places.
    private RideSignal Turned(string name, string unit, int derivative) =>
        derivative == 1 ? new(name, unit) { Speed = Place } : new(name, unit) { Acceleration = Place };
}
