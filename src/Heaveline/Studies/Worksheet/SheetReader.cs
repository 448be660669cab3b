using Heaveline.Elements;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Reads the amounts of a worksheet, one by one or several between commas.</summary>
internal sealed class SheetReader(AskedReader reader)
{
    // Between commas no single example fits.
    private const string NoExample = "";

    public TypedAmounts Typed { get; } = new();

    public bool IsRefused => reader.IsRefused;

    public bool IsTicked(Choice choice) => reader.IsTicked(choice);

    /// <summary>An amount; of no use where it was objected to.</summary>
    public Amount<T> Amount<T>(Choice choice, UsualReading usual)
        where T : struct, IDimension => Maybe<T>(choice, usual) ?? default;

    /// <summary>An amount; null where none was given.</summary>
    public Amount<T>? Maybe<T>(Choice choice, UsualReading usual)
        where T : struct, IDimension => reader.Text(choice) is { } words ? Read<T>(choice, words, usual) : null;

    /// <summary>The amounts of each time that a choice was given.</summary>
    public IEnumerable<Amount<T>[]> Rows<T>(Choice choice, int count, UsualReading usual)
        where T : struct, IDimension => Rows(choice, count).Select(words => words.Select(w => Amount<T>(choice, w, usual)).ToArray());

    /// <summary>The words of each time that a choice was given, as many as there must be; others are objected to and left out.</summary>
    public IEnumerable<string[]> Rows(Choice choice, int count)
    {
        foreach (var words in reader.Texts(choice))
        {
            var parts = CommaList.Of(words);
            if (parts.Length == count)
            {
                yield return parts;
            }
            else
            {
                var has = parts.Length == 1 ? "1 value" : $"{parts.Length} values, with commas between";
                reader.Object(choice.Name, $"{choice.Name} '{words}': it has {has}; it must have {count}."
                    + (parts.Length < count && CommaList.HasDecimalComma(words) ? " A comma between two digits is a decimal comma." : ""));
            }
        }
    }

    public Amount<T> Amount<T>(Choice choice, string words, UsualReading usual)
        where T : struct, IDimension => Read<T>(choice, words, usual) ?? default;

    /// <summary>Readings of one instrument: those without a doubt of their own are good to half the last digit that any was read to.</summary>
    public IReadOnlyList<Amount<T>> Readings<T>(Choice choice, IEnumerable<string> words, UsualReading usual)
        where T : struct, IDimension => Floored([.. words.Select(w => (Amount<T>(choice, w, usual), QuantityText.HalfLastDigit<T>(w)))]);

    /// <summary>The same of forces, or of the masses that a scale shows under them.</summary>
    public IReadOnlyList<Amount<Force>> Forces(Choice choice, IEnumerable<string> words, UsualReading usual) =>
        Floored([.. words.Select(w => Force(choice, w, usual))]);

    private Amount<T>? Read<T>(Choice choice, string words, UsualReading usual)
        where T : struct, IDimension
    {
        var amount = reader.Amount<T>(choice, words, NoExample);
        if (amount is { } read)
        {
            Typed.Add(read, words, QuantityText.Parse<T>(words).Unit);
            Weigh(choice, read, words, usual);
        }

        return amount;
    }

    // What no vehicle has is objected to, since numbers run out of digits there; what is only odd is told beside the answer.
    private void Weigh<T>(Choice choice, Amount<T> amount, string words, UsualReading usual)
        where T : struct, IDimension
    {
        var (si, doubt) = (amount.Si, amount.Doubt.HalfWidth);
        if (usual.Objection(si, doubt) is { } objection)
        {
            reader.Object(choice.Name, $"{choice.Name} '{words}': {objection}", isUsage: false);
        }
        else if (si >= 0.0 && usual.Remark(si, doubt) is { } remark)
        {
            Typed.Odd.Add($"{FirstLetter.Raised(choice.Name)} '{words}': {remark}");
        }
    }

    private static IReadOnlyList<Amount<T>> Floored<T>(IReadOnlyList<(Amount<T> Amount, double? HalfDigit)> readings)
        where T : struct, IDimension
    {
        var finest = readings.Min(r => r.HalfDigit) ?? 0.0;
        return [.. readings.Select(r => r.Amount.Doubt.IsStated ? r.Amount : r.Amount.WithDoubt(finest))];
    }

    // A pound on a scale is the same force whether read as mass or force; what is no force at all is told as one.
    private (Amount<Force> Force, double? HalfDigit) Force(Choice choice, string words, UsualReading usual)
    {
        var mass = QuantityText.Parse<Mass>(words);
        if (QuantityText.Parse<Force>(words).IsRead || !mass.IsRead)
        {
            return (Amount<Force>(choice, words, usual), QuantityText.HalfLastDigit<Force>(words));
        }

        // A limit in newtons stays so: no unit of mass turns it.
        var force = new Amount<Force>(mass.Amount.Si * Gravity.Standard, new Doubt(mass.Amount.Doubt.HalfWidth * Gravity.Standard));
        Typed.Add(force, words, null);
        Weigh(choice, force, words, usual);
        return (force, Gravity.Standard * QuantityText.HalfLastDigit<Mass>(words));
    }
}
