using Heaveline.Cars;

namespace Heaveline.Parts;

/// <summary>What of a list fits one place of a car, each part by itself and everything else as it is.</summary>
/// <param name="Place">The place.</param>
/// <param name="Options">The parts that are sold for it, as each can be set.</param>
/// <param name="Elsewhere">Parts of the same sort that are sold for another place.</param>
public sealed record PlaceFit(PartPlace Place, IReadOnlyList<OptionFit> Options, IReadOnlyList<Part> Elsewhere)
{
    /// <summary>Every place for whose sort the list has a part.</summary>
    /// <param name="car">The car.</param>
    /// <param name="list">The list.</param>
    public static IReadOnlyList<PlaceFit> Of(Car car, PartsList list)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(list);
        return
        [
            .. from place in PartPlaces.All
               let sort = list.Parts.Where(part => part.Sort == place.Sort()).ToList()
               where sort.Count > 0
               select new PlaceFit(
                   place,
                   [.. from part in sort where part.Goes(place) from option in part.Options select Fit(car, new FittedPart(place, option))],
                   [.. sort.Where(part => !part.Goes(place))]),
        ];
    }

    private static OptionFit Fit(Car car, FittedPart part) =>
        new(part.Option, Fitting.Of(car, [part]) as Fitted, Fitting.Misfits(car, [part]));
}
