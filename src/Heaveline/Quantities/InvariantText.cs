using System.Globalization;

namespace Heaveline.Quantities;

/// <summary>Text of sentences: the same on every machine.</summary>
internal static class InvariantText
{
    /// <summary>An interpolated text in the invariant culture.</summary>
    public static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
