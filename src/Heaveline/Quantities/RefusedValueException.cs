namespace Heaveline.Quantities;

/// <summary>A value that a record does not accept: what it is, the value as given, the limit and what to do instead.</summary>
public sealed class RefusedValueException : ArgumentException
{
    /// <summary>Makes the refusal.</summary>
    /// <param name="what">The name of the value, in the words of the trade ("wheelbase").</param>
    /// <param name="value">The value as given.</param>
    /// <param name="limit">The limit it breaks ("above 0 m").</param>
    /// <param name="advice">What to do instead, one sentence.</param>
    public RefusedValueException(string what, string value, string limit, string advice)
        : base($"{what} is {value}; it must be {limit}. {advice}")
    {
        What = what;
        Value = value;
        Limit = limit;
        Advice = advice;
    }

    /// <summary>The name of the value.</summary>
    public string What { get; }

    /// <summary>The value as given, as text.</summary>
    public string Value { get; }

    /// <summary>The limit it breaks.</summary>
    public string Limit { get; }

    /// <summary>What to do instead.</summary>
    public string Advice { get; }
}
