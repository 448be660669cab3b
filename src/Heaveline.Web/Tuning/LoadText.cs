using Heaveline.Cars;
using Heaveline.Files.Yaml;

namespace Heaveline.Web.Tuning;

/// <summary>Load states as lists of a car file: what sits in a seat stays written so, what lies at a place is written with its place.</summary>
internal static class LoadText
{
    /// <summary>Whether a load state of a document has loads that lie at a place and not in a seat.</summary>
    public static bool HasPlaces(Node root, string state) => root.At("loads", state)?.Items.Any(item => item.At("in") is null) ?? false;

    /// <summary>A load state as a list.</summary>
    /// <param name="root">The document in which its first loads are written.</param>
    /// <param name="state">The state with its places.</param>
    /// <param name="written">Name of the state in the document; null: its own.</param>
    public static string Of(Node root, LoadState state, string? written = null)
    {
        var items = root.At("loads", written ?? state.Name)?.Items ?? [];
        return $"[{string.Join(", ", state.Loads.Select((load, i) => i < items.Count ? Item(items[i], load) : Item(load)))}]";
    }

    private static string Item(Node item, Load load) =>
        $"{{{string.Join(", ", item.Entries.Select(entry => $"{entry.Key}: {(entry.Key == "behind-front-axle" ? Metres(load.BehindFrontAxle.Si) : VariantText.Plain(entry.Value.Text))}"))}}}";

    private static string Item(Load load) =>
        $"{{what: {VariantText.Plain(load.Name)}, mass: {Rounded.Text(load.Mass.Si)} kg, behind-front-axle: {Metres(load.BehindFrontAxle.Si)}, height: {Metres(load.Height.Si)}}}";

    private static string Metres(double value) => $"{Rounded.Text(Math.Round(value, 6))} m";
}
