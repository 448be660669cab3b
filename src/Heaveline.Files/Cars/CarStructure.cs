using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>
/// What the parts of a car file must say about one another. Looks at the document alone, so that it speaks even when values elsewhere are refused.
/// </summary>
internal static class CarStructure
{
    private const int MostSeatsNamed = 20;
    private static readonly string[] Ends = ["front", "rear"];

    /// <summary>Refuses parts that do not fit together.</summary>
    public static void Check(Node root, Reader reader)
    {
        if (root.At("kind")?.Text == "two-wheeler")
        {
            CheckTwoWheeler(root, reader);
        }
        else
        {
            CheckTracks(root, reader);
        }

        CheckLoads(root, reader);
    }

    private static void CheckTwoWheeler(Node root, Reader reader)
    {
        if (root.At("body") is { Kind: NodeKind.Mapping } body && body.At("pitch-inertia") is null && body.At("pitch-index") is null)
        {
            reader.Refuse(
                body.Place,
                $"{body.Subject} has neither pitch-inertia nor pitch-index, and the index that is taken when both are left out is of cars.",
                "Measure the inertia, or estimate pitch-index and give it a wide doubt: 0.75 ± 20 % is a guess for a motorcycle, without a source.");
        }

        Refuse(
            root.At("headlamp", "rule"),
            "is a rule for cars.",
            "UN Regulation 53, 6.2.5, is the one for motorcycles: read its values and give least-drop and greatest-drop.",
            reader);
        foreach (var end in Ends)
        {
            foreach (var (key, advice) in new[]
            {
                ("track", "Leave track out."),
                ("anti-roll-bar", "Leave the bar out."),
                ("spring-base", "Leave it out."),
            })
            {
                Refuse(root.At(end, key), $"is given, but a two-wheeler has one wheel at each end.", advice, reader);
            }

            foreach (var side in new[] { "left", "right" })
            {
                Refuse(
                    root.At("weighing", $"{end}-{side}"),
                    "is given, but a two-wheeler has one wheel at each end.",
                    $"Give {end}: what the scale under the {end} wheel reads.",
                    reader);
            }

            if (root.At(end, "suspension") is { Text: "solid-axle" } suspension)
            {
                Refuse(suspension, "is solid-axle, but a two-wheeler has one wheel at each end.", "Leave suspension out.", reader);
            }
        }
    }

    private static void CheckTracks(Node root, Reader reader)
    {
        const double Narrowest = 0.3;
        foreach (var axle in Ends.Select(end => root.At(end)).OfType<Node>().Where(axle => axle.Kind == NodeKind.Mapping))
        {
            if (axle.At("track") is not { } track)
            {
                reader.Refuse(
                    axle.Place,
                    $"{axle.Subject} has no track.",
                    "Add track: 1.52 m (between the middles of the two tyres), or write kind: two-wheeler.");
            }
            else if (QuantityText.Parse<Length>(track.Text) is { IsRead: true, Amount.Si: >= 0.0 and < Narrowest })
            {
                Refuse(track, $"is {track.Text}; it must be between 0.3 and 4 m.", "Measure between the middles of the two tyres.", reader);
            }
        }
    }

    private static void CheckLoads(Node root, Reader reader)
    {
        var seats = root.At("seats")?.Entries.Select(entry => entry.Key).ToList() ?? [];
        foreach (var entry in (root.At("seats")?.Entries ?? [])
            .Concat(root.At("loads")?.Entries ?? []).Where(entry => string.IsNullOrWhiteSpace(entry.Key)))
        {
            reader.Refuse(entry.KeyPlace, "a seat or load state has a blank name.", "Give it a name, such as driver.");
        }

        foreach (var state in root.At("loads")?.Entries ?? [])
        {
            if (state.Key == LoadState.Reference.Name)
            {
                reader.Refuse(
                    state.KeyPlace, $"a load state is called \"{state.Key}\", the name of the state without loads.", "Give it another name.");
            }

            foreach (var seat in state.Value.Items
                .Select(load => load.At("in")).OfType<Node>().Where(seat => seat.Kind == NodeKind.Scalar && !seats.Contains(seat.Text)))
            {
                // As many as anybody would read, and no more than can be compared while one waits.
                var some = seats.Take(MostSeatsNamed).ToList();
                var near = NearestWord.Of(seat.Text, some);
                var known = seats.Count == 0
                    ? "The file has no seats: add them, or give the place of the load."
                    : $"Seats: {string.Join(", ", some)}{(some.Count < seats.Count ? ", …" : "")}.";
                Refuse(seat, $"is \"{seat.Text}\", which is no seat of this file.", near is null ? known : $"Did you mean {near}? {known}", reader);
            }
        }
    }

    private static void Refuse(Node? node, string message, string advice, Reader reader)
    {
        if (node is not null)
        {
            reader.Refuse(node.Place, $"{node.Subject} {message}", advice);
        }
    }
}
