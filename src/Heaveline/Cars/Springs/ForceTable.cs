using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>Straight lines through measured points of force against travel or velocity, extended with the end slopes.</summary>
public sealed record ForceTable
{
    private readonly double[] places;
    private readonly double[] forces;

    /// <summary>Makes a table.</summary>
    /// <param name="at">Travel (m) or velocity (m/s), strictly rising, at least two.</param>
    /// <param name="force">Force at each, N, not falling.</param>
    /// <exception cref="RefusedValueException">Unequal lengths, fewer than two points, not rising.</exception>
    public ForceTable(IReadOnlyList<double> at, IReadOnlyList<double> force)
        : this(at, force, AsMeasured)
    {
    }

    /// <summary>Makes a table whose forces may all be off together.</summary>
    /// <param name="at">Travel (m) or velocity (m/s), strictly rising, at least two.</param>
    /// <param name="force">Force at each, N, not falling; <paramref name="factor"/> is in it.</param>
    /// <param name="factor">See <see cref="Factor"/>. Above 0.</param>
    /// <exception cref="RefusedValueException">Unequal lengths, fewer than two points, not rising, a factor that is not positive.</exception>
    public ForceTable(IReadOnlyList<double> at, IReadOnlyList<double> force, Amount<Plain> factor)
    {
        if (at.Count != force.Count || at.Count < 2)
        {
            throw new RefusedValueException(
                "table",
                $"{at.Count} and {force.Count} values",
                "two columns of equal length with at least two rows",
                "Give pairs of travel and force.");
        }

        for (var i = 0; i < at.Count; i++)
        {
            if (!double.IsFinite(at[i]) || !double.IsFinite(force[i]))
            {
                throw new RefusedValueException("table", $"row {i + 1}", "finite", "Check the row.");
            }

            if (i > 0 && !(at[i] > at[i - 1]))
            {
                throw new RefusedValueException(
                    "table", $"row {i + 1} not beyond row {i}", "strictly rising in its first column", "Sort the rows and drop repeated ones.");
            }

            if (i > 0 && force[i] < force[i - 1])
            {
                throw new RefusedValueException(
                    "table",
                    $"row {i + 1} with less force than row {i}",
                    "rising in force",
                    "A falling force is a misreading, or a damper past its range.");
            }
        }

        (places, forces) = ([.. at], [.. force]);
        (At, Force) = (Array.AsReadOnly(places), Array.AsReadOnly(forces));
        Factor = Checked.Positive(factor, "Narrow the doubt of the table: a force as wide as itself is no measurement.", "force factor");
    }

    /// <summary>Factor 1 without doubt: the forces are as measured and their rig is taken at its word.</summary>
    public static Amount<Plain> AsMeasured { get; } = new(1.0);

    /// <summary>Travel (m) or velocity (m/s).</summary>
    public IReadOnlyList<double> At { get; }

    internal ReadOnlySpan<double> Places => places;

    /// <summary>Force, N.</summary>
    public IReadOnlyList<double> Force { get; }

    /// <summary>
    /// Common factor that is in every force (–): 1 for a table as measured. Its doubt is that of the rig's calibration, which puts all forces off
    /// together and leaves the shape of the table.
    /// </summary>
    public Amount<Plain> Factor { get; }

    /// <summary>The table as it is under another factor: every force times <paramref name="factor"/> over the one that is in it.</summary>
    /// <param name="factor">The factor (–), above 0, with its doubt.</param>
    public ForceTable Under(Amount<Plain> factor) => factor == Factor ? this : new(At, [.. Force.Select(f => f * (factor.Si / Factor.Si))], factor);

    /// <summary>Slope of piece i, between point i and point i + 1, N per unit of <see cref="At"/>.</summary>
    public double Slope(int piece) => (forces[piece + 1] - forces[piece]) / (places[piece + 1] - places[piece]);

    /// <summary>Force at a place, N; outside the points the end pieces go on.</summary>
    public double ForceAt(double at)
    {
        var i = 0;
        while (i < places.Length - 2 && at > places[i + 1])
        {
            i++;
        }

        return forces[i] + (Slope(i) * (at - places[i]));
    }

    /// <summary>The place where the table gives a force, or NaN when its first or last piece is flat and never reaches it.</summary>
    public double AtForce(double force)
    {
        var i = 0;
        while (i < places.Length - 2 && force > forces[i + 1])
        {
            i++;
        }

        var slope = Slope(i);
        return slope > 0.0 ? places[i] + ((force - forces[i]) / slope) : double.NaN;
    }

    /// <summary>Equal points and factors make equal tables.</summary>
    public bool Equals(ForceTable? other) =>
        other is not null && Factor == other.Factor && At.SequenceEqual(other.At) && Force.SequenceEqual(other.Force);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(At.Count, At[0], At[^1], Force[0], Force[^1]);
}
