using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>What a seller, or the own shed, has to offer.</summary>
public sealed record PartsList
{
    /// <summary>Whose list, of when.</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Say whose list it is."); }

    /// <summary>Currency of its prices; blank where it has none.</summary>
    public string Currency { get; init; } = "";

    /// <summary>Price of an hour of fitting; null where nobody said.</summary>
    public Money? HourlyPrice { get; init => field = Money.NotNegative(value, "price of an hour", "Work that nobody bills costs 0."); }

    /// <summary>Anything a reader should know.</summary>
    public string Note { get; init; } = "";

    /// <summary>The parts, each name once.</summary>
    public required IReadOnlyList<Part> Parts
    {
        get;
        init
        {
            if (value.GroupBy(part => part.Name, StringComparer.Ordinal).FirstOrDefault(same => same.Count() > 1) is { } twice)
            {
                throw new RefusedValueException("part", $"named {twice.Key} twice", "named once", "A part's name says which one it is.");
            }

            // One list is added up in one currency: a second one is refused here, not in the midst of a choice.
            _ = value.SelectMany(part => new[] { part.Price, part.FittingPrice }).OfType<Money>().Aggregate(Money.None, (sum, one) => sum + one);
            field = [.. value];
        }
    }

    /// <summary>The parts that may go to a place, in the order of the list.</summary>
    public IEnumerable<Part> For(PartPlace place) => Parts.Where(part => part.Goes(place));
}
