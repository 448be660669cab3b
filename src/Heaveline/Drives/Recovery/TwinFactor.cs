namespace Heaveline.Drives.Recovery;

/// <summary>By what a thing of the car file must be multiplied so that it moves as the drive did.</summary>
/// <param name="Scale">The thing.</param>
/// <param name="Factor">The factor, 90 % (–).</param>
/// <param name="Learned">What share of the doubt beforehand the drive took away (–).</param>
/// <param name="Reason">Why the drive cannot tell it; blank where it can.</param>
public sealed record TwinFactor(TwinScale Scale, Bracket Factor, double Learned, string Reason)
{
    /// <summary>Whether it is said.</summary>
    public bool IsSaid => Reason.Length == 0;
}
