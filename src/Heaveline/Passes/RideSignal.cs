using Heaveline.Elements;
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

    private static readonly double[] Nothing = new double[Positions];
    private static readonly double[] Level = new double[4];

    private readonly Part[] parts;

    private RideSignal(string name, string unit, params Part[] parts)
    {
        (Name, Unit, this.parts) = (name, unit, parts);
        (Place, Speed, Acceleration) = (Row(0), Row(1), Row(2));
        FromTrim = SampleReading.Of([.. parts.Select(part => (Start(part.Derivative) + part.Position, part.Share))]);

        double[] Row(int derivative)
        {
            if (Array.TrueForAll(parts, part => part.Derivative != derivative))
            {
                return Nothing;
            }

            var row = new double[Positions];
            foreach (var part in parts.Where(part => part.Derivative == derivative))
            {
                row[part.Position] = part.Share;
            }

            return row;
        }
    }

    /// <summary>Vertical motion of the loaded centre of gravity, m, up.</summary>
    public static RideSignal Heave { get; } = new("heave", "m", new Part(0, 1.0));

    /// <summary>Pitch angle, rad, nose-down.</summary>
    public static RideSignal Pitch { get; } = new("pitch", "rad", new Part(1, 1.0));

    /// <summary>Roll angle, rad, right-side-down.</summary>
    public static RideSignal Roll { get; } = new("roll", "rad", new Part(2, 1.0));

    /// <summary>Pitch rate, rad/s.</summary>
    public static RideSignal PitchRate { get; } = Pitch.Turned("pitch rate", "rad/s", 1);

    /// <summary>Roll rate, rad/s.</summary>
    public static RideSignal RollRate { get; } = Roll.Turned("roll rate", "rad/s", 1);

    /// <summary>Heave acceleration, m/s².</summary>
    public static RideSignal HeaveAcceleration { get; } = Heave.Turned("heave acceleration", "m/s²", 2);

    /// <summary>Pitch acceleration, rad/s².</summary>
    public static RideSignal PitchAcceleration { get; } = Pitch.Turned("pitch acceleration", "rad/s²", 2);

    /// <summary>Roll acceleration, rad/s².</summary>
    public static RideSignal RollAcceleration { get; } = Roll.Turned("roll acceleration", "rad/s²", 2);

    /// <summary>
    /// What it reads at trim, which the signal itself is counted from: a wheel's travel from the reference state, a tyre's load; 0 of all others.
    /// </summary>
    public double AtTrim { get; private init; }

    /// <summary>Which number of a trim that is, travels of the wheels, forces, loads, and its share; null where it is none.</summary>
    internal (int Place, double Share)? Standing { get; private init; }

    /// <summary>What it is, in words.</summary>
    public string Name { get; }

    /// <summary>Its unit.</summary>
    public string Unit { get; }

    /// <summary>a, per position.</summary>
    internal double[] Place { get; }

    /// <summary>b, per rate.</summary>
    internal double[] Speed { get; }

    /// <summary>c, per acceleration.</summary>
    internal double[] Acceleration { get; }

    /// <summary>Per road height under each wheel.</summary>
    internal double[] RoadPlace { get; private init; } = Level;

    /// <summary>Per rate of the road under each wheel.</summary>
    internal double[] RoadSpeed { get; private init; } = Level;

    /// <summary>How it is read off a recorded sample, from trim.</summary>
    internal SampleReading FromTrim { get; private init; }

    /// <summary>The same with what it reads at trim.</summary>
    internal SampleReading Whole => FromTrim.From(AtTrim);

    /// <summary>Height of a wheel centre, m.</summary>
    /// <param name="corner">0 to 3.</param>
    public static RideSignal WheelHeight(int corner) => new("wheel height", "m", new Part(3 + Checked(corner), 1.0));

    /// <summary>Suspension travel from trim, m, bump positive.</summary>
    /// <param name="model">The car.</param>
    /// <param name="corner">0 to 3.</param>
    public static RideSignal Travel(RideModel model, int corner) =>
        new(
            $"{CornerNames.Of(Checked(corner), model.Rolls)} travel",
            "m",
            new(3 + corner, 1.0), new(0, -1.0), new(1, model.X[corner]), new(2, -model.Y[corner]))
        {
            AtTrim = model.Numbers.TrimTravel[corner],
            Standing = (corner, 1.0),
        };

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
        return new RideSignal($"{CornerNames.Of(corner, model.Rolls)} tyre load", "N", new(3 + corner, -rate), new(3 + corner, -damping, 1))
        {
            RoadPlace = AtWheel(rate),
            RoadSpeed = AtWheel(damping),
            // The record has the load itself, with its lift-off.
            FromTrim = SampleReading.Of((Channel.Tyre + corner, whole)),
            AtTrim = whole * model.Numbers.TrimLoad[corner],
            Standing = (8 + corner, whole),
        };

        double[] AtWheel(double share)
        {
            var row = new double[4];
            row[corner] = share;
            return row;
        }
    }

    /// <summary>Height of a rigid point of the body from trim, m: z − x·θ + y·φ.</summary>
    /// <param name="model">The car.</param>
    /// <param name="behindFrontAxle">Behind the front axle, m.</param>
    /// <param name="leftOfMiddle">Left of the middle, m.</param>
    public static RideSignal BodyHeight(RideModel model, double behindFrontAxle, double leftOfMiddle) =>
        new(
            "body height",
            "m",
            new(0, 1.0), new(1, behindFrontAxle - model.Body.BehindFrontAxle), new(2, leftOfMiddle - model.Body.LeftOfMiddle));

    /// <summary>Vertical acceleration of a rigid point of the body, m/s²: z̈ − x·θ̈ + y·φ̈.</summary>
    /// <param name="model">The car.</param>
    /// <param name="behindFrontAxle">Behind the front axle, m.</param>
    /// <param name="leftOfMiddle">Left of the middle, m.</param>
    public static RideSignal VerticalAcceleration(RideModel model, double behindFrontAxle, double leftOfMiddle) =>
        BodyHeight(model, behindFrontAxle, leftOfMiddle).Turned("vertical acceleration", "m/s²", 2);

    /// <summary>Fore-aft specific force felt at a height above the pitch axis, m/s²: h·θ̈ − g·θ (forward positive).</summary>
    /// <param name="height">h, m.</param>
    public static RideSignal ForeAftForce(double height) =>
        new("fore-aft specific force", "m/s²", new(1, height, 2), new(1, -Gravity.Standard));

    /// <summary>Lateral specific force felt at a height above the roll axis, m/s²: −h·φ̈ + g·φ (left positive).</summary>
    /// <param name="height">h, m.</param>
    public static RideSignal LateralForce(double height) =>
        new("lateral specific force", "m/s²", new(2, -height, 2), new(2, Gravity.Standard));

    /// <summary>Any combination of positions or, turned, of their rates: what an element between them sees.</summary>
    internal static RideSignal Along(double[] row, int derivative = 0)
    {
        var place = new RideSignal(
            "travel of an element", "m", [.. row.Index().Where(at => at.Item != 0.0).Select(at => new Part(at.Index, at.Item))]);
        return derivative == 0 ? place : place.Turned("rate of an element", "m/s", derivative);
    }

    private static int Checked(int corner) =>
        corner is >= 0 and < 4 ? corner : throw new ArgumentOutOfRangeException(nameof(corner), corner, "A car has corners 0 to 3.");

    private static int Start(int derivative) => derivative switch { 0 => 0, 1 => Channel.Rates, _ => Channel.Accelerations };

    // The first or second derivative of a reading of places.
    private RideSignal Turned(string name, string unit, int derivative) =>
        new(name, unit, Array.ConvertAll(parts, part => part with { Derivative = derivative }));

    // A share of a position, or of its first or second derivative.
    private readonly record struct Part(int Position, double Share, int Derivative = 0);
}
