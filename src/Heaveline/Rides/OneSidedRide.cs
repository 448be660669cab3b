using Heaveline.Models;

namespace Heaveline.Rides;

/// <summary>
/// Any car, made linear about its trim, as numbers that a <see cref="RideSpectrum"/> evaluates: the mean of its two sides, and what left and right
/// differ by. A driver alone makes heave, pitch and roll one motion: the centre of gravity lies off the middle, the body has a product of inertia,
/// and springs that bend stand at other rates. Change a copy with <c>with</c>.
/// </summary>
public readonly record struct OneSidedRide
{
    /// <summary>The mean of both sides, places from the middle of the car: the car alike on both sides that this one is nearest to.</summary>
    public SymmetricRide Mean { get; init; }

    /// <summary>Centre of gravity of the sprung body left of the middle, m.</summary>
    public double LeftOfMiddle { get; init; }

    /// <summary>Half the product of inertia Σ m·x·y of the sprung body, kg m²; x forwards and y to the left of its centre of gravity.</summary>
    public double InertiaProduct { get; init; }

    /// <summary>What the front wheels differ by.</summary>
    public OneSidedAxle Front { get; init; }

    /// <summary>What the rear wheels differ by.</summary>
    public OneSidedAxle Rear { get; init; }

    /// <summary>Half the left side's <see cref="SymmetricRide.Link"/> less the right one's, N/m.</summary>
    public double Link { get; init; }

    /// <summary>Half the left side's <see cref="SymmetricRide.LinkDamping"/> less the right one's, N s/m.</summary>
    public double LinkDamping { get; init; }

    /// <summary>The fluid line of each side, as <see cref="SymmetricRide.Line"/>.</summary>
    internal (double Front, double Rear, double Flow, double FlowRate) LeftLine { get; init; }

    /// <summary>The same on the right.</summary>
    internal (double Front, double Rear, double Flow, double FlowRate) RightLine { get; init; }

    /// <summary>Whether left and right differ at all.</summary>
    public bool IsOneSided => LeftOfMiddle != 0.0 || InertiaProduct != 0.0 || Link != 0.0 || LinkDamping != 0.0 || LeftLine != RightLine
        || Front != default || Rear != default;

    /// <summary>The car's numbers; of a car alike on both sides those of <see cref="SymmetricRide.From"/> and no difference.</summary>
    /// <param name="model">Car and load at trim.</param>
    public static OneSidedRide From(RideModel model)
    {
        if (SymmetricRide.From(model) is { } even)
        {
            return new OneSidedRide { Mean = even, LeftLine = even.Line, RightLine = even.Line };
        }

        var (n, rate, damping) = (model.Numbers, model.Tangent.SuspensionRate, model.Tangent.SuspensionDamping);
        var (left, right) = (SymmetricRide.LineOf(model, 0), SymmetricRide.LineOf(model, 1));
        return new OneSidedRide
        {
            Mean = SymmetricRide.MeanOf(model),
            LeftOfMiddle = n.Body.LeftOfMiddle,
            InertiaProduct = 0.5 * n.Body.InertiaProduct,
            Front = AxleOf(0),
            Rear = AxleOf(2),
            Link = 0.5 * (rate[0, 2] - rate[1, 3]),
            LinkDamping = 0.5 * (damping[0, 2] - damping[1, 3]),
            LeftLine = left,
            RightLine = right,
        };

        OneSidedAxle AxleOf(int i) => new()
        {
            Rate = 0.5 * (rate[i, i] - rate[i + 1, i + 1]), Damping = 0.5 * (damping[i, i] - damping[i + 1, i + 1]),
        };
    }
}
