using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>
/// A semi-elliptic leaf spring by its leaves, loaded in the middle of its span: k = 8·E·n·b·t³/(3·L³), σ = 3·P·L/(2·n·b·t²)
/// (all leaves graduated); full-length leaves carry 3·N_f/(3·N_f + 2·N_g) of the load.
/// </summary>
public sealed record LeafDimensions : SpringDimensions
{
    /// <summary>Span between the eyes L, m.</summary>
    public required Amount<Length> Span { get; init => field = Checked.Positive(value, "Eye to eye, loaded flat."); }

    /// <summary>Leaf width b, m.</summary>
    public required Amount<Length> Width { get; init => field = Checked.Positive(value, "Width of one leaf."); }

    /// <summary>Leaf thickness t, m.</summary>
    public required Amount<Length> Thickness { get; init => field = Checked.Positive(value, "Thickness of one leaf."); }

    /// <summary>Number of graduated leaves N_g.</summary>
    public required int Graduated
    {
        get;
        init => field = value is >= 0 and <= 50
            ? value
            : throw new RefusedValueException("graduated leaves", $"{value}", "between 0 and 50", "Count the leaves shorter than the main leaf.");
    }

    /// <summary>Number of full-length leaves N_f.</summary>
    public int FullLength
    {
        get;
        init => field = value is >= 0 and <= 20
            ? value
            : throw new RefusedValueException("full-length leaves", $"{value}", "between 0 and 20", "Count the leaves as long as the main leaf.");
    }

    /// <summary>Young's modulus E, Pa. Default 207 GPa for spring steel.</summary>
    public Amount<Pressure> Modulus { get; init => field = Checked.Positive(value, "207 GPa for spring steel."); } = new(207e9);

    /// <summary>
    /// Rate at the middle, N/m. Graduated leaves bend as a beam of uniform strength (3PL³/8Enbt³), full-length ones as a uniform beam, two thirds as
    /// soft: k = E·b·t³·(8/3·N_g + 4·N_f)/L³.
    /// </summary>
    public override double Rate =>
        Modulus.Si * Width.Si * Math.Pow(Thickness.Si, 3) * ((8.0 / 3.0 * Graduated) + (4.0 * FullLength)) / Math.Pow(Span.Si, 3);

    /// <summary>Share of the load on the full-length leaves (–).</summary>
    public double FullLengthShare => 3.0 * FullLength / ((3.0 * FullLength) + (2.0 * Graduated));

    /// <inheritdoc/>
    public override string StressKind => "bending";

    /// <summary>Largest bending stress of the full-length leaves (of all leaves when there are none) under a load P in the middle, Pa.</summary>
    /// <param name="force">P, N.</param>
    public override double StressUnder(double force) => FullLength == 0
        ? 3.0 * force * Span.Si / (2.0 * Graduated * Width.Si * Thickness.Si * Thickness.Si)
        : 3.0 * force * FullLengthShare * Span.Si / (2.0 * FullLength * Width.Si * Thickness.Si * Thickness.Si);
}
