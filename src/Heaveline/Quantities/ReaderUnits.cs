using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Heaveline.Quantities;

/// <summary>
/// The units that one reader reads in. Everything is computed in SI and worded in metric units, once; for a reader of imperial units what is about
/// to be shown is turned: whole texts, tables and figures, number by number.
/// </summary>
public sealed record ReaderUnits
{
    private ReaderUnits(string word) => Word = word;

    /// <summary>Metric units: nothing is turned.</summary>
    public static ReaderUnits Metric { get; } = new("metric");

    /// <summary>Inches, feet, pounds, miles an hour and what is made of them.</summary>
    public static ReaderUnits Imperial { get; } = new("imperial");

    /// <summary>Their words, as they are chosen by.</summary>
    public static IReadOnlyList<string> Words { get; } = [Metric.Word, Imperial.Word];

    /// <summary>The word that they are chosen by.</summary>
    public string Word { get; }

    /// <summary>Whether anything is turned.</summary>
    public bool IsImperial => Word == "imperial";

    /// <summary>Names that hold an amount ("20 mm lower") and stay as their owner wrote them.</summary>
    public ImmutableArray<string> Names { get; private init; } = [];

    /// <summary>The units of a word; metric for none.</summary>
    /// <param name="word">One of <see cref="Words"/>, or null.</param>
    /// <exception cref="RefusedValueException">The word is none of them.</exception>
    public static ReaderUnits Of(string? word) => word is null || word == Metric.Word ? Metric
        : word == Imperial.Word ? Imperial
        : throw new RefusedValueException("units", $"'{word}'", "metric or imperial", "Choose one of the two.");

    /// <summary>The same, leaving names of cars, loads, seats and roads as they are.</summary>
    /// <param name="names">The names; those without an amount need no care.</param>
    public ReaderUnits Leaving(IEnumerable<string> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        return IsImperial
            ? this with { Names = [.. Names.Concat(names.Where(n => ImperialText.Of(n) != n)).Distinct().OrderByDescending(n => n.Length)] }
            : this;
    }

    /// <summary>A text, its amounts turned.</summary>
    /// <param name="metric">The text in metric units.</param>
    public string Text(string metric)
    {
        ArgumentNullException.ThrowIfNull(metric);
        if (!IsImperial)
        {
            return metric;
        }

        return Names.IsEmpty
            ? ImperialText.Of(metric)
            : string.Concat(Regex.Split(metric, $"({string.Join('|', Names.Select(Regex.Escape))})")
                .Select(part => Names.Contains(part) ? part : ImperialText.Of(part)));
    }

    /// <summary>A unit alone, as at the head of a column or on an axis.</summary>
    /// <param name="metric">The metric unit.</param>
    public string Unit(string metric) => For(metric)?.Symbol ?? metric;

    /// <summary>What a value in a metric unit is multiplied by.</summary>
    /// <param name="metric">The metric unit.</param>
    public double Factor(string metric) => For(metric)?.Factor ?? 1.0;

    /// <summary>A number as printed in a metric unit, with its doubt or without.</summary>
    /// <param name="metric">The metric unit.</param>
    /// <param name="number">The number ("20.7", "20.7 ± 0.4"); anything else comes back as it is.</param>
    public string Number(string metric, string number)
    {
        ArgumentNullException.ThrowIfNull(number);
        return For(metric) is { } unit ? string.Join(" ± ", number.Split(" ± ").Select(part => ImperialText.Of(part, unit))) : number;
    }

    /// <summary>Equal words and equal names.</summary>
    public bool Equals(ReaderUnits? other) => other is not null && Word == other.Word && Names.SequenceEqual(other.Names);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Word, Names.Length);

    internal ImperialUnit? For(string metric) => IsImperial ? ImperialUnits.For(metric) : null;
}
