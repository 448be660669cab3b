using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Quantities;

namespace Heaveline.Models;

/// <summary>
/// A car under one load state, standing at its trim and ready to move: the full seven-degree-of-freedom model (heave, pitch, roll, four wheels). A
/// two-wheeler is the same model with both halves in one plane, so that it heaves and pitches only.
/// </summary>
/// <remarks>
/// Tangent and trim in words of their own are worked out when they are first asked for: a car among many that are only run has neither.
/// </remarks>
public sealed class RideModel
{
    private readonly TrimSolution standing;

    private RideModel(Car car, LoadState load, RideNumbers numbers, TrimSolution trim)
    {
        Car = car;
        Load = load;
        Numbers = numbers;
        standing = trim;
    }

    /// <summary>The car.</summary>
    public Car Car { get; }

    /// <summary>What is in it.</summary>
    public LoadState Load { get; }

    /// <summary>How it stands.</summary>
    public Trim Trim => field ??= Trim.From(Numbers, standing, Tangent.WheelRate);

    /// <summary>Small motions about the trim.</summary>
    public Tangent Tangent => field ??= Tangent.Of(Numbers);

    /// <summary>The loaded sprung body.</summary>
    public SprungBody Body => Numbers.Body;

    /// <summary>Corner places ahead of the loaded centre of gravity, m: front left, front right, rear left, rear right.</summary>
    public IReadOnlyList<double> X => Numbers.X;

    /// <summary>Corner places left of the loaded centre of gravity, m.</summary>
    public IReadOnlyList<double> Y => Numbers.Y;

    /// <summary>Whether the model rolls: a two-wheeler does not.</summary>
    public bool Rolls => Numbers.Rolls;

    /// <summary>Whether an exact event-driven run is possible: every law is straight between its kinks.</summary>
    public bool IsPiecewiseLinear => Numbers.Elements.IsPiecewiseStraight;

    /// <summary>Gravity's tilting moment per pitch, M·g·h_θ, N m/rad; 0 when no pitch axis height is given.</summary>
    public double PitchGravity => Numbers.PitchGravity;

    /// <summary>Gravity's tilting moment per roll, M·g·h_φ, N m/rad; 0 when no roll axis height is given.</summary>
    public double RollGravity => Numbers.RollGravity;

    /// <summary>Travel from the reference state at which the bump stop touches, m, per corner; infinite without a stop.</summary>
    public IReadOnlyList<double> BumpTouch => Numbers.Elements.BumpTouch;

    /// <summary>Travel from the reference state at which the rebound stop touches, m (negative), per corner.</summary>
    public IReadOnlyList<double> ReboundTouch => Numbers.Elements.ReboundTouch;

    internal RideNumbers Numbers { get; }

    /// <summary>The model of a car under a load state.</summary>
    /// <exception cref="RefusedValueException">The car cannot stand as described: it would tip, bottom or hang on a spring.</exception>
    public static RideModel Of(Car car, LoadState? load = null)
    {
        load ??= LoadState.Reference;
        var body = SprungBody.Of(car).With(load);
        var numbers = RideNumbers.Static(car, body, CarElements.Of(car));
        var trim = TrimSolver.Solve(car, load, numbers);
        return new RideModel(car, load, numbers.About(trim), trim);
    }

    /// <summary>The model of numbers about a trim that is another car's: its own <see cref="Trim"/> is not asked for.</summary>
    internal static RideModel About(Car car, LoadState load, RideNumbers numbers) =>
        new(car, load, numbers, new(numbers.TrimTravel, numbers.TrimForce, numbers.TrimLoad, numbers.TrimFlow, [], 0.0, 0.0, 0.0));
}
