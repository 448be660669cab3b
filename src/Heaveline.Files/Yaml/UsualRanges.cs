using Heaveline.Quantities;

namespace Heaveline.Files.Yaml;

/// <summary>Gives keys of quantities their usual range.</summary>
internal static class UsualRanges
{
    /// <summary>The same key with what its values usually are.</summary>
    /// <param name="key">The key.</param>
    /// <param name="low">The lower end, as it would be written in a file.</param>
    /// <param name="high">The upper end.</param>
    public static Key<Amount<TDimension>> Usually<TDimension>(this Key<Amount<TDimension>> key, string low, string high)
        where TDimension : struct, IDimension
    {
        var range = Range<TDimension>(low, high);
        return key.With(range, (node, value, reader) =>
        {
            var amount = (Amount<TDimension>)value;
            range.Check(node, amount.Si, amount.Doubt.HalfWidth, reader);
        });
    }

    /// <summary>The same kind of cells with what they usually hold.</summary>
    /// <param name="cells">The cells of one column of a table.</param>
    /// <param name="low">The lower end, as it would be written in a file.</param>
    /// <param name="high">The upper end.</param>
    public static Kind<Amount<TDimension>> Usually<TDimension>(this Kind<Amount<TDimension>> cells, string low, string high)
        where TDimension : struct, IDimension => new UsualKind<TDimension>(cells, Range<TDimension>(low, high));

    private static UsualRange Range<TDimension>(string low, string high)
        where TDimension : struct, IDimension
    {
        return new UsualRange(Si(low), Si(high), $"{low} to {high}");

        static double Si(string text) => QuantityText.Parse<TDimension>(text) is { IsRead: true } parsed
            ? parsed.Amount.Si
            : throw new ArgumentException($"'{text}' is no end of a range.", nameof(text));
    }
}
