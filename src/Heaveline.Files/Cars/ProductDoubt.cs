using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The doubt of a product of powers of measured values: independent errors add in squares (GUM, JCGM 100:2008, 5.1.6).</summary>
internal static class ProductDoubt
{
    /// <summary>A value with the doubt that follows from its factors.</summary>
    /// <param name="value">The value, SI.</param>
    /// <param name="factors">Doubt of each factor as a part of it (–) and the power with which it enters.</param>
    public static Amount<TDimension> Of<TDimension>(double value, params ReadOnlySpan<(double Part, double Power)> factors)
        where TDimension : struct, IDimension
    {
        var squares = 0.0;
        foreach (var (part, power) in factors)
        {
            squares += part * power * part * power;
        }

        return new Amount<TDimension>(value, new Doubt(Math.Abs(value) * Math.Sqrt(squares)));
    }

    /// <summary>The doubt as a part of the value (–); 0 for a value of 0.</summary>
    public static double Part<TDimension>(Amount<TDimension> amount)
        where TDimension : struct, IDimension => amount.Si == 0.0 ? 0.0 : amount.Doubt.HalfWidth / Math.Abs(amount.Si);

    /// <summary>
    /// The amount with its doubt under the name of the instrument that made it; the amount itself when no name is given or no doubt stated.
    /// </summary>
    public static Amount<TDimension> Under<TDimension>(Amount<TDimension> amount, string? instrument)
        where TDimension : struct, IDimension =>
        instrument is null || !amount.Doubt.IsStated ? amount : amount with { Doubt = amount.Doubt with { Shared = instrument } };

    /// <summary>The amount with its doubt under the name of a reading or a quantity of this car that stands behind several of its values.</summary>
    public static Amount<TDimension> UnderOwn<TDimension>(Amount<TDimension> amount, string name)
        where TDimension : struct, IDimension =>
        amount.Doubt.IsStated ? amount with { Doubt = amount.Doubt with { Shared = name, OfOneCar = true } } : amount;
}
