namespace Heaveline.Elements;

/// <summary>The acceleration of free fall that turns masses into weights.</summary>
public static class Gravity
{
    /// <summary>Standard acceleration of free fall, m/s² (CGPM 1901).</summary>
    public const double Standard = 9.80665;
}
