using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>
/// A damper, by the rig sheets of the clicks that were measured. Between two of them the force at each velocity lies on the straight line from one
/// sheet to the next; beyond the first and the last it is not known and cannot be chosen.
/// </summary>
public sealed record DamperPart : Part
{
    /// <summary>The clicks that were measured, rising; one alone for a damper that cannot be set.</summary>
    public required IReadOnlyList<DamperClick> Clicks
    {
        get;
        init
        {
            if (value is null || value.Count == 0)
            {
                throw new RefusedValueException("clicks", "none", "one or more", "Give the forces of at least one rig sheet.");
            }

            for (var i = 1; i < value.Count; i++)
            {
                if (value[i].Number <= value[i - 1].Number)
                {
                    throw new RefusedValueException(
                        "click", $"{value[i].Number} after {value[i - 1].Number}", "rising", "Sort the sheets by their click, each once.");
                }
            }

            field = [.. value];
        }
    }

    /// <summary>Static force of its gas on the rod, N; null when nobody said.</summary>
    public Amount<Force>? GasForce
    {
        get;
        init => field = value is { } v ? Checked.NotNegative(v, "Give 0 N for a damper without gas pressure.") : null;
    }

    /// <summary>Travel from open to closed, m; null when nobody said.</summary>
    public Amount<Length>? Stroke { get; init => field = value is { } v ? Checked.Positive(v, "Measure it open and closed.") : null; }

    /// <summary>Whether it has an adjuster.</summary>
    public bool IsAdjustable => Clicks.Count > 1;

    /// <inheritdoc/>
    public override PartSort Sort => PartSort.Damper;

    /// <summary>Every whole click from the first measured one to the last; the damper itself where it cannot be set.</summary>
    public override IReadOnlyList<PartOption> Options =>
        IsAdjustable ? [.. Enumerable.Range(Clicks[0].Number, Clicks[^1].Number - Clicks[0].Number + 1).Select(At)] : [Option(null, Clicks[0].Law)];

    /// <summary>The damper at a click.</summary>
    /// <param name="click">From the first measured one to the last.</param>
    /// <exception cref="RefusedValueException">Beyond what was measured, or a damper that cannot be set.</exception>
    public PartOption At(int click)
    {
        if (!IsAdjustable || click < Clicks[0].Number || click > Clicks[^1].Number)
        {
            throw new RefusedValueException(
                $"click of {Name}",
                $"{click}",
                IsAdjustable ? $"between {Clicks[0].Number} and {Clicks[^1].Number}, the clicks that were measured" : "left out: it cannot be set",
                IsAdjustable ? "Measure the damper there, or choose a click between." : "Choose the damper without a click.");
        }

        var i = 1;
        while (Clicks[i].Number < click)
        {
            i++;
        }

        var (before, after) = (Clicks[i - 1], Clicks[i]);
        var share = (double)(click - before.Number) / (after.Number - before.Number);
        return Option(click, share == 0.0 ? before.Law : share == 1.0 ? after.Law : Between(before.Law, after.Law, share));
    }

    private PartOption Option(int? click, TableDamper law) =>
        new(this) { Click = click, Damping = law.Under(Own(law.Factor, "forces")), GasForce = Own(GasForce, "gas force") };

    // Straight pieces between two of straight pieces: corners where either has one.
    private static TableDamper Between(TableDamper one, TableDamper other, double share)
    {
        ForceTable Side(ForceTable a, ForceTable b, double sign)
        {
            double[] at = [.. a.At.Concat(b.At).Distinct().Order()];
            return new ForceTable(
                at,
                [.. at.Select(v => sign * (((1.0 - share) * one.Whole.ForceAt(sign * v)) + (share * other.Whole.ForceAt(sign * v))))],
                one.Factor);
        }

        return new TableDamper(Side(one.Bump, other.Bump, 1.0), Side(one.Rebound, other.Rebound, -1.0));
    }
}
