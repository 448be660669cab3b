namespace Heaveline.Quantities;

/// <summary>A quantity read from a text: the amount, or the reason why there is none.</summary>
/// <typeparam name="TDimension">The dimension that was wanted.</typeparam>
/// <param name="Amount">The amount; zero when refused.</param>
/// <param name="Unit">The unit as written; null when refused or when a plain number has none.</param>
/// <param name="Refusal">The reason; null when read.</param>
public readonly record struct Parsed<TDimension>(Amount<TDimension> Amount, Unit? Unit, QuantityRefusal? Refusal)
    where TDimension : struct, IDimension
{
    /// <summary>Whether the text was read.</summary>
    public bool IsRead => Refusal is null;
}
