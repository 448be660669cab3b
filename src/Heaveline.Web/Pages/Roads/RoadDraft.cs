using Heaveline.Files;
using Heaveline.Files.Editing;
using Heaveline.Files.Forms;
using Heaveline.Files.Roads;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Web.Pages.Cars;

namespace Heaveline.Web.Pages.Roads;

/// <summary>
/// A road while it is made: the text that it begins from with what is typed laid over it, key by key, as an address holds it. All else in the text
/// stays, comments and all; it is read as the file would be.
/// </summary>
internal sealed record RoadDraft
{
    /// <summary>Key of what it is called.</summary>
    public const string Named = "called";

    /// <summary>Key of what it is made of.</summary>
    public const string Kinds = "kind";

    /// <summary>What stands before the name of a size in an address: a pass has a height of its own there.</summary>
    public const string Sized = "its-";

    /// <summary>Key of which wheels meet it, in an address.</summary>
    public const string OnTracks = Sized + "tracks";

    private const string NewName = "new road";

    /// <summary>What it is called; empty while nobody has said.</summary>
    public required string Title { get; init; }

    /// <summary>What it is made of; null for a road of measured heights.</summary>
    public required FormField? Kind { get; init; }

    /// <summary>Its sizes, in the order of the documentation.</summary>
    public required IReadOnlyList<RoadField> Fields { get; init; }

    /// <summary>Which wheels meet it, by the word of the file; null where that is not asked.</summary>
    public required string? Tracks { get; init; }

    /// <summary>The text of its file.</summary>
    public required string Text { get; init; }

    /// <summary>The road; null while it is refused or something is missing.</summary>
    public required Road? Road { get; init; }

    /// <summary>What is refused and belongs to no size alone; empty when nothing is.</summary>
    public required string Elsewhere { get; init; }

    /// <summary>What must still be given, in words; empty when nothing is missing.</summary>
    public string Missing => string.Join(" and ", Fields.Where(one => one.IsMissing).Select(one => one.Field.Label));

    /// <summary>The field of which wheels meet an obstacle.</summary>
    public static FormField TracksField => RoadFile.Form.At("tracks")!;

    /// <summary>All keys of an address that a road can be made by.</summary>
    public static IReadOnlyList<string> Keys { get; } =
        [Named, Kinds, OnTracks, .. RoadFile.Kinds.SelectMany(kind => kind.Fields).Select(field => Sized + field.Name).Distinct()];

    /// <summary>A road being made.</summary>
    /// <param name="basis">The text that it begins from; null for none.</param>
    /// <param name="said">What is typed, by the keys of an address.</param>
    /// <param name="units">The units that its maker reads in.</param>
    /// <param name="isNew">Whether it is another road than the one that it begins from, and is not called as that is.</param>
    public static RoadDraft Of(string? basis, IReadOnlyDictionary<string, string> said, ReaderUnits units, bool isNew)
    {
        ArgumentNullException.ThrowIfNull(said);
        var root = basis is null ? null : YamlReading.Value(new SourceText("", basis)).Root;
        var stood = RoadFile.Kinds.FirstOrDefault(kind => root?.At(kind.Name) is not null);
        var isMeasured = root?.At("profile") is not null;
        var kind = isMeasured ? null
            : RoadFile.Kinds.FirstOrDefault(one => one.Name == said.GetValueOrDefault(Kinds)) ?? stood ?? RoadFile.Kinds[0];
        var title = said.GetValueOrDefault(Named) ?? (isNew ? null : root?.At("road")?.Text.Trim()) ?? "";
        var typed = (kind?.Fields ?? []).ToDictionary(
            field => field.Name, field => said.GetValueOrDefault(Sized + field.Name) ?? Stood(root, stood, field) ?? "");
        var hasTracks = kind is not null && kind.Name != "sine";
        var tracks = hasTracks ? said.GetValueOrDefault(OnTracks) ?? root?.At("tracks")?.Text ?? TracksField.Words[0] : null;

        var edits = new List<KeyEdit>();
        if (title.Trim().Length > 0 && title.Trim() != root?.At("road")?.Text)
        {
            edits.Add(KeyEdit.Put(["road"], title.Trim()));
        }

        edits.AddRange(Sizes(root, stood, kind, typed, units));
        edits.AddRange(Wheels(root, tracks));
        var edited = RoadFile.Edit(basis ?? $"road: {NewName}\n", edits);
        var text = edited.Text ?? basis ?? "";
        var reading = RoadFile.Read(new SourceText("road.yaml", text));
        var fields = (kind?.Fields ?? []).Select(field => new RoadField(
            field, typed[field.Name], typed[field.Name].Trim().Length == 0 ? null : Words(reading, reading.Root?.At(kind!.Name, field.Name), units)))
            .ToList();
        var places = fields.Where(field => field.Refusal is not null).Select(field => reading.Root!.At(kind!.Name, field.Field.Name)!).ToList();
        var isMissing = fields.Any(field => field.IsMissing);
        var others = isMeasured || isMissing ? []
            : reading.Refusals.Where(refusal => !places.Any(node => IsAt(refusal, node))).Select(refusal => Words(refusal)).ToList();
        return new RoadDraft
        {
            Title = title,
            Kind = kind,
            Fields = fields,
            Tracks = tracks,
            Text = text,
            Road = edited.Refusal is null && !isMissing ? reading.Value : null,
            Elsewhere = units.Leaving(typed.Values).Text(
                string.Join(' ', others.Prepend(edited.Refusal is { } no ? $"{no.Message} {no.Advice}" : "")).Trim()),
        };
    }

    /// <summary>The unit that a bare number of a size is in, for a reader.</summary>
    public static string UnitOf(FormField field, ReaderUnits units) => field.Quantity is null ? "" : new QuantityEntry(field, units).Usual;

    private static IEnumerable<KeyEdit> Sizes(
        Node? root, FormField? stood, FormField? kind, Dictionary<string, string> typed, ReaderUnits units)
    {
        if (kind is null)
        {
            yield break;
        }

        string Whole(FormField field) =>
            field.Quantity is null ? typed[field.Name].Trim() : QuantityText.Whole(typed[field.Name], UnitOf(field, units));
        if (kind.Name != stood?.Name)
        {
            var given = kind.Fields.Where(field => typed[field.Name].Trim().Length > 0).ToList();
            if (given.Count > 0)
            {
                yield return KeyEdit.Put(
                    [kind.Name], Node.Group(given.Select(field => KeyValuePair.Create(field.Name, Node.Scalar(Whole(field))))));
            }

            if (stood is not null && given.Count > 0)
            {
                yield return KeyEdit.Remove([stood.Name]);
            }

            yield break;
        }

        foreach (var field in kind.Fields)
        {
            var there = root!.At(kind.Name, field.Name);
            if (typed[field.Name].Trim().Length == 0)
            {
                // One that must be given is asked for again; one that need not be goes.
                if (there is not null && !field.IsRequired)
                {
                    yield return KeyEdit.Remove([kind.Name, field.Name]);
                }
            }
            else if (typed[field.Name] != there?.Text)
            {
                yield return KeyEdit.Put([kind.Name, field.Name], Whole(field));
            }
        }
    }

    private static IEnumerable<KeyEdit> Wheels(Node? root, string? tracks)
    {
        var there = root?.At("tracks");
        if (there is not null && (tracks is null || tracks == TracksField.Words[0]))
        {
            yield return KeyEdit.Remove(["tracks"]);
        }
        else if (tracks is not null && tracks != TracksField.Words[0] && tracks != there?.Text)
        {
            yield return KeyEdit.Put(["tracks"], tracks);
        }
    }

    // A size that another kind has too stands there when the kind is changed.
    private static string? Stood(Node? root, FormField? stood, FormField field) =>
        stood is not null && root!.At(stood.Name, field.Name) is { Kind: NodeKind.Scalar } node ? node.Text : null;

    private static bool IsAt(Refusal refusal, Node node) => refusal.Line == node.Place.Line
        && refusal.Column >= node.Place.Column && refusal.Column < node.Place.Column + Math.Max(1, node.Place.Length);

    private static string? Words(Reading<Road> reading, Node? node, ReaderUnits units) =>
        node is not null && reading.Refusals.FirstOrDefault(refusal => IsAt(refusal, node)) is { } found
            ? units.Leaving([node.Text]).Text(Words(found))
            : null;

    private static string Words(Refusal refusal) => $"{refusal.Message} {refusal.Advice}";
}
