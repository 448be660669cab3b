using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>How much more volume a unit takes per pressure: a constant compliance, or a gas charge whose compliance falls with the load.</summary>
public sealed record Accumulator
{
    /// <summary>Constant compliance C, m³/Pa; null when a gas volume is given.</summary>
    public Amount<Compliance>? Compliance
    {
        get;
        init => field = value is { } v ? Checked.Positive(v, "Give 4e-11 m³/Pa or so, or a gas volume.") : null;
    }

    /// <summary>Gas volume in the reference state, m³; null when a compliance is given. Then C = V/(n·p_abs).</summary>
    public Amount<Volume>? GasVolume { get; init => field = value is { } v ? Checked.Positive(v, "Gas volume at the base pressure.") : null; }

    /// <summary>Polytropic exponent of the gas (–). 1 to 1.7.</summary>
    public Amount<Plain> Exponent { get; init => field = Checked.Within(value, 1.0, 1.7, "1.0 for slow, about 1.38 for fast motion."); } = new(1.38);
}
