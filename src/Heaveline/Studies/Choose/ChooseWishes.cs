using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>Wishes by the words that people write.</summary>
public static class ChooseWishes
{
    private static readonly (string Word, ChooseWish Wish, WishKind Kind)[] Known =
    [
        ("settling", ChooseWish.Settling, WishKind.Settling),
        ("hit", ChooseWish.Hit, WishKind.Hit),
        ("ride", ChooseWish.Ride, WishKind.Ride),
        ("grip", ChooseWish.Grip, WishKind.Grip),
        ("tyre load lost", ChooseWish.LoadLost, WishKind.LoadLost),
        ("money", ChooseWish.Money, WishKind.Money),
        ("parts changed", ChooseWish.Parts, WishKind.Parts),
    ];

    /// <summary>The words, those that are driven for first.</summary>
    public static IReadOnlyList<string> Words { get; } = [.. Known.Select(one => one.Word)];

    /// <summary>What is wished where nothing is said, as far as it can be told.</summary>
    public static IReadOnlyList<ChooseWish> Usual { get; } =
        [ChooseWish.Settling, ChooseWish.Hit, ChooseWish.Ride, ChooseWish.Money, ChooseWish.Parts];

    /// <summary>The wish of a word; null for none.</summary>
    public static ChooseWish? Of(string word) => Known.Where(one => one.Word == word).Select(one => (ChooseWish?)one.Wish).FirstOrDefault();

    /// <summary>What a wish is to the search.</summary>
    internal static WishKind KindOf(ChooseWish wish) => Known.First(one => one.Wish == wish).Kind;
}
