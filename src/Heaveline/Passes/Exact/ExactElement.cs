namespace Heaveline.Passes.Exact;

/// <summary>
/// One spring, damper or stop. Its signal (travel or velocity, change from trim) is <see cref="Row"/> times the coordinates or their rates; by
/// virtual work its force F adds −row·F to the generalised forces.
/// </summary>
/// <param name="Name">Its name in words ("front left damper").</param>
/// <param name="Row">Change of the signal per coordinate.</param>
/// <param name="OnRates">Whether the signal is a velocity.</param>
/// <param name="Law">Force over the signal.</param>
internal sealed record ExactElement(string Name, double[] Row, bool OnRates, ExactLaw Law)
{
    /// <summary>
    /// How far past a border the signal goes before the piece changes, m or m/s. Neighbouring pieces overlap by twice that, so that rounding cannot
    /// throw the run to and fro; the force misses by its slope times it, 1e-8 N.
    /// </summary>
    public double Margin => OnRates ? 1e-12 : 1e-14;
}
