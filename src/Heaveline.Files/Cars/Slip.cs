using Heaveline.Files.Yaml;

namespace Heaveline.Files.Cars;

/// <summary>A slip of the pen that would explain an axle that rides at an odd frequency.</summary>
/// <param name="At">Where it would have been made.</param>
/// <param name="Words">What it is ("the motion ratio upside down").</param>
/// <param name="RateFactor">Right wheel rate over the one that was read (–).</param>
/// <param name="MassFactor">Right sprung mass over the one that was read (–).</param>
internal sealed record Slip(Node? At, string Words, double RateFactor, double MassFactor)
{
    /// <summary>Whether the value as written is such that the slip may have happened.</summary>
    public bool IsConceivable { get; init; } = true;
}
