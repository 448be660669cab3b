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

    /// <summary>Objects that a choice was not given, where another could have stood in for it.</summary>
    public void Missing(Choice choice) => reader.Object(choice.Name, $"{choice.Name} must be given: {choice.Says}");

    /// <summary>An amount; of no use where it was objected to.</summary>
    public Amount<T> Amount<T>(Choice choice, UsualReading usual)
        where T : struct, IDimension => Maybe<T>(choice, usual) ?? default;

    /// <summary>An amount; null where none was given.</summary>
    public Amount<T>? Maybe<T>(Choice choice, UsualReading usual)
        where T : struct, IDimension => reader.Text(choice) is { } words ? Read<T>(new(choice, words, default), usual) : null;

    /// <summary>The amounts of each time that a choice was given.</summary>
    public IEnumerable<Amount<T>[]> Rows<T>(Choice choice, int count, UsualReading usual)
        where T : struct, IDimension => Rows(choice, count).Select(cells => cells.Select(cell => Amount<T>(cell, usual)).ToArray());

    /// <summary>The words of each time that a choice was given, as many as there must be; others are objected to and left out.</summary>
    public IEnumerable<TypedCell[]> Rows(Choice choice, int count)
    {
        foreach (var (row, words) in reader.Texts(choice).Index())
        {
            var parts = CommaList.Of(words);
            if (parts.Length == count)
            {
                yield return [.. parts.Select((part, column) => new TypedCell(choice, part, new ReadingPlace(row, column)))];
            }
            else
            {
                var has = parts.Length == 1 ? "1 value" : $"{parts.Length} values, with commas between";
                reader.Object(choice.Name, $"{choice.Name} '{words}': it has {has}; it must have {count}."
                    + (parts.Length < count && CommaList.HasDecimalComma(words) ? " A comma between two digits is a decimal comma." : ""));
            }
        }
    }

    /// <summary>An amount of a row; of no use where it was objected to.</summary>
    public Amount<T> Amount<T>(TypedCell cell, UsualReading usual)
        where T : struct, IDimension => Read<T>(cell, usual) ?? default;

    /// <summary>Readings of one instrument: those without a doubt of their own are good to half the last digit that any was read to.</summary>
    public IReadOnlyList<Amount<T>> Readings<T>(IEnumerable<TypedCell> cells, UsualReading usual)
        where T : struct, IDimension => Floored([.. cells.Select(cell => (Amount<T>(cell, usual), QuantityText.HalfLastDigit<T>(cell.Words)))]);

    /// <summary>The same of forces, or of the masses that a scale shows under them.</summary>
    public IReadOnlyList<Amount<Force>> Forces(IEnumerable<TypedCell> cells, UsualReading usual) =>
        Floored([.. cells.Select(cell => Force(cell, usual))]);

    private Amount<T>? Read<T>(TypedCell cell, UsualReading usual)
        where T : struct, IDimension
    {
        reader.At = cell.Place;
        var amount = reader.Amount<T>(cell.Choice, cell.Words, NoExample);
        if (amount is { } read)
        {
            Typed.Add(read, cell, QuantityText.Parse<T>(cell.Words).Unit);
            Weigh(read, cell, usual);
        }

        reader.At = null;
        return amount;
    }

    // What no vehicle has is objected to, since numbers run out of digits there; what is only odd is told beside the answer.
    private void Weigh<T>(Amount<T> amount, TypedCell cell, UsualReading usual)
        where T : struct, IDimension
    {
        var (choice, words, _) = cell;
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
    private (Amount<Force> Force, double? HalfDigit) Force(TypedCell cell, UsualReading usual)
    {
        var words = cell.Words;
        var mass = QuantityText.Parse<Mass>(words);
        if (QuantityText.Parse<Force>(words).IsRead || !mass.IsRead)
        {
            return (Amount<Force>(cell, usual), QuantityText.HalfLastDigit<Force>(words));
        }

        // A limit in newtons stays so: no unit of mass turns it.
        var force = new Amount<Force>(mass.Amount.Si * Gravity.Standard, new Doubt(mass.Amount.Doubt.HalfWidth * Gravity.Standard));
        Typed.Add(force, cell, null);
        reader.At = cell.Place;
        Weigh(force, cell, usual);
        reader.At = null;
        return (force, Gravity.Standard * QuantityText.HalfLastDigit<Mass>(words));
    }
}
