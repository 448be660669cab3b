using Heaveline.Quantities;

namespace Heaveline.Tuning;

/// <summary>
/// How far a kit's parts may be off what was designed, each a half-width that 19 of 20 parts keep, as every doubt here: rates of springs, forces of
/// dampers, heights at which an end stands.
/// </summary>
/// <param name="Springs">Of a spring's rate (–).</param>
/// <param name="Dampers">Of all forces of a damper (–).</param>
/// <param name="Heights">Of the height over an axle, m.</param>
public sealed record KitTolerance(double Springs, double Dampers, double Heights)
{
    /// <summary>Parts exactly as designed.</summary>
    public static KitTolerance None { get; } = new(0.0, 0.0, 0.0);

    /// <summary>Of a spring's rate (–), 0 to 0.3.</summary>
    public double Springs { get; } = Checked.Within(Springs, 0.0, 0.3, "A spring that is off by a third is another spring.");

    /// <summary>Of all forces of a damper (–), 0 to 0.5.</summary>
    public double Dampers { get; } = Checked.Within(Dampers, 0.0, 0.5, "A damper that is off by half is another damper.");

    /// <summary>Of the height over an axle, m, 0 to 0.05.</summary>
    public double Heights { get; } = Checked.Within(Heights, 0.0, 0.05, "Heights that are off by more are another kit.");
}
