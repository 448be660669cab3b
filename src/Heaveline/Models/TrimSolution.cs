namespace Heaveline.Models;

/// <summary>
/// Raw numbers of a static equilibrium, per corner: travel from the reference state, whole suspension force, tyre load,
/// fluid gone from front to rear, line pressure.
/// </summary>
internal sealed record TrimSolution(
    double[] Travel, double[] Force, double[] Load, double[] Flow, double[] Pressure, double Heave, double Pitch, double Roll);
