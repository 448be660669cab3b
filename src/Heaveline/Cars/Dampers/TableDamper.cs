using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>Force against velocity at the damper, bump and rebound apart: straight lines through (0, 0), extended with the end slopes.</summary>
public sealed record TableDamper : DamperLaw
{
    /// <summary>Makes a damper table.</summary>
    /// <param name="bump">Force (N) against closing velocity (m/s), both above zero and rising; (0, 0) is added.</param>
    /// <param name="rebound">
    /// Force (N) against opening velocity (m/s), both above zero and rising; (0, 0) is added. Under the same factor: one rig measured both.
    /// </param>
    /// <exception cref="RefusedValueException">A side that is not positive, or unequal factors.</exception>
    public TableDamper(ForceTable bump, ForceTable rebound)
    {
        Bump = Side(bump, "bump");
        Rebound = Side(rebound, "rebound");
        Whole = new ForceTable(
            [.. Rebound.At.Reverse().Select(v => -v), 0.0, .. Bump.At],
            [.. Rebound.Force.Reverse().Select(f => -f), 0.0, .. Bump.Force],
            Bump.Factor == Rebound.Factor
                ? Bump.Factor
                : throw new RefusedValueException(
                    "rebound table",
                    $"under a factor of {Rebound.Factor}",
                    $"under that of the bump table, {Bump.Factor}",
                    "One rig measures both sides."));
    }

    /// <summary>Bump side without the zero.</summary>
    public ForceTable Bump { get; }

    /// <summary>Rebound side without the zero, as positive numbers.</summary>
    public ForceTable Rebound { get; }

    /// <summary>Both sides and the zero: closing velocity and force positive.</summary>
    public ForceTable Whole { get; }

    /// <summary>Common factor that is in every force of both sides (–), with the doubt of the rig.</summary>
    public Amount<Plain> Factor => Whole.Factor;

    /// <summary>The damper as it is under another factor, both sides alike.</summary>
    /// <param name="factor">The factor (–), above 0, with its doubt.</param>
    public TableDamper Under(Amount<Plain> factor) => factor == Factor ? this : new(Bump.Under(factor), Rebound.Under(factor));

    private static ForceTable Side(ForceTable side, string name)
    {
        var skip = side.At[0] == 0.0 && side.Force[0] == 0.0 ? 1 : 0;
        if (side.At.Count - skip < 2 && skip == 1)
        {
            // One measured point is a straight line through zero: a second point on it keeps the table's form.
            return new ForceTable([side.At[1], 2.0 * side.At[1]], [side.Force[1], 2.0 * side.Force[1]], side.Factor);
        }

        return side.At[skip] > 0.0 && side.Force[skip] >= 0.0
            ? new ForceTable([.. side.At.Skip(skip)], [.. side.Force.Skip(skip)], side.Factor)
            : throw new RefusedValueException(
                $"{name} table",
                $"starting at {side.At[skip]:G4} m/s, {side.Force[skip]:G4} N",
                "positive velocities and forces",
                "Write rebound as positive numbers too; the zero point is added.");
    }
}
