namespace Heaveline.Quantities;

/// <summary>
/// How far a measured value may be off: the half-width of the interval that holds the true value 19 times out of 20
/// (two standard deviations of a normal error, as the GUM's expanded uncertainty with k = 2).
/// </summary>
/// <param name="HalfWidth">Half-width in SI units, 0 for "not stated".</param>
/// <param name="Shared">
/// Name of the instrument or guess that several values share ("scale A"); their errors move together. Null when the error is the value's own.
/// </param>
/// <param name="OfOneCar">
/// Whether that name means something within one car only: one reading behind two values, or a rule by which a car is guessed. An instrument is off
/// for every car that it measured.
/// </param>
public readonly record struct Doubt(double HalfWidth, string? Shared = null, bool OfOneCar = false)
{
    /// <summary>One standard deviation in SI units.</summary>
    public double StandardDeviation => HalfWidth / 2.0;

    /// <summary>Whether a doubt was stated at all.</summary>
    public bool IsStated => HalfWidth > 0.0;
}
