using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>What is read along one side of a panel. Printed as "label (unit)".</summary>
public sealed record Axis
{
    /// <summary>The quantity, in the words of the trade ("pitch").</summary>
    public required string Label { get; init => field = Checked.NotBlank(value, "Name the quantity on the axis."); }

    /// <summary>The unit of the numbers along the axis ("°", "m/s²"). Blank for a plain number.</summary>
    public string Unit { get; init => field = value ?? ""; } = "";

    /// <summary>
    /// Where the axis begins, in its unit. Null: chosen from what is drawn. Must stay below <see cref="To"/>, and above 0 on a logarithmic axis.
    /// </summary>
    public double? From { get; init => field = Ordered(Drawable.Finite(value), To, value); }

    /// <summary>Where the axis ends, in its unit. Null: chosen from what is drawn. Must stay above <see cref="From"/>.</summary>
    public double? To { get; init => field = Ordered(From, Drawable.Finite(value), value); }

    /// <summary>Equal steps or equal ratios.</summary>
    public AxisScale Scale { get; init; } = AxisScale.Linear;

    /// <summary>The axis as it is printed: "pitch (°)", or the label alone where there is no unit.</summary>
    public string Heading => Unit.Length == 0 ? Label : $"{Label} ({Unit})";

    private static double? Ordered(double? from, double? to, double? given) =>
        from is { } low && to is { } high && low >= high
            ? throw new RefusedValueException(
                "range of the axis", $"{low:G6} to {high:G6}", "from the smaller to the larger value", "Give the smaller end as From.")
            : given;
}
