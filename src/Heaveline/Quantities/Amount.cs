using System.Globalization;

namespace Heaveline.Quantities;

/// <summary>A value with its dimension as a type, held in SI units, with its doubt.</summary>
/// <typeparam name="TDimension">The dimension, for instance <see cref="Stiffness"/>.</typeparam>
/// <param name="Si">The value in SI units.</param>
/// <param name="Doubt">How far it may be off.</param>
public readonly record struct Amount<TDimension>(double Si, Doubt Doubt = default)
    where TDimension : struct, IDimension
{
    /// <summary>The same value with another doubt.</summary>
    public Amount<TDimension> WithDoubt(double halfWidth, string? shared = null) => this with { Doubt = new Doubt(halfWidth, shared) };

    /// <summary>The value and its doubt multiplied by a pure number.</summary>
    public Amount<TDimension> Times(double factor) => new(Si * factor, Doubt with { HalfWidth = Math.Abs(factor) * Doubt.HalfWidth });

    /// <summary>Value in SI units with its symbol and doubt, for messages.</summary>
    public override string ToString()
    {
        var value = Numeral.WithoutPowers(Si.ToString("G6", CultureInfo.InvariantCulture));
        var doubt = Doubt.IsStated ? " ± " + Doubt.HalfWidth.ToString("G3", CultureInfo.InvariantCulture) : "";
        return $"{value}{doubt} {TDimension.Symbol}".TrimEnd();
    }
}
