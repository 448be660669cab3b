namespace Heaveline.Cars;

/// <summary>
/// A spring's force against its own travel x, compression positive, counted from where it stands in the reference state.
/// What it carries there is given by the scales; a law may only say how the force changes from it.
/// </summary>
public abstract record SpringLaw
{
    /// <summary>Rate dF/dx at the reference state under a static force, N/m.</summary>
    /// <param name="carried">Force the spring carries in the reference state, N.</param>
    public abstract double RateAtReference(double carried);

    /// <summary>Force at travel x, N, when it carries <paramref name="carried"/> at x = 0.</summary>
    /// <param name="travel">x, m, compression positive.</param>
    /// <param name="carried">Force in the reference state, N.</param>
    public abstract double ForceAt(double travel, double carried);

    /// <summary>Travels x at which the slope jumps, m, rising; empty for a smooth law.</summary>
    /// <param name="carried">Force in the reference state, N.</param>
    public virtual IReadOnlyList<double> KinksAt(double carried) => [];

    /// <summary>
    /// Mean rate over all that the law was stated for, N/m: by it one spring is softer than another. Null where it has none by itself.
    /// </summary>
    internal virtual double? MeanRate => null;

    /// <summary>Whether the force is a straight line between its kinks.</summary>
    public virtual bool IsPiecewiseLinear => true;
}
