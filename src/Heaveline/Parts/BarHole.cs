using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>One of the holes in which a bar's links can be hung.</summary>
/// <param name="Name">Which ("inner").</param>
/// <param name="WheelRate">Rate k of F_left = k·(s_left − s_right) at the wheel, N/m, with the links hung there. 0 or above.</param>
public sealed record BarHole(string Name, Amount<Stiffness> WheelRate)
{
    /// <summary>Which.</summary>
    public string Name { get; init; } = Checked.NotBlank(Name, "Give the hole a name: inner, middle, outer.", "hole");

    /// <summary>Rate at the wheel.</summary>
    public Amount<Stiffness> WheelRate { get; init; } = Checked.NotNegative(WheelRate, "A bar has a rate of 0 or above.", "wheel rate");
}
