using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>A spring of constant rate.</summary>
public sealed record LinearSpring : SpringLaw
{
    /// <summary>Origin of a rate that was measured at the wheel: it says nothing of the spring itself.</summary>
    public const string AtWheel = "as measured at the wheel";

    /// <summary>Origin of a rate that was worked out from the wire of a coil.</summary>
    public const string FromWire = "from the wire";

    /// <summary>Rate at the spring (at the wheel when the motion ratio is one), N/m. Above zero.</summary>
    public required Amount<Stiffness> Rate { get; init => field = Checked.Positive(value, "Give the rate of one spring as a positive number."); }

    /// <summary>How the rate was come by, for reports ("as measured", "from the wire").</summary>
    public string Origin { get; init; } = "as given";

    /// <summary>Wire, leaves or bar that the rate was worked out from; null when the rate was measured.</summary>
    public SpringDimensions? Dimensions { get; init; }

    internal override double? MeanRate => Rate.Si;

    /// <inheritdoc/>
    public override double RateAtReference(double carried) => Rate.Si;

    /// <inheritdoc/>
    public override double ForceAt(double travel, double carried) => carried + (Rate.Si * travel);
}
