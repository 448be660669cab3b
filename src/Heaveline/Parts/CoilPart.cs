using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>A coil spring out of a box.</summary>
public sealed record CoilPart : Part
{
    /// <summary>Force against its own travel: a rate, measured or of its wire, or a table.</summary>
    public required SpringLaw Law
    {
        get;
        init => field = value is LinearSpring or TableSpring
            ? value
            : throw new RefusedValueException(
                "law of a coil spring", $"a {value?.GetType().Name}", "a rate or a table", "Other springs are no parts yet.");
    }

    /// <summary>Its rate, N/m; of a table the mean from its first row to its last.</summary>
    public double Rate => Law.MeanRate ?? throw new InvalidOperationException($"A {Law.GetType().Name} is no coil spring.");

    /// <summary>Length without load, m; null when nobody said.</summary>
    public Amount<Length>? FreeLength
    {
        get;
        init => field = value is { } v ? Checked.Positive(v, "Measure it from end to end without load.") : null;
    }

    /// <summary>Length at which all coils touch, m; null when nobody said.</summary>
    public Amount<Length>? BlockLength
    {
        get;
        init => field = value is { } v ? Checked.Positive(v, "Count the coils from end to end and multiply by the wire, or press it solid.") : null;
    }

    /// <summary>Inside diameter at the ends, m; null when nobody said.</summary>
    public Amount<Length>? SeatDiameter
    {
        get;
        init => field = value is { } v ? Checked.Positive(v, "Measure inside the last coil.") : null;
    }

    /// <summary>Largest shear stress of the wire that its maker allows, Pa; null when nobody said.</summary>
    public Amount<Pressure>? AllowedStress
    {
        get;
        init => field = value is { } v ? Checked.Positive(v, "Ask the maker; leave it out when nobody says.") : null;
    }

    /// <inheritdoc/>
    public override PartSort Sort => PartSort.Spring;

    /// <inheritdoc/>
    public override IReadOnlyList<PartOption> Options =>
    [
        new PartOption(this)
        {
            Spring = new Spring
            {
                Law = OwnLaw,
                FreeLength = Own(FreeLength, "free length"),
                BlockLength = Own(BlockLength, "block length"),
                SeatDiameter = SeatDiameter,
            },
        },
    ];

    private SpringLaw OwnLaw => Law switch
    {
        LinearSpring { Dimensions: CoilDimensions coil } spring => spring with
        {
            Rate = Own(spring.Rate, "rate"),
            Dimensions = coil with
            {
                Wire = Own(coil.Wire, "wire"),
                MeanDiameter = Own(coil.MeanDiameter, "mean diameter"),
                ActiveCoils = Own(coil.ActiveCoils, "active coils"),
                ShearModulus = Own(coil.ShearModulus, "shear modulus"),
            },
        },
        LinearSpring spring => spring with { Rate = Own(spring.Rate, "rate") },
        TableSpring { Table: var table } => new TableSpring(table.Under(Own(table.Factor, "table"))),
        var other => throw new InvalidOperationException($"A {other.GetType().Name} is no coil spring."),
    };
}
