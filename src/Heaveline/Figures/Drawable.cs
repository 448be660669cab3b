using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>The checks shared by the records of a figure: what cannot be drawn is refused where it is given.</summary>
internal static class Drawable
{
    /// <summary>Finite.</summary>
    public static double Finite(double value, [CallerMemberName] string what = "") =>
        double.IsFinite(value) ? value : throw Refusal(what, Plain(value), "a finite number", "Give the place in the units of the axis.");

    /// <summary>Finite where it is given.</summary>
    public static double? Finite(double? value, [CallerMemberName] string what = "") =>
        value is { } given ? Finite(given, what) : null;

    /// <summary>Above zero and finite where it is given.</summary>
    public static double? Positive(double? value, [CallerMemberName] string what = "") =>
        value is { } given ? Positive(given, what) : null;

    /// <summary>Above zero and finite.</summary>
    public static double Positive(double value, [CallerMemberName] string what = "") =>
        value > 0.0 && double.IsFinite(value) ? value : throw Refusal(what, Plain(value), "above 0", "Give a positive size.");

    /// <summary>At least one, and none missing.</summary>
    public static ImmutableArray<T> Some<T>(ImmutableArray<T> items, string advice, [CallerMemberName] string what = "") =>
        items.IsDefaultOrEmpty ? throw Refusal(what, "empty", "at least one", advice) : items;

    /// <summary>None or more; a default array counts as none.</summary>
    public static ImmutableArray<T> Any<T>(ImmutableArray<T> items) => items.IsDefault ? [] : items;

    /// <summary>Every place finite.</summary>
    public static ImmutableArray<double> Places(ImmutableArray<double> values, [CallerMemberName] string what = "")
    {
        for (var i = 0; i < Any(values).Length; i++)
        {
            if (!double.IsFinite(values[i]))
            {
                throw Refusal(
                    what, $"{Plain(values[i])} at sample {i}", "finite", "Leave the sample out, or give NaN as its height to lift the pen.");
            }
        }

        return Any(values);
    }

    /// <summary>Every height finite, or NaN where the pen lifts.</summary>
    public static ImmutableArray<double> Heights(ImmutableArray<double> values, [CallerMemberName] string what = "")
    {
        for (var i = 0; i < Any(values).Length; i++)
        {
            if (double.IsInfinity(values[i]))
            {
                throw Refusal(what, $"{Plain(values[i])} at sample {i}", "finite, or NaN for a gap", "Give NaN where the pen lifts.");
            }
        }

        return Any(values);
    }

    /// <summary>Refuses two columns of one curve that differ in length; a column not given yet is let through.</summary>
    public static ImmutableArray<double> AsLongAs(ImmutableArray<double> values, ImmutableArray<double> other, [CallerMemberName] string what = "") =>
        other.IsDefault || values.Length == other.Length
            ? values
            : throw Refusal(what, $"{values.Length} samples", $"{other.Length} samples, as many as its partner", "Give one height for every place.");

    private static string Plain(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    private static RefusedValueException Refusal(string what, string value, string limit, string advice) =>
        new(
            string.Concat(what.Select((c, i) => char.IsUpper(c) && i > 0 ? " " + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString())),
            value,
            limit,
            advice);
}
