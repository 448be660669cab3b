using System.Runtime.Intrinsics;
using Heaveline.Numerics;

namespace Heaveline.Elements;

/// <summary>
/// One element of a car as a placed law: F = r(s)·(Σ f(x(s)) + Σ g(r(s)·ṡ)) over what it sees, s. By virtual work its force acts on each wheel and
/// each line's flow by its share of s.
/// </summary>
internal sealed record Element
{
    // Scatter put in place of none where a rate is taken by parts, m.
    private const double LeastScatter = 1e-8;

    // Arrays, whatever list they came in.
    private readonly Law[] onTravel = [];
    private readonly Law[] onRate = [];
    private readonly double[] felt = [];

    /// <summary>What it is in words ("bump stop").</summary>
    public required string Name { get; init; }

    /// <summary>What it is when it keeps a run's step short.</summary>
    public required StepCause Cause { get; init; }

    /// <summary>The corner at which it stands, 0 to 3; of what joins two, the first.</summary>
    public required int Corner { get; init; }

    /// <summary>What it sees.</summary>
    public required Sight Sight { get; init; }

    /// <summary>How far it moves with what it sees.</summary>
    public RatioCurve Ratio { get; init; } = RatioCurve.One;

    /// <summary>Laws of its own travel.</summary>
    public IReadOnlyList<Law> OnTravel { get => onTravel; init => onTravel = value as Law[] ?? [.. value]; }

    /// <summary>Laws of its own velocity.</summary>
    public IReadOnlyList<Law> OnRate { get => onRate; init => onRate = value as Law[] ?? [.. value]; }

    /// <summary><see cref="OnTravel"/>, not to be written to.</summary>
    public Law[] TravelLaws => onTravel;

    /// <summary><see cref="OnRate"/>, not to be written to.</summary>
    public Law[] RateLaws => onRate;

    /// <summary>Friction in it, or null.</summary>
    public Slider? Slider { get; init; }

    /// <summary>Wheel travel at which it touches, m: of a coil spring of known lengths, where it comes loose. Null for what always acts.</summary>
    public double? Touch { get; init; }

    /// <summary>Least and greatest wheel travel at its corner that it allows, m.</summary>
    public (double Least, double Most) Limits { get; init; } = (double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>Least and greatest s over which means are taken.</summary>
    public (double Least, double Most) Range { get; init; } = (double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>How much of its law's slope each of the four wheels feels where a run's step is chosen (–), per slope of the element.</summary>
    public required IReadOnlyList<double> Felt { get => felt; init => felt = value as double[] ?? [.. value]; }

    /// <summary><see cref="Felt"/> at a wheel.</summary>
    public double FeltAt(int wheel) => felt[wheel];

    /// <summary>Whether it does not feel where it stands: a damper without gas, at a ratio that does not vary.</summary>
    public bool IsBlind => onTravel.Length == 0 && !Ratio.Varies;

    /// <summary>Whether both have the same laws and the same friction, not only equal ones.</summary>
    public bool HasLawsOf(Element other) => onTravel == other.onTravel && onRate == other.onRate && Slider == other.Slider;

    /// <summary>Whether it belongs to an interconnection.</summary>
    public bool Joins => Cause == StepCause.Interconnection;

    /// <summary>Whether it is more than one straight line.</summary>
    public bool Bends => Slider is not null || Ratio.Varies || OnTravel.Any(law => law.Bends) || OnRate.Any(law => law.Bends);

    /// <summary>Its motion ratio, in words, where it varies; null where it does not.</summary>
    public string? CurvedRatio => Ratio.Varies ? $"{Name} motion ratio that varies with travel" : null;

    /// <summary>What else of it is not straight between its corners, in words.</summary>
    public IEnumerable<string> CurvedLaws
    {
        get
        {
            var laws = OnTravel.Concat(OnRate).Select(law => law.Curved).OfType<string>();
            return Slider is null ? laws : laws.Append(Slider.Words);
        }
    }

    /// <summary>Greatest slope over travel that a run must reckon with, per travel of the element.</summary>
    public double Stiffest => Steepest(onTravel) + (Slider?.Rate ?? 0.0);

    /// <summary>Greatest slope over speed.</summary>
    public double MostDamped => Steepest(onRate);

    /// <summary>Force at s and ṡ with friction at the middle of its band.</summary>
    public T Force<T>(T sight, T rate)
        where T : unmanaged, ILane<T>
    {
        var ratio = Ratio.At(sight);
        return ratio * (OwnForce(onTravel, Ratio.Travel(sight)) + OwnForce(onRate, ratio * rate));
    }

    /// <summary>Force, rate and damping at rest at s.</summary>
    public ElementMean AtRest(double sight)
    {
        var s = new DualLane(sight, 1.0);
        var ratio = Ratio.At(s);
        var own = OwnForce(onTravel, Ratio.Travel(s));
        if (onRate.Length == 0)
        {
            own = ratio * own;
            return new(own.Value, own.Slope, 0.0);
        }

        var moving = OwnForce(onRate, new DualLane(0.0, ratio.Value));
        var still = ratio * (own + DualLane.Of(moving.Value));
        return new(still.Value, still.Slope, ratio.Value * moving.Slope);
    }

    /// <summary>What its laws of travel give at its own travel.</summary>
    public double OwnForceAt(double travel) => OwnForce(onTravel, new ScalarLane(travel)).Value;

    /// <summary>Force at rest at s.</summary>
    public double StandingAt(double sight) => Force(new ScalarLane(sight), default).Value;

    /// <summary>What it sees where its laws of travel are not smooth.</summary>
    public double[] Breaks() => [.. OnTravel.SelectMany(law => law.Breaks).Select(Ratio.SightAt).Where(double.IsFinite)];

    /// <summary>Its means under a Gaussian motion.</summary>
    /// <param name="sight">Mean of s.</param>
    /// <param name="deviation">Deviation of s.</param>
    /// <param name="speed">Deviation of ṡ.</param>
    /// <param name="breaks">See <see cref="Breaks"/>.</param>
    public ElementMean Mean(double sight, double deviation, double speed, double[] breaks)
    {
        var (force, rate) = StandingMean(sight, deviation, breaks);
        var damped = MovingMean(sight, deviation, speed);
        return new(force + damped.Force, rate + damped.Rate, damped.Damping);
    }

    /// <summary>Means of its laws of travel, force and rate.</summary>
    public (double Force, double Rate) StandingMean(double sight, double deviation, double[] breaks)
    {
        if (Ratio.Varies)
        {
            return Gaussian.Of(new Wide(this), sight, deviation, breaks, Range.Least, Range.Most);
        }

        var (ratio, force, rate) = (Ratio.AtReference, 0.0, 0.0);
        foreach (var law in onTravel)
        {
            var (mean, slope) = law.Mean(ratio * sight, ratio * deviation, ratio * Range.Least, ratio * Range.Most);
            force += ratio * mean;
            rate += ratio * ratio * slope;
        }

        return (force, rate);
    }

    /// <summary>
    /// Means of its laws of velocity and of friction. Where the ratio varies with travel the mean over the travel follows, and the equivalent rate
    /// by parts, E[∂F/∂s] = E[(s − μ)·F]/σ²; where it does not, nothing depends on the travel.
    /// </summary>
    public ElementMean MovingMean(double sight, double deviation, double speed)
    {
        var rubbing = Slider?.MeanDamping(speed) ?? 0.0;
        if (onRate.Length == 0)
        {
            return new(0.0, 0.0, rubbing);
        }

        if (!Ratio.Varies)
        {
            var (force, damping) = Damped(Ratio.AtReference, speed);
            return new(force, 0.0, damping + rubbing);
        }

        var (mean, equivalent, rate) = Gaussian.OfSmooth(
            s => Damped(Ratio.At(new ScalarLane(s)).Value, speed), sight, Math.Max(deviation, LeastScatter));
        return new(mean, rate, equivalent + rubbing);
    }

    private static double Steepest(Law[] laws)
    {
        var slope = 0.0;
        foreach (var law in laws)
        {
            slope += law.Steepest;
        }

        return slope;
    }

    private static T OwnForce<T>(Law[] laws, T x)
        where T : unmanaged, ILane<T>
    {
        var force = T.Of(0.0);
        foreach (var law in laws)
        {
            // Asked by its type first: a generic method of a law is looked up at every call.
            force += law is StraightLaw straight ? straight.Force(x) : law.Force(x);
        }

        return force;
    }

    // Force and slope of the laws of travel.
    private (double, double) Standing(double sight)
    {
        var s = new DualLane(sight, 1.0);
        var force = Ratio.At(s) * OwnForce(onTravel, Ratio.Travel(s));
        return (force.Value, force.Slope);
    }

    // Means of the laws of velocity at one ratio.
    private (double Force, double Damping) Damped(double ratio, double speed)
    {
        var (force, damping) = (0.0, 0.0);
        foreach (var law in onRate)
        {
            var (mean, slope) = law.Mean(0.0, ratio * speed, double.NegativeInfinity, double.PositiveInfinity);
            force += ratio * mean;
            damping += ratio * ratio * slope;
        }

        return (force, damping);
    }

    // Force and slope of the laws of travel at eight places.
    private readonly struct Wide(Element element) : IWidePair
    {
        public (Vector512<double> Value, Vector512<double> Slope) At(Vector512<double> x)
        {
            Span<double> values = stackalloc double[Vector512<double>.Count];
            Span<double> slopes = stackalloc double[Vector512<double>.Count];
            for (var k = 0; k < values.Length; k++)
            {
                (values[k], slopes[k]) = element.Standing(x[k]);
            }

            return (Vector512.Create<double>(values), Vector512.Create<double>(slopes));
        }
    }
}
