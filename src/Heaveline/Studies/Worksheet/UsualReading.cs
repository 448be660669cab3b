using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>
/// What the readings of an instrument usually are on road vehicles: what lies outside is told, and what nothing on wheels has is objected to. Ranges:
/// common practice, no source.
/// </summary>
/// <param name="Low">The lower end, SI units.</param>
/// <param name="High">The upper end, SI units.</param>
/// <param name="Words">The range as written ("20 kg to 1500 kg").</param>
internal sealed record UsualReading(double Low, double High, string Words)
{
    // Past so many times the range nothing on wheels lies, and numbers begin to run out of digits.
    private const double Impossible = 1e4;

    // More than half of a value as its doubt is no measurement.
    private const double MostDoubt = 0.5;

    /// <summary>Whether the sheet itself tells a reading that lies outside.</summary>
    public bool IsToldBySheet { get; init; }

    private double Largest => Math.Max(Math.Abs(Low), Math.Abs(High));

    /// <summary>A range.</summary>
    /// <param name="low">The lower end, as it would be typed.</param>
    /// <param name="high">The upper end.</param>
    public static UsualReading Of<T>(string low, string high)
        where T : struct, IDimension
    {
        return new UsualReading(Si(low), Si(high), $"{low} to {high}");

        static double Si(string text) => QuantityText.Parse<T>(text) is { IsRead: true } parsed
            ? parsed.Amount.Si
            : throw new ArgumentException($"'{text}' is no end of a range.", nameof(text));
    }

    /// <summary>Why no vehicle gives such a reading, after the words that were typed; null where one might.</summary>
    /// <param name="si">The reading, SI units.</param>
    /// <param name="doubt">Half-width of its doubt, SI units.</param>
    public string? Objection(double si, double doubt) =>
        Math.Abs(si) > Impossible * Largest || (Low > 0.0 && si > 0.0 && si < Low / Impossible)
            ? $"{Words} is usual. Check the number and its unit."
            : doubt > Impossible * Largest
                ? $"its doubt is far beyond any reading; {Words} is usual. Check the doubt and its unit."
                : null;

    /// <summary>What is odd about a reading, after the words that were typed; null for nothing.</summary>
    /// <param name="si">The reading, SI units.</param>
    /// <param name="doubt">Half-width of its doubt, SI units.</param>
    public string? Remark(double si, double doubt) =>
        !IsToldBySheet && si != 0.0 && (si < Low || si > High)
            ? $"{Words} is usual; check the number and its unit."
            : Low > 0.0 ? doubt > MostDoubt * si ? FormattableString.Invariant($"its doubt is {In.Percent.Of(doubt / si):0} % of it.") : null
            : doubt > High - Low ? $"its doubt is wider than all that is usual, {Words}." : null;
}
