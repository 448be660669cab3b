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
    public IReadOnlyList<Law> OnTravel { get; init; } = [];

    /// <summary>Laws of its own velocity.</summary>
    public IReadOnlyList<Law> OnRate { get; init; } = [];

    /// <summary>Friction in it, or null.</summary>
    public Slider? Slider { get; init; }

    /// <summary>Wheel travel at which it touches, m; null for what always acts.</summary>
    public double? Touch { get; init; }

    /// <summary>Least and greatest wheel travel at its corner that it allows, m.</summary>
    public (double Least, double Most) Limits { get; init; } = (double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>Least and greatest s over which means are taken.</summary>
    public (double Least, double Most) Range { get; init; } = (double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>How much of its law's slope each of the four wheels feels where a run's step is chosen (–), per slope of the element.</summary>
    public required IReadOnlyList<double> Felt { get; init; }

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
    public double Stiffest => Steepest(OnTravel) + (Slider?.Rate ?? 0.0);

    /// <summary>Greatest slope over speed.</summary>
    public double MostDamped => Steepest(OnRate);

    /// <summary>Force at s and ṡ with friction at the middle of its band.</summary>
    public T Force<T>(T sight, T rate)
        where T : unmanaged, ILane<T>
    {
        var ratio = Ratio.At(sight);
        return ratio * (OwnForce(OnTravel, Ratio.Travel(sight)) + OwnForce(OnRate, ratio * rate));
    }

    /// <summary>Force, rate and damping at rest at s.</summary>
    public ElementMean AtRest(double sight)
    {
        var s = new DualLane(sight, 1.0);
        var ratio = Ratio.At(s);
        var own = OwnForce(OnTravel, Ratio.Travel(s));
        if (OnRate.Count == 0)
        {
            own = ratio * own;
            return new(own.Value, own.Slope, 0.0);
        }

        var moving = OwnForce(OnRate, new DualLane(0.0, ratio.Value));
        var still = ratio * (own + DualLane.Of(moving.Value));
        return new(still.Value, still.Slope, ratio.Value * moving.Slope);
    }

    /// <summary>What its laws of travel give at its own travel.</summary>
    public double OwnForceAt(double travel) => OwnForce(OnTravel, new ScalarLane(travel)).Value;

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
        var (force, rate) = Ratio.Varies || OnTravel.Any(law => law.Bends)
            ? Gaussian.Of(Standing, sight, deviation, breaks, Range.Least, Range.Most)
            : Standing(sight);
        var damped = Damped(sight, deviation, speed);
        return new(force + damped.Force, rate + damped.Rate, damped.Damping + (Slider?.MeanDamping(speed) ?? 0.0));
    }

    private static double Steepest(IReadOnlyList<Law> laws)
    {
        var slope = 0.0;
        for (var k = 0; k < laws.Count; k++)
        {
            slope += laws[k].Steepest;
        }

        return slope;
    }

    private static T OwnForce<T>(IReadOnlyList<Law> laws, T x)
        where T : unmanaged, ILane<T>
    {
        var force = T.Of(0.0);
        for (var k = 0; k < laws.Count; k++)
        {
            force += laws[k].Force(x);
        }

        return force;
    }

    // Force and slope of the laws of travel.
    private (double, double) Standing(double sight)
    {
        var s = new DualLane(sight, 1.0);
        var force = Ratio.At(s) * OwnForce(OnTravel, Ratio.Travel(s));
        return (force.Value, force.Slope);
    }

    // Where the ratio varies with travel the mean over the travel follows, and the equivalent rate by parts, E[∂F/∂s] = E[(s − μ)·F]/σ².
    private ElementMean Damped(double sight, double deviation, double speed)
    {
        if (OnRate.Count == 0)
        {
            return default;
        }

        if (!Ratio.Varies)
        {
            var (force, damping) = Damped(Ratio.AtReference, speed);
            return new(force, 0.0, damping);
        }

        var scatter = Math.Max(deviation, LeastScatter);
        double RatioAt(double s) => Ratio.At(new ScalarLane(s)).Value;
        var (mean, equivalent) = Gaussian.Of(s => Damped(RatioAt(s), speed), sight, scatter, [], double.NegativeInfinity, double.PositiveInfinity);
        var (byParts, _) = Gaussian.Of(
            s => ((s - sight) * Damped(RatioAt(s), speed).Force, 0.0), sight, scatter, [], double.NegativeInfinity, double.PositiveInfinity);
        return new(mean, byParts / (scatter * scatter), equivalent);
    }

    // Means of the laws of velocity at one ratio.
    private (double Force, double Damping) Damped(double ratio, double speed)
    {
        var (force, damping) = (0.0, 0.0);
        foreach (var law in OnRate)
        {
            var (mean, slope) = law.Mean(0.0, ratio * speed);
            force += ratio * mean;
            damping += ratio * ratio * slope;
        }

        return (force, damping);
    }
}
