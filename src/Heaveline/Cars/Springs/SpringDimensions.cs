namespace Heaveline.Cars;

/// <summary>What a spring is made of, kept beside the rate that was worked out from it, so that its stress can be told.</summary>
public abstract record SpringDimensions
{
    /// <summary>Rate, N/m, at the place where the force acts.</summary>
    public abstract double Rate { get; }

    /// <summary>Which stress it is that counts ("shear", "bending").</summary>
    public abstract string StressKind { get; }

    /// <summary>Largest stress under a force, Pa.</summary>
    /// <param name="force">Force on the spring, N.</param>
    public abstract double StressUnder(double force);
}
