using Heaveline.Files.Garages;

namespace Heaveline.Web.Pages.Garages;

/// <summary>A car with all that is built on it: its variants, and theirs.</summary>
/// <param name="Car">The car; or a variant whose base is not here.</param>
/// <param name="Variants">Its variants and the variants of those, each behind its base, in the order of their names.</param>
internal sealed record CarFamily(GarageEntry Car, IReadOnlyList<GarageEntry> Variants)
{
    /// <summary>The families of a garage, in the order of the cars' names. Every car and variant stands in exactly one.</summary>
    public static IReadOnlyList<CarFamily> Of(GarageListing listing)
    {
        var all = listing.Entries.Where(entry => entry.Kind is GarageKind.Car or GarageKind.Variant).ToList();
        var placed = new HashSet<string>(StringComparer.Ordinal);
        var families = new List<CarFamily>();

        // Cars first, then variants whose base is missing, then those that go round in a circle.
        var heads = all.Where(entry => entry.Kind == GarageKind.Car)
            .Concat(all.Where(entry => entry.Kind == GarageKind.Variant && !all.Any(other => other.Name == entry.Base))).Concat(all);
        foreach (var head in heads)
        {
            if (placed.Add(head.Name))
            {
                families.Add(new CarFamily(head, [.. Below(head)]));
            }
        }

        return [.. families.OrderBy(family => family.Car.Name, StringComparer.Ordinal)];

        IEnumerable<GarageEntry> Below(GarageEntry entry)
        {
            foreach (var variant in all.Where(one => one.Kind == GarageKind.Variant && one.Base == entry.Name))
            {
                if (placed.Add(variant.Name))
                {
                    yield return variant;
                    foreach (var further in Below(variant))
                    {
                        yield return further;
                    }
                }
            }
        }
    }
}
