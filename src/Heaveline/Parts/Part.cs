using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>
/// A thing that can be bought and fitted. Left and right get the same part. What is doubtful about it belongs to the part, whatever car it stands in:
/// two cars on springs of one name are off together.
/// </summary>
public abstract record Part
{
    /// <summary>What the seller calls it, once in a list.</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Give the part a name."); }

    /// <summary>Price of one; null when nobody said.</summary>
    public Money? Price { get; init => field = Money.NotNegative(value, "price", "A part that is there already costs 0."); }

    /// <summary>Where and how soon it can be had; null when nobody said.</summary>
    public string? Stock { get; init; }

    /// <summary>Who makes it; null when nobody said.</summary>
    public string? Maker { get; init; }

    /// <summary>The one axle that it fits; null: either, or both.</summary>
    public AxleEnd? Only { get; init; }

    /// <summary>How many are bought for one place; null: as many as are usual there.</summary>
    public int? Pieces { get; init => field = value is { } v ? (int)Checked.Within(v, 1.0, 16.0, "Two springs make an axle.") : null; }

    /// <summary>How long it takes to fit at one place, all its pieces, s; null when nobody said.</summary>
    public Amount<Time>? Labour
    {
        get;
        init => field = value is not { } time ? null
            : time.Doubt.IsStated ? throw new RefusedValueException("labour", "given with a doubt", "one number", "It is counted as money.")
            {
                Property = nameof(Labour),
            }
            : new Amount<Time>(Checked.Within(time.Si, 0.0, LongestLabour, "Write what a workshop would count: 1.5 h."));
    }

    /// <summary>What fitting it at one place costs, by the price of an hour in its list; null where no time or no such price is given.</summary>
    public Money? FittingPrice { get; init => field = Money.NotNegative(value, "price of fitting", "Work that nobody bills costs 0."); }

    // Nobody fits one part for longer than 100 hours.
    private const double LongestLabour = 360_000.0;

    /// <summary>What it costs at a place of a car, with its fitting where that has a price; null when nobody said its price.</summary>
    /// <param name="vehicle">Car or two-wheeler.</param>
    public Money? CostOn(VehicleKind vehicle) =>
        Price is { } one ? (PiecesOn(vehicle) * one) + (FittingPrice ?? Money.None) : null;

    /// <summary>How its numbers stand in its list.</summary>
    public WrittenNumbers Written { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = WrittenNumbers.None;

    /// <summary>What it is.</summary>
    public abstract PartSort Sort { get; }

    /// <summary>Everything that it can be set to, in order: one option where nothing can be set.</summary>
    public abstract IReadOnlyList<PartOption> Options { get; }

    /// <summary>Whether it may go to a place, by what it is and by what it is sold for.</summary>
    public bool Goes(PartPlace place) => place.Sort() == Sort && (Only is null || place.End() is null || place.End() == Only);

    /// <summary>How many are bought for a place of a car.</summary>
    /// <param name="vehicle">Car or two-wheeler.</param>
    public int PiecesOn(VehicleKind vehicle) => Pieces ?? (Sort is PartSort.Bar or PartSort.Link || vehicle == VehicleKind.TwoWheeler ? 1 : 2);

    // The part's own error, under a name that no other part has.
    private protected Amount<TDimension> Own<TDimension>(Amount<TDimension> amount, string what)
        where TDimension : struct, IDimension =>
        amount.Doubt is { IsStated: true, Shared: null } doubt ? amount with { Doubt = doubt with { Shared = $"{Name} {what}" } } : amount;

    private protected Amount<TDimension>? Own<TDimension>(Amount<TDimension>? amount, string what)
        where TDimension : struct, IDimension => amount is { } given ? Own(given, what) : null;
}
