namespace Heaveline.Quantities;

/// <summary>The units that texts may use: looked up by symbol, alone ("mm") or as a product with exponents ("N s/m", "kg m²", "1/m").</summary>
public static class Units
{
    /// <summary>All simple symbols, in the order of the table.</summary>
    public static IReadOnlyCollection<string> Symbols => UnitTable.Meanings.Keys;

    /// <summary>The unit of a symbol in its first meaning (lb: the mass; g: the gram).</summary>
    /// <exception cref="ArgumentException">The symbol is no unit.</exception>
    public static Unit Of(string symbol) => Resolve(symbol, null);

    /// <summary>The unit of a symbol in the meaning that fits a dimension (lb for a force: the pound-force).</summary>
    /// <exception cref="ArgumentException">The symbol is no unit, or none of that dimension.</exception>
    public static Unit Of<TDimension>(string symbol)
        where TDimension : struct, IDimension => Resolve(symbol, TDimension.Exponents);

    /// <summary>Units that users of the trade write for a dimension, the usual one first. Empty for a plain number's empty symbol.</summary>
    public static IReadOnlyList<string> Fitting<TDimension>()
        where TDimension : struct, IDimension => KnownDimensions.Fitting(TDimension.Exponents, TDimension.Usual);

    private static Unit Resolve(string symbol, Exponents? wanted)
    {
        var cursor = new TextCursor(symbol);
        if (UnitText.Read(cursor) is not { Parts.Count: > 0 } read || !cursor.AtEnd)
        {
            throw new ArgumentException(cursor.Refusal?.Message ?? $"\"{symbol}\" is not a unit.", nameof(symbol));
        }

        return read.Resolve(wanted ?? read.First.Exponents)
            ?? throw new ArgumentException(
                $"\"{symbol}\" is {KnownDimensions.WithArticle(read.First.Exponents)}, not what is wanted.", nameof(symbol));
    }
}
