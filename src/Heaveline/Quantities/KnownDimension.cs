namespace Heaveline.Quantities;

/// <summary>A dimension known by name, with the units that the trade writes for it.</summary>
/// <param name="Exponents">Exponents of metre, kilogram, second and radian.</param>
/// <param name="Name">Name in words.</param>
/// <param name="Symbols">Units that fit, the usual one first.</param>
internal sealed record KnownDimension(Exponents Exponents, string Name, IReadOnlyList<string> Symbols)
{
    /// <summary>The entry of a dimension type.</summary>
    public static KnownDimension Of<TDimension>(params string[] symbols)
        where TDimension : struct, IDimension =>
        new(TDimension.Exponents, TDimension.Name, [TDimension.Usual, .. symbols.Where(s => s != TDimension.Usual)]);
}
