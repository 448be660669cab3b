using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>An amount of money in the currency of the list that names it. Sums of different currencies are refused: nobody gave a rate.</summary>
/// <param name="Value">The amount.</param>
/// <param name="Currency">The currency ("EUR"); blank for nothing at all.</param>
public readonly record struct Money(decimal Value, string Currency) : IComparable<Money>
{
    /// <summary>Nothing, in any currency.</summary>
    public static Money None { get; } = new(0m, "");

    /// <summary>Whether it is nothing.</summary>
    public bool IsNone => Value == 0m;

    /// <summary>The sum.</summary>
    /// <exception cref="RefusedValueException">Two currencies.</exception>
    public static Money operator +(Money one, Money other) => new(one.Value + other.Value, Shared(one, other));

    /// <summary>So many of it.</summary>
    public static Money operator *(int count, Money one) => one with { Value = count * one.Value };

    /// <summary>Whether it is less.</summary>
    public static bool operator <(Money one, Money other) => one.CompareTo(other) < 0;

    /// <summary>Whether it is more.</summary>
    public static bool operator >(Money one, Money other) => one.CompareTo(other) > 0;

    /// <summary>Whether it is at most as much.</summary>
    public static bool operator <=(Money one, Money other) => one.CompareTo(other) <= 0;

    /// <summary>Whether it is at least as much.</summary>
    public static bool operator >=(Money one, Money other) => one.CompareTo(other) >= 0;

    /// <summary>The sum.</summary>
    /// <exception cref="RefusedValueException">Two currencies.</exception>
    public static Money Add(Money left, Money right) => left + right;

    /// <summary>So many of it.</summary>
    public static Money Multiply(int left, Money right) => left * right;

    /// <inheritdoc/>
    /// <exception cref="RefusedValueException">Two currencies.</exception>
    public int CompareTo(Money other)
    {
        Shared(this, other);
        return Value.CompareTo(other.Value);
    }

    /// <summary>The amount and its currency; whole amounts without decimals.</summary>
    public override string ToString() =>
        $"{Value.ToString(decimal.Truncate(Value) == Value ? "0" : "0.00", CultureInfo.InvariantCulture)} {Currency}".TrimEnd();

    /// <summary>An amount that is no debt; null where nobody said one.</summary>
    /// <exception cref="RefusedValueException">Below 0.</exception>
    internal static Money? NotNegative(Money? value, string what, string advice) =>
        value is { Value: < 0m } ? throw new RefusedValueException(what, $"{value}", "0 or above", advice) : value;

    private static string Shared(Money one, Money other) =>
        one.Currency == other.Currency || other.Currency.Length == 0 ? one.Currency
        : one.Currency.Length == 0 ? other.Currency
        : throw new RefusedValueException(
            "currency", $"{one.Currency} and {other.Currency}", "one", "Write both lists in one currency, at the rate of the day.");
}
