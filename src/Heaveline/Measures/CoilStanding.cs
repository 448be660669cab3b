using Heaveline.Cars;
using Heaveline.Models;

namespace Heaveline.Measures;

/// <summary>
/// What is left of the coil springs of an axle of which lengths are known: until their coils touch in bump, until they come loose in droop. Both
/// wheels of the axle move together; of two sides that differ the worse.
/// </summary>
public sealed record CoilStanding
{
    private const double Rounding = 1e-9;

    /// <summary>Which axle.</summary>
    public required AxleEnd End { get; init; }

    /// <summary>Wheel travel from the reference state at which the coils touch, m; null when a length is not known.</summary>
    public required double? Block { get; init; }

    /// <summary>
    /// Wheel travel from the reference state at which the bump stop is solid, or touches where it has no hard end, m; null without a stop.
    /// </summary>
    public required double? FullBump { get; init; }

    /// <summary>Whether <see cref="FullBump"/> is the stop's hard end.</summary>
    public required bool EndsSolid { get; init; }

    /// <summary>Wheel travel from full bump to the coils' touching, m; below 0 they touch first.</summary>
    public double? BlockPastFullBump => Block - FullBump;

    /// <summary>Wheel travel left until the coils touch, standing under the load, m.</summary>
    public required double? BlockLeft { get; init; }

    /// <summary>
    /// Wheel travel from the reference state at which the wheels hang with the body on stands, m, negative: past the touch of a soft rebound stop,
    /// where it holds the wheel, the gas and the spring; null without a stop. A bump can take a wheel further.
    /// </summary>
    public required double? Hanging { get; init; }

    /// <summary>Wheel travel from the reference state at which the rebound stop is solid, m, negative; null where it has no hard end.</summary>
    public required double? HardDroop { get; init; }

    /// <summary>Wheel travel from the reference state below which a spring is loose, m; null where its law does not say.</summary>
    public required double? Loose { get; init; }

    /// <summary>Force of one spring where the wheels hang, N; 0 when it is loose.</summary>
    public required double? DroopForce { get; init; }

    /// <summary>How much a spring is shorter than the way between its seats where the wheels hang, m; 0 when it is pressed there.</summary>
    public required double LooseBy { get; init; }

    /// <summary>Whether a spring is loose in its seats where the wheels hang.</summary>
    public bool ComesLoose => LooseBy > Rounding;

    /// <summary>Work that one spring holds as the car stands, J; null where its law does not say where it is free.</summary>
    public required double? Energy { get; init; }

    /// <summary>Of an axle; null where nothing is said of its springs' lengths.</summary>
    /// <param name="model">The car under its load.</param>
    /// <param name="end">Which axle.</param>
    public static CoilStanding? Of(RideModel model, AxleEnd end)
    {
        ArgumentNullException.ThrowIfNull(model);
        var first = 2 * (int)end;
        if (model.Numbers.Elements.Stances[first] is null)
        {
            return null;
        }

        var axle = model.Car.Axles[(int)end];
        var hanging = HangingWheels.Of(model);
        Side[] sides = [.. (model.Rolls ? new[] { first, first + 1 } : [first]).Select(i => SideOf(model, axle, i, hanging))];
        return new CoilStanding
        {
            End = end,
            Block = sides.Min(s => s.Block),
            FullBump = axle.BumpStop is { } stop ? stop.Clearance.Si + (stop.SolidAfter?.Si ?? 0.0) : null,
            EndsSolid = axle.BumpStop?.SolidAfter is not null,
            BlockLeft = sides.Min(s => s.Block - s.Travel),
            Hanging = Known(Math.Min(hanging[first], hanging[first + 1])),
            HardDroop = axle.ReboundStop is { SolidAfter: { } after } rebound ? -(rebound.Clearance.Si + after.Si) : null,
            Loose = sides.Max(s => s.Loose),
            DroopForce = sides.Min(s => s.DroopForce),
            LooseBy = sides.Max(s => s.LooseBy),
            Energy = sides.Max(s => s.Energy),
        };
    }

    private sealed record Side(double Travel, double? Block, double? Loose, double? DroopForce, double LooseBy, double? Energy);

    private static Side SideOf(RideModel model, Axle axle, int i, double[] hanging)
    {
        var spring = model.Numbers.Elements.Springs[i];
        var stance = model.Numbers.Elements.Stances[i]!;
        // A two-wheeler's corners are halves of one spring.
        var whole = model.Rolls ? 1.0 : 2.0;
        var share = spring.Sight.Wheels[i];
        var trim = axle.Spring.MotionRatio.Travel((share * model.Trim.Travel[i]) + ((1.0 - share) * model.Trim.Travel[i ^ 1]));
        var droop = Known(axle.Spring.MotionRatio.Travel((share * hanging[i]) + ((1.0 - share) * hanging[i ^ 1])));
        return new Side(
            model.Trim.Travel[i],
            stance.BlockAt is { } block ? Known(spring.Ratio.SightAt(block)) : null,
            double.IsFinite(stance.LooseBelow) ? Known(spring.Ratio.SightAt(stance.LooseBelow)) : null,
            droop is { } x ? (x < stance.LooseBelow ? 0.0 : whole * spring.OwnForceAt(x)) : null,
            droop is { } at ? Math.Max(0.0, stance.LooseBelow - at) : 0.0,
            Work(axle.Spring.Law, whole * spring.OwnForceAt(trim)));
    }

    // ∫F dx from free to the force: triangles and trapezia between the table's rows.
    private static double? Work(SpringLaw law, double force)
    {
        if (CoilForce.Under(law, force) is not { } compression)
        {
            return null;
        }

        if (law is not TableSpring { Table: var table })
        {
            return 0.5 * force * compression;
        }

        double[] places = [.. table.At.Select(at => at - table.At[0]).Where(x => x < compression), compression];
        return places.Zip(places.Skip(1), (a, b) => 0.5 * (b - a) * (CoilForce.At(law, a) + CoilForce.At(law, b))).Sum();
    }

    private static double? Known(double travel) => double.IsFinite(travel) ? travel : null;
}
