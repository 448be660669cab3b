namespace Heaveline.Doubts;

/// <summary>Where a number lies with a stated probability.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct DoubtInterval(double Low, double High)
{
    /// <summary>Whether a value lies inside, ends included.</summary>
    public bool Holds(double value) => value >= Low && value <= High;
}
