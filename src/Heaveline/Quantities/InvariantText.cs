using System.Globalization;

namespace Heaveline.Quantities;

/// <summary>Text of sentences: the same on every machine.</summary>
internal static class InvariantText
{
    /// <summary>An interpolated text in the invariant culture.</summary>
    public static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>A number of things with its noun ("1 setup", "2 setups").</summary>
    /// <param name="count">How many.</param>
    /// <param name="one">One of them.</param>
    /// <param name="many">Several.</param>
    public static string Count(long count, string one, string many) => Text($"{count} {(count == 1 ? one : many)}");
}
