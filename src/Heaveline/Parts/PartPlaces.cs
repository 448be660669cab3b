using Heaveline.Cars;

namespace Heaveline.Parts;

/// <summary>The places: their axle, their kind, their names.</summary>
public static class PartPlaces
{
    private static readonly string[] Names =
    [
        "front spring", "rear spring", "front damper", "rear damper", "front bar", "rear bar", "front stop", "rear stop", "front tyre", "rear tyre",
        "link",
    ];

    /// <summary>Every place.</summary>
    public static IReadOnlyList<PartPlace> All { get; } = Enum.GetValues<PartPlace>();

    /// <summary>The place of a name; null where there is none.</summary>
    /// <param name="word">The name, "front spring".</param>
    public static PartPlace? Named(string word) => Array.IndexOf(Names, word) is >= 0 and var at ? (PartPlace)at : null;

    /// <summary>The places of a kind of part, front first.</summary>
    public static IReadOnlyList<PartPlace> Of(PartSort sort) => [.. All.Where(place => place.Sort() == sort)];

    /// <summary>The place of a kind of part at an axle; the link has one for both.</summary>
    public static PartPlace At(PartSort sort, AxleEnd end) => sort == PartSort.Link ? PartPlace.Link : (PartPlace)((2 * (int)sort) + (int)end);

    /// <summary>What goes there.</summary>
    public static PartSort Sort(this PartPlace place) => (PartSort)((int)place / 2);

    /// <summary>Its axle; null for the link, which joins both.</summary>
    public static AxleEnd? End(this PartPlace place) => place == PartPlace.Link ? null : (AxleEnd)((int)place % 2);

    /// <summary>Its name ("front spring").</summary>
    public static string Name(this PartPlace place) => Names[(int)place];
}
