using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>
/// A bump stop, described at itself, that may be cut shorter. A stop of one section gives way by a share of its length: cut to a part of that, it is
/// pressed by the same part of the travel under the same force.
/// </summary>
public sealed record StopPart : Part
{
    /// <summary>Force against how far it is pressed, from (0, 0), N against m at the stop.</summary>
    public required ForceTable Curve
    {
        get;
        init => field = value is { } v && v.At[0] == 0.0 && v.Force[0] == 0.0
            ? v
            : throw new RefusedValueException("curve of a stop", "not from 0 m and 0 N", "from there", "Begin where the stop just touches.");
    }

    /// <summary>Length without load, m.</summary>
    public required Amount<Length> Length { get; init => field = Checked.Positive(value, "Measure it along its rod, without load."); }

    /// <summary>How far it is pressed where metal meets metal, m; null when nobody said.</summary>
    public Amount<Length>? SolidAfter
    {
        get;
        init => field = value is { } v ? Checked.Positive(v, "Leave it out when the stop has no hard end.") : null;
    }

    /// <summary>Travel at the stop for a travel of the wheel (–); null: that of the damper, on whose rod it sits.</summary>
    public Amount<Plain>? PerWheel
    {
        get;
        init => field = value is { } v ? Checked.Within(v, 0.05, 2.0, "Travel at the stop divided by wheel travel.") : null;
    }

    /// <summary>How much may be cut off, m, rising, 0 for none; empty: it stays as it is.</summary>
    public IReadOnlyList<Amount<Length>> Cuts { get; init => field = [.. value]; } = [];

    /// <inheritdoc/>
    public override PartSort Sort => PartSort.Stop;

    /// <summary>Every cut; whole where none is given.</summary>
    public override IReadOnlyList<PartOption> Options => Cuts.Count == 0 ? [new PartOption(this)] : [.. Cuts.Select(CutBy)];

    /// <summary>The stop with something cut off.</summary>
    /// <param name="cut">How much, m: 0 or above, less than the stop is long.</param>
    /// <exception cref="RefusedValueException">More than there is.</exception>
    public PartOption CutBy(Amount<Length> cut) => cut.Si >= 0.0 && cut.Si < Length.Si
        ? new PartOption(this) { Cut = cut.Si > 0.0 ? cut : null }
        : throw new RefusedValueException(
            $"cut of {Name}", cut.WithDoubt(0.0).ToString(), $"0 m or above and less than its {Length.WithDoubt(0.0)}", "Leave some of the stop.");

    /// <summary>The stop at the wheel, where it touches at a clearance.</summary>
    /// <param name="cut">What was cut off, m.</param>
    /// <param name="ratio">Travel at the stop for a travel of the wheel (–).</param>
    /// <param name="clearance">Wheel travel until it touches, m.</param>
    internal Stop AtWheel(double cut, double ratio, Amount<Length> clearance)
    {
        var (left, factor) = ((Length.Si - cut) / Length.Si, Own(Curve.Factor, "curve"));
        var (travels, forces) = (new double[Curve.At.Count], new double[Curve.At.Count]);
        for (var i = 0; i < travels.Length; i++)
        {
            (travels[i], forces[i]) = (Curve.At[i] * left / ratio, Curve.Force[i] * ratio);
        }

        return new Stop
        {
            Clearance = clearance,
            Table = new ForceTable(travels, forces, factor),
            SolidAfter = Own(SolidAfter, "solid travel")?.Times(left / ratio),
            Length = Own(Length, "length") with { Si = Length.Si - cut },
        };
    }
}
