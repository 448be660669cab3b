using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>
/// A round anti-roll bar with rigid arms: its link rate for opposed ends is 2·G·J/(L·R²); bending of arms and bushes makes a real one softer.
/// </summary>
public sealed record AntiRollBarDimensions
{
    /// <summary>Bar diameter d, m.</summary>
    public required Amount<Length> Diameter { get; init => field = Checked.Positive(value, "Diameter of the middle part."); }

    /// <summary>Length of the part that twists L, m.</summary>
    public required Amount<Length> Length { get; init => field = Checked.Positive(value, "Between the arms."); }

    /// <summary>Arm R, m, square to the bar.</summary>
    public required Amount<Length> Arm { get; init => field = Checked.Positive(value, "Square distance from the bar's axis to the link."); }

    /// <summary>Link travel per wheel travel K (–).</summary>
    public Amount<Plain> MotionRatio { get; init => field = Checked.Within(value, 0.01, 2.0, "Link travel divided by wheel travel."); } = new(1.0);

    /// <summary>Shear modulus G, Pa. Default 79.3 GPa.</summary>
    public Amount<Pressure> ShearModulus { get; init => field = Checked.Positive(value, "79.3 GPa for spring steel."); } = new(79.3e9);

    /// <summary>Force of one link per its own travel when the other goes as far the other way, N/m.</summary>
    public double OpposedLinkRate => 2.0 * ShearModulus.Si * Math.PI * Math.Pow(Diameter.Si, 4) / 32.0 / (Length.Si * Arm.Si * Arm.Si);

    /// <summary>Rate k of F_left = k·(s_left − s_right) at the wheel, N/m: half the opposed link rate times K².</summary>
    public double WheelRate => OpposedLinkRate / 2.0 * MotionRatio.Si * MotionRatio.Si;
}
