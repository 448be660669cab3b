using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Web.Tuning;

/// <summary>Load states as lists of a car file: what sits in a seat stays written so, what lies at a place is written with its place.</summary>
internal static class LoadRows
{
    private const string Place = "behind-front-axle";

    /// <summary>Whether a load state of a document has loads that lie at a place and not in a seat.</summary>
    public static bool HasPlaces(Node root, string state) => root.At("loads", state)?.Items.Any(item => item.At("in") is null) ?? false;

    /// <summary>A load state as a list.</summary>
    /// <param name="root">The document in which its first loads are written.</param>
    /// <param name="state">The state with its places.</param>
    /// <param name="written">Name of the state in the document; null: its own.</param>
    public static Node Of(Node root, LoadState state, string? written = null)
    {
        var items = root.At("loads", written ?? state.Name)?.Items ?? [];
        return Node.List(state.Loads.Select((load, i) => i < items.Count ? Item(items[i], load) : Item(load)));
    }

    private static Node Item(Node item, Load load) =>
        Node.Group(item.Entries.Select(entry => KeyValuePair.Create(entry.Key, entry.Key == Place ? Metres(load.BehindFrontAxle.Si) : entry.Value)));

    private static Node Item(Load load) => Node.Group(
        KeyValuePair.Create("what", Node.Scalar(load.Name)),
        KeyValuePair.Create("mass", Node.Scalar($"{Rounded.Text(load.Mass.Si)} kg")),
        KeyValuePair.Create(Place, Metres(load.BehindFrontAxle.Si)),
        KeyValuePair.Create("height", Metres(load.Height.Si)));

    private static Node Metres(double value) => Node.Scalar($"{Rounded.Text(Math.Round(value, 6))} m");
}
