using Heaveline.Numerics;

namespace Heaveline.Elements;

/// <summary>A force over one number: an element's own travel x, or its velocity. What every solver asks of a law stands here.</summary>
internal abstract class Law
{
    /// <summary>What it is in words when it is not straight between its corners ("gas spring"); null when it is.</summary>
    public abstract string? Curved { get; }

    /// <summary>Whether it is more than one straight line.</summary>
    public abstract bool Bends { get; }

    /// <summary>The greatest slope that a run must reckon with: what keeps its step short.</summary>
    public abstract double Steepest { get; }

    /// <summary>Where it is not smooth, or begins steeply: means over it are taken from one of these to the next.</summary>
    public abstract IEnumerable<double> Breaks { get; }

    /// <summary>The force, N (Pa in a volume).</summary>
    public abstract T Force<T>(T x)
        where T : unmanaged, ILane<T>;

    /// <summary>Means of force and slope over a normal x that stays between low and high.</summary>
    public abstract (double Force, double Slope) Mean(double mean, double deviation, double low, double high);

    /// <summary>Shows itself to a solver that treats each kind of law in a way of its own.</summary>
    public abstract TResult ReadBy<TResult>(ILawReader<TResult> reader);
}
