namespace Heaveline.Quantities;

/// <summary>A value that a record does not accept: what it is, the value as given, the limit and what to do instead.</summary>
/// <param name="what">The name of the value, in the words of the trade ("wheelbase").</param>
/// <param name="value">The value as given.</param>
/// <param name="limit">The limit it breaks ("above 0 m").</param>
/// <param name="advice">What to do instead, one sentence.</param>
public sealed class RefusedValueException(string what, string value, string limit, string advice)
    : NoAnswerException($"{what} is {value}; it must be {limit}.", advice)
{
    /// <summary>The name of the value.</summary>
    public string What { get; } = what;

    /// <summary>The value as given, as text.</summary>
    public string Value { get; } = value;

    /// <summary>The limit it breaks.</summary>
    public string Limit { get; } = limit;

    /// <summary>The record's property that does not accept it; null where the refusal is about none.</summary>
    public string? Property { get; init; }

    /// <summary>The lower end of the limit, SI units; −∞ for any finite number; null where the limit is no range.</summary>
    public double? Least { get; init; }

    /// <summary>The upper end of the limit, SI units; null where there is none.</summary>
    public double? Most { get; init; }

    /// <summary>Whether the lower end itself is refused.</summary>
    public bool IsOpenBelow { get; init; }
}
