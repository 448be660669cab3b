namespace Heaveline.Elements;

/// <summary>The line of each side through which fluid flows: I·q̈ + R·q̇ = p_f − p_r, or R·q̇ = p_f − p_r without inertance.</summary>
/// <param name="Inertance">I, kg/m⁴; 0 for a line that only resists.</param>
/// <param name="Resistance">R, Pa s/m³; above 0 without inertance.</param>
internal sealed record SideLine(double Inertance, double Resistance)
{
    /// <summary>Whether the flow follows the pressures at once, one state less on each side.</summary>
    public bool Resists => Inertance == 0.0;

    /// <summary>What the pressures are divided by in the flow's own equation: I, or R without inertance.</summary>
    public double Scale => Resists ? Resistance : Inertance;
}
