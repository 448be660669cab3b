using Heaveline.Quantities;

namespace Heaveline.Drives.Comparison;

/// <summary>One pass over a bump, before or after a change, with one number of it.</summary>
public sealed record ComparedPass
{
    /// <summary>The site: the same name before and after for the same bump.</summary>
    public required string Site { get; init => field = Checked.NotBlank(value, "Name the bump that was crossed."); }

    /// <summary>The kind of bump: sites of one kind with few passes share how their number grows with speed.</summary>
    public string Kind { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = "";

    /// <summary>Speed over the bump, m/s. Above 0.</summary>
    public required double Speed { get; init => field = Above(value, "speed of a pass", "Compare passes whose speed is known."); }

    /// <summary>The number that is compared, SI units. Above 0: its logarithm is.</summary>
    public required double Value { get; init => field = Above(value, "value of a pass", "Compare numbers above zero: their ratio is judged."); }

    /// <summary>Whether it was driven after the change.</summary>
    public required bool IsAfter { get; init; }

    /// <summary>Its number in its drive, from 1.</summary>
    public required int Number { get; init; }

    private static double Above(double value, string what, string advice) => value > 0.0 && double.IsFinite(value)
        ? value
        : throw new RefusedValueException(what, FormattableString.Invariant($"{value:G6}"), "above 0 and finite", advice);
}
