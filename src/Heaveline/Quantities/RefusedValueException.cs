namespace Heaveline.Quantities;

/// <summary>A value that a record does not accept: what it is, the value as given, the limit and what to do instead.</summary>
/// <param name="what">The name of the value, in the words of the trade ("wheelbase").</param>
/// <param name="value">The value as given.</param>
/// <param name="limit">The limit it breaks ("above 0 m").</param>
/// <param name="advice">What to do instead, one sentence.</param>
public sealed class RefusedValueException(string what, string value, string limit, string advice)
    : NoAnswerException($"{what} is {Numeral.WithoutPowers(value)}; it must be {Numeral.WithoutPowers(limit)}.", advice)
{
    /// <summary>The name of the value.</summary>
    public string What { get; } = what;

    /// <summary>The value as given, as text.</summary>
    public string Value { get; } = Numeral.WithoutPowers(value);

    /// <summary>The limit it breaks.</summary>
    public string Limit { get; } = Numeral.WithoutPowers(limit);

    /// <summary>The record's property that does not accept it; null where the refusal is about none.</summary>
    public string? Property { get; init; }

    /// <summary>The lower end of the limit, SI units; −∞ for any finite number; null where the limit is no range.</summary>
    public double? Least { get; init; }

    /// <summary>The upper end of the limit, SI units; null where there is none.</summary>
    public double? Most { get; init; }

    /// <summary>Whether the lower end itself is refused.</summary>
    public bool IsOpenBelow { get; init; }

    /// <summary>The limit in a unit, both ends to three digits that are allowed; as it stands where it is no range alone.</summary>
    /// <param name="unit">A unit of the value's dimension, as it was typed.</param>
    public string LimitIn(Unit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return (Least, Most) switch
        {
            (0.0, null) => IsOpenBelow ? $"above 0 {unit.Symbol}" : $"0 {unit.Symbol} or above",
            ({ } least, { } most) when IsRangeAlone(least, most) =>
                $"between {Numeral.Inside(unit.FromSi(least), true)} and {Numeral.Inside(unit.FromSi(most), false)}"
                + (unit.Symbol == "°" ? "°" : " " + unit.Symbol),
            _ => Limit,
        };
    }

    // "between 0 and 0.1", with a unit's symbol or without, and nothing more.
    private bool IsRangeAlone(double least, double most)
    {
        var range = Numeral.WithoutPowers(FormattableString.Invariant($"between {least:G6} and {most:G6}"));
        return Limit.StartsWith(range, StringComparison.Ordinal) && !Limit[range.Length..].Contains(" and ", StringComparison.Ordinal);
    }
}
