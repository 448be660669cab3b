using Heaveline.Models;

namespace Heaveline.Rides;

/// <summary>
/// A car that is alike on both sides, made linear about its trim, as the numbers of one of its halves: what a search changes and a
/// <see cref="RideSpectrum"/> evaluates. Change a copy with <c>with</c>.
/// </summary>
public readonly record struct SymmetricRide
{
    /// <summary>Half the sprung mass, kg.</summary>
    public double Mass { get; init; }

    /// <summary>Half the pitch inertia, kg m².</summary>
    public double PitchInertia { get; init; }

    /// <summary>Half the roll inertia, kg m².</summary>
    public double RollInertia { get; init; }

    /// <summary>Half of gravity's tilting moment per pitch, N m/rad.</summary>
    public double PitchGravity { get; init; }

    /// <summary>Half of gravity's tilting moment per roll, N m/rad.</summary>
    public double RollGravity { get; init; }

    /// <summary>Front axle.</summary>
    public SymmetricAxle Front { get; init; }

    /// <summary>Rear axle.</summary>
    public SymmetricAxle Rear { get; init; }

    /// <summary>Force at a front wheel per travel of the rear wheel of its side, N/m: an interconnection, any fluid held still.</summary>
    public double Link { get; init; }

    /// <summary>Force at a front wheel per rate of travel of the rear wheel of its side, N s/m: a common damper.</summary>
    public double LinkDamping { get; init; }

    /// <summary>Inertance of a fluid line, kg/m⁴; 0 without.</summary>
    public double LineInertance { get; init; }

    /// <summary>Resistance of a fluid line without inertance, Pa s/m³; 0 without such a line.</summary>
    public double LineResistance { get; init; }

    /// <summary>
    /// Acceleration of a line's flow per travel of the front and rear wheel and per flow and its rate (all signs as in the equations).
    /// Without inertance the rate of the flow, with −1 in the place of what it takes per rate.
    /// </summary>
    internal (double Front, double Rear, double Flow, double FlowRate) Line { get; init; }

    /// <summary>Whether the model rolls.</summary>
    public bool Rolls { get; init; }

    /// <summary>Whether anything joins front and rear.</summary>
    public bool IsLinked => Link != 0.0 || LinkDamping != 0.0 || LineInertance > 0.0 || LineResistance > 0.0;

    /// <summary>The car's numbers, or null when its sides are not alike: then <see cref="OneSidedRide"/> has them.</summary>
    /// <param name="model">Car and load at trim.</param>
    public static SymmetricRide? From(RideModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return IsAlike(model) ? Of(model, 0) : null;
    }

    /// <summary>The mean of both sides of any car.</summary>
    /// <param name="model">Car and load at trim.</param>
    internal static SymmetricRide MeanOf(RideModel model) => Of(model, 1);

    /// <summary>The fluid line of one side, 0 left, 1 right; all nought without.</summary>
    internal static (double Front, double Rear, double Flow, double FlowRate) LineOf(RideModel model, int side)
    {
        if (model.Numbers.Elements.Line is null)
        {
            return default;
        }

        var (q, places, speeds) = (7 + side, model.Tangent.ByPlace, model.Tangent.BySpeed);
        return (places[q, 3 + side], places[q, 5 + side], places[q, q], speeds[q, q]);
    }

    // The mean of the left side and another: the left itself where both are alike to rounding.
    private static SymmetricRide Of(RideModel model, int other)
    {
        var (n, tangent) = (model.Numbers, model.Tangent);
        var line = n.Elements.Line;
        return new SymmetricRide
        {
            Mass = 0.5 * n.Body.Mass,
            PitchInertia = 0.5 * n.Body.PitchInertia,
            RollInertia = 0.5 * n.Body.RollInertia,
            PitchGravity = 0.5 * n.PitchGravity,
            RollGravity = 0.5 * n.RollGravity,
            Front = AxleOf(model, 0, other),
            Rear = AxleOf(model, 2, other),
            Link = 0.5 * (tangent.SuspensionRate[0, 2] + tangent.SuspensionRate[other, 2 + other]),
            LinkDamping = 0.5 * (tangent.SuspensionDamping[0, 2] + tangent.SuspensionDamping[other, 2 + other]),
            LineInertance = line?.Inertance ?? 0.0,
            LineResistance = line is { Resists: true } ? line.Resistance : 0.0,
            Line = Mean(LineOf(model, 0), LineOf(model, other)),
            Rolls = n.Rolls,
        };
    }

    private static (double Front, double Rear, double Flow, double FlowRate) Mean(
        (double Front, double Rear, double Flow, double FlowRate) a, (double Front, double Rear, double Flow, double FlowRate) b) =>
        (0.5 * (a.Front + b.Front), 0.5 * (a.Rear + b.Rear), 0.5 * (a.Flow + b.Flow), 0.5 * (a.FlowRate + b.FlowRate));

    private static SymmetricAxle AxleOf(RideModel model, int i, int other)
    {
        var (n, rate, damping) = (model.Numbers, model.Tangent.SuspensionRate, model.Tangent.SuspensionDamping);
        var (own, resistance) = (0.5 * (rate[i, i] + rate[i + other, i + other]), 0.5 * (damping[i, i] + damping[i + other, i + other]));
        return new SymmetricAxle
        {
            X = n.X[i],
            Y = other == 0 ? n.Y[i] : 0.5 * (n.Y[i] - n.Y[i + 1]),
            Rate = own + rate[i, i + 1],
            RollRate = own - rate[i, i + 1],
            Damping = resistance + damping[i, i + 1],
            RollDamping = resistance - damping[i, i + 1],
            HopMass = 1.0 / (n.PerWheel[i] + n.AcrossAxle[i]),
            TrampMass = 1.0 / (n.PerWheel[i] - n.AcrossAxle[i]),
            TyreRate = n.TyreRate[i],
            TyreDamping = n.TyreDamping[i],
        };
    }

    // Left and right differ by less than rounding: in weight, and so in trim, tangent and places.
    private static bool IsAlike(RideModel model)
    {
        const double Rounding = 1e-12;
        var (n, rate, damping) = (model.Numbers, model.Tangent.SuspensionRate, model.Tangent.SuspensionDamping);
        bool Same(double a, double b, double scale) => Math.Abs(a - b) <= Rounding * scale;
        var scale = Enumerable.Range(0, 4).Max(i => rate[i, i]);
        var resistance = Enumerable.Range(0, 4).Max(i => damping[i, i]);
        return Same(n.Body.LeftOfMiddle, 0.0, 1.0)
            && Same(n.Body.InertiaProduct, 0.0, n.Body.PitchInertia)
            && Enumerable.Range(0, 4).All(i => Enumerable.Range(0, 4).All(j =>
                Same(rate[i, j], rate[i ^ 1, j ^ 1], 100.0 * scale) && Same(damping[i, j], damping[i ^ 1, j ^ 1], 100.0 * resistance)));
    }
}
