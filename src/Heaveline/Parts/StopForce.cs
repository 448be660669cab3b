using Heaveline.Cars;

namespace Heaveline.Parts;

/// <summary>Force of a stop against how far it is pressed, both ways.</summary>
internal static class StopForce
{
    // F = C·pᵉ is scaled at 10 mm: see Stop.Exponent.
    private const double Scaled = 0.010;

    /// <summary>Force, N, of a stop pressed by a travel, m; 0 where it is not.</summary>
    public static double At(Stop stop, double pressed) => pressed <= 0.0 ? 0.0
        : stop.Table is { } table ? table.ForceAt(pressed)
        : stop.Rate!.Value.Si * Scaled * Math.Pow(pressed / Scaled, stop.Exponent.Si);

    /// <summary>How far a force presses a stop, m; without end where its table never gives as much.</summary>
    public static double PressedBy(Stop stop, double force)
    {
        if (force <= 0.0)
        {
            return 0.0;
        }

        var pressed = stop.Table is { } table
            ? table.AtForce(force)
            : Scaled * Math.Pow(force / (stop.Rate!.Value.Si * Scaled), 1.0 / stop.Exponent.Si);
        return double.IsNaN(pressed) ? double.PositiveInfinity : pressed;
    }
}
