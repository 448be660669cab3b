using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Reads the amounts of a worksheet, one by one or several between commas.</summary>
internal sealed class SheetReader(AskedReader reader)
{
    // Between commas no single example fits.
    private const string NoExample = "";

    public bool IsRefused => reader.IsRefused;

    public bool IsTicked(Choice choice) => reader.IsTicked(choice);

    /// <summary>An amount; of no use where it was objected to.</summary>
    public Amount<T> Amount<T>(Choice choice)
        where T : struct, IDimension => Maybe<T>(choice) ?? default;

    /// <summary>An amount; null where none was given.</summary>
    public Amount<T>? Maybe<T>(Choice choice)
        where T : struct, IDimension => reader.Amount<T>(choice, NoExample);

    /// <summary>The amounts of each time that a choice was given.</summary>
    public IEnumerable<Amount<T>[]> Rows<T>(Choice choice, int count)
        where T : struct, IDimension => Rows(choice, count).Select(words => words.Select(w => Amount<T>(choice, w)).ToArray());

    /// <summary>The words of each time that a choice was given, as many as there must be; others are objected to and left out.</summary>
    public IEnumerable<string[]> Rows(Choice choice, int count)
    {
        foreach (var words in reader.Texts(choice))
        {
            var parts = words.Split(',', StringSplitOptions.TrimEntries);
            if (parts.Length == count)
            {
                yield return parts;
            }
            else
            {
                reader.Object(choice.Name, $"{choice.Name} '{words}': it has {parts.Length} values between commas; it must have {count}.");
            }
        }
    }

    public Amount<T> Amount<T>(Choice choice, string words)
        where T : struct, IDimension => reader.Amount<T>(choice, words, NoExample) ?? default;

    /// <summary>A force, or the mass that a scale shows under it.</summary>
    public Amount<Force> Force(Choice choice, string words)
    {
        var mass = QuantityText.Parse<Mass>(words);
        // A pound on a scale is the same force whether read as mass or force; what is no force at all is told as one.
        return QuantityText.Parse<Force>(words).IsRead || !mass.IsRead
            ? Amount<Force>(choice, words)
            : new Amount<Force>(mass.Amount.Si * Gravity.Standard, new Doubt(mass.Amount.Doubt.HalfWidth * Gravity.Standard));
    }
}
